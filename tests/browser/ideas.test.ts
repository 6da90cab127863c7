/** The wall of ideas: it fills, stops at once, and what hangs on it can be held, leant, thrown away and opened as the plan. */
import { expect, it } from "vitest";
import { dropFile } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";
import { ON_BENCH } from "./hung-wall.ts";
import { sharedApp } from "./shared.ts";

const app = sharedApp();

/** In a worker, in a turn of its own, which no tool's leave reaches: an empty module of WebAssembly, and a function made of a text. */
const whatMayRun = () =>
  new Promise<string[]>((resolve) => {
    const may = (name: string, run: () => unknown): string[] => {
      try {
        run();
        return [name];
      } catch (error) {
        return error instanceof EvalError || error instanceof WebAssembly.CompileError ? [] : [String(error)];
      }
    };
    setTimeout(() =>
      resolve([
        ...may("WebAssembly", () => new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0))),
        ...may("text", () => new Function("return 1")),
      ]),
    );
  });

it("fills, stops, and gives its ideas away", async () => {
  // drawings stand for pictures, and a clear ball is judged quickly
  const { page, errors, foreign, close } = await app.visit({ without3d: true });
  const guide = guideTo(page);
  await dropFile(page, "clear.json", JSON.stringify(ON_BENCH));
  await page.locator(".tier").nth(ON_BENCH.tiers.length).waitFor({ state: "detached" });
  await guide.goTo("ideas");
  await guide.press("Try patterns");
  const ideas = page.locator(".idea-wall .idea");
  await ideas.nth(2).waitFor();
  // the policy lets workers compile the kernel of rays, and make no script of a text
  const workers = page.workers().filter((worker) => worker.url().includes("ideas-worker"));
  expect(workers.length).toBeGreaterThan(0);
  expect(await workers[0].evaluate(whatMayRun)).toEqual(["WebAssembly"]);
  // counted by the page itself: from the press to the word
  const stopped = await page.evaluate(async () => {
    const button = document.querySelector<HTMLElement>(".idea-row button");
    const said = () => document.querySelector(".idea-row [role=status]")?.textContent ?? "";
    button?.click();
    for (let turn = 1; turn <= 200; turn++) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      if (said().startsWith("Stopped")) return turn;
    }
    return Number.POSITIVE_INFINITY;
  });
  expect(stopped).toBeLessThan(200);

  await ideas.nth(0).click();
  const one = page.getByRole("region", { name: "This one" });
  const first = (await one.getByRole("heading").textContent()) ?? "";
  await one.getByRole("button", { name: "Hold it" }).click();
  const held = page.getByRole("region", { name: "Held, side by side under one light" });
  expect(await held.getByRole("listitem").count()).toBe(1);
  await ideas.nth(1).click();
  const second = (await one.getByRole("heading").textContent()) ?? "";
  expect(second).not.toBe(first);
  await one.getByRole("button", { name: "Throw away" }).click();
  await page.getByRole("button", { name: "Bring back the one thrown away" }).waitFor();
  expect(await page.getByRole("button", { name: second, exact: true }).count()).toBe(0);

  await held.getByRole("button", { name: first }).click();
  await one.getByRole("button", { name: "Open as my plan" }).click();
  await page.locator(".tier").first().waitFor();
  await page.getByText("It is your plan now. Undo brings the one before back.").waitFor();
  await page.locator(".head").getByRole("button", { name: /^Undo/ }).click();
  // what was learned is there after a reload, and can be forgotten
  await expect
    .poll(() => page.evaluate(() => localStorage.getItem("glintwright-taste")?.length ?? 0))
    .toBeGreaterThan(20);
  await page.reload();
  await guide.goTo("ideas");
  await guide.press("Forget what I like");
  expect(await page.evaluate(() => localStorage.getItem("glintwright-taste"))).toBeNull();
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
});
