/** Walls of ideas one after the other in one page: what stays of each in memory, among workers and on the card. */
import { ideasWords } from "../../src/ui/messages/ideas.ts";
import { serveBuiltApp } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";
import { hangWall, stopOnceHung } from "./hung-wall.ts";
import { createMeter, type Measured, trend } from "./soak-meter.ts";
import { endBrowser } from "./support.ts";

const words = ideasWords.en;
const KINDS = ["Texture", "Program", "Framebuffer", "Buffer"] as const;
type Alive = Readonly<Record<(typeof KINDS)[number], number>>;

/** Counts what the page makes on the card and has not deleted; runs in the page. */
const countOnCard = () => {
  const alive: Record<string, number> = { Texture: 0, Program: 0, Framebuffer: 0, Buffer: 0 };
  const card = WebGL2RenderingContext.prototype as unknown as Record<string, (thing?: unknown) => unknown>;
  for (const kind of Object.keys(alive)) {
    const [create, remove] = [card[`create${kind}`], card[`delete${kind}`]];
    card[`create${kind}`] = function () {
      alive[kind]++;
      return create.call(this);
    };
    card[`delete${kind}`] = function (thing) {
      if (thing) alive[kind]--;
      return remove.call(this, thing);
    };
  }
  Object.assign(globalThis, { onCard: alive });
};

interface AfterWall extends Measured {
  readonly workers: number;
  readonly onCard: Alive;
  readonly hung: number;
  readonly pictures: number;
}

/**
 * Begins a wall, lets something hang, stops, looks at one, holds it and lets it go again.
 * @param isTraced with pictures traced in software, which takes minutes a wall on a busy machine
 */
export async function soakWalls(count: number, isTraced: boolean) {
  const app = await serveBuiltApp();
  const { page, errors, foreign } = await app.visit({ without3d: !isTraced, before: countOnCard });
  const measure = await createMeter(page, Date.now());
  const guide = guideTo(page);
  const one = page.getByRole("region", { name: words.one.title });
  const deed = (name: string) => one.getByRole("button", { name, exact: true }).click();
  const walls: AfterWall[] = [];
  await hangWall(page);
  await guide.goTo("ideas");
  for (let wall = 0; wall < count; wall++) {
    await guide.press(words.further);
    await stopOnceHung(page);
    await page.locator(".idea-wall .idea").first().click();
    await one.locator(".idea-said").waitFor();
    await deed(words.deeds.hold);
    await deed(words.deeds.letGo);
    const isTracedNow = (traced: boolean) =>
      [...document.querySelectorAll<HTMLImageElement>(".idea-wall .idea img")].every(({ src }) =>
        src.startsWith(traced ? "data:image/png" : "data:image/svg"),
      );
    await page.waitForFunction(isTracedNow, isTraced);
    const images = page.locator(".idea-wall .idea img");
    walls.push({
      ...(await measure()),
      workers: page.workers().length,
      onCard: await page.evaluate(() => (globalThis as unknown as { onCard: Alive }).onCard),
      hung: await images.count(),
      pictures: new Set(
        await images.evaluateAll((all) => all.map((image) => (image as HTMLImageElement).src)),
      ).size,
    });
    process.stderr.write(`${JSON.stringify(walls.at(-1))}\n`);
  }
  await app.close();
  await endBrowser();
  return {
    heapMB: trend(walls, "heapMB"),
    nodes: trend(walls, "nodes"),
    listeners: trend(walls, "listeners"),
    pageMB: trend(walls, "pageMB"),
    errors,
    foreign,
    walls,
  };
}
