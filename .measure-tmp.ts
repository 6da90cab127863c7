import { once } from "node:events";
import { chromium } from "playwright-core";
import { folderServer } from "./src/cli/serve.ts";
import { writeFileSync } from "node:fs";
const kind = process.argv[2] ?? "touch";
const angles = [2, 10, 18, 26, 34, 42, 50, 58, 66, 74];
const tiers = ["front", "back"].flatMap((side) => angles.map((armAngleDeg, i) => ({ id: `${side[0]}${i}`, name: `${side} ${i}`, side, armAngleDeg, count: 50, startDeg: i % 2 ? 3.6 : 0,
  depth: kind === "touch" ? { rule: "touch" } : kind === "edge" ? { rule: "edge", mm: 0.5 } : { rule: "depth", mm: 0.2 } })));
const plan = { format: "glintwright-plan", version: 1, name: "Thousand", piece: { diameterMm: 40, glass: "borosilicate" }, rig: { wheelStops: 100 }, tiers };
writeFileSync("/tmp/keep/thousand.json", JSON.stringify(plan));
const server = folderServer(process.env.DIST ?? "/work/w-keep/dist").listen(0, "localhost");
await once(server, "listening");
const address = `http://localhost:${(server.address() as any).port}/`;
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: "--no-sandbox --use-angle=swiftshader --enable-unsafe-swiftshader --disable-background-networking --disable-component-update --disable-sync --no-first-run --disable-quic".split(" ") });
const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: "en-GB", serviceWorkers: "block", reducedMotion: "reduce" });
const page = await context.newPage();
page.on("pageerror", (e) => console.log("ERR", e.message));
await page.addInitScript(() => {
  (window as any).tasks = [];
  new PerformanceObserver((l) => { for (const e of l.getEntries()) (window as any).tasks.push([Math.round(e.startTime), Math.round(e.duration)]); }).observe({ type: "longtask", buffered: true });
});
await page.goto(address);
await page.waitForSelector(".recipe");
await page.waitForTimeout(3000);
const t0 = Date.now();
await page.evaluate((text) => {
  const data = new DataTransfer();
  data.items.add(new File([text], "t.json", { type: "application/json" }));
  for (const type of ["dragenter", "dragover", "drop"]) document.querySelector(".drop")!.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
}, JSON.stringify(plan));
await page.getByText("Opened Thousand").waitFor({ timeout: 120000 });
console.log("open ms", Date.now() - t0);
await page.waitForTimeout(15000);
console.log("tasks of opening", JSON.stringify(await page.evaluate("tasks.splice(0)")));
const fields = page.getByRole("spinbutton", { name: "Arm angle" });
console.log("fields", await fields.count());
await fields.nth(3).focus();
if (process.env.PROFILE) { const cdp = await context.newCDPSession(page); await cdp.send("Profiler.enable"); await cdp.send("Profiler.setSamplingInterval", { interval: 1000 }); await cdp.send("Profiler.start"); (globalThis as any).cdp = cdp; }
const t1 = Date.now();
for (let i = 0; i < +(process.env.KEYS ?? 20); i++) { await page.keyboard.press("ArrowUp"); await page.waitForTimeout(50); }
const pressed = Date.now() - t1;
await page.evaluate(() => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r))));
console.log("20 keys ms", pressed, "until painted", Date.now() - t1, "value", await fields.nth(3).inputValue());
await page.waitForTimeout(6000);
const tasks = (await page.evaluate("tasks.splice(0)")) as [number, number][];
console.log("longest", Math.max(0, ...tasks.map((t) => t[1])), "sum", tasks.reduce((s, t) => s + t[1], 0), JSON.stringify(tasks));
if (process.env.PROFILE) { const { profile } = await (globalThis as any).cdp.send("Profiler.stop"); writeFileSync("/tmp/keep/profile.json", JSON.stringify(profile)); }
await browser.close(); server.closeAllConnections(); server.close();
