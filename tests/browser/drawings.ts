/** The drawings on a page of their own, for the tests of one file: a plan on the bench, where things stand on the page, hands. */
import type { CDPSession, Page } from "playwright-core";
import { beforeEach } from "vitest";
import type { Plan, Tier } from "../../src/core/plan/document.ts";
import type { DrawingBench } from "./drawing-page.tsx";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

declare global {
  interface Window {
    bench: DrawingBench;
  }
}

/** The page, once `onDrawings` has opened it. */
export let page: Page;

export const ring = (id: string, armAngleDeg: number, startDeg: number, depth: Tier["depth"]): Tier => ({
  id,
  name: id,
  side: "front",
  armAngleDeg,
  count: 8,
  startDeg,
  depth,
});
export const PLAN: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "drag",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [ring("low", 10, 0, { rule: "touch" }), ring("high", 45, 22.5, { rule: "depth", mm: 0.3 })],
};

/** Opens the page for the tests of a file, and lays `PLAN` on the bench before each. */
export function onDrawings(): void {
  const opened = sharedThing(
    async () => {
      const open = await openPage("tests/browser/drawing-page.html", { width: 1440, height: 900 });
      await open.page.waitForSelector(".skin svg");
      await open.page.waitForSelector(".profile svg");
      return open;
    },
    ({ close }) => close(),
  );
  beforeEach(async () => {
    page = opened().page;
    await page.evaluate((plan) => window.bench.studio.getState().open({ plan }), PLAN);
    await page.mouse.move(700, 880);
  });
}

export const planNow = (): Promise<Plan> => page.evaluate(() => window.bench.studio.getState().plan);
export const tierNow = async (id: string): Promise<Tier> => {
  const tier = (await planNow()).tiers.find((t) => t.id === id);
  if (!tier) throw new Error(`no tier ${id}`);
  return tier;
};
export const steps = (): Promise<number> =>
  page.evaluate(() => window.bench.studio.getState().history.undo.length);
export const depthOf = (id: string): Promise<number> =>
  page.evaluate((tierId) => {
    const plan = window.bench.studio.getState().plan;
    return window.bench.solved(plan).tiers.find((t) => t.tierId === tierId)?.depthMm ?? 0;
  }, id);

export type Point = readonly [number, number];
export const middleOf = async (selector: string): Promise<Point> => {
  const box = await page.locator(selector).first().boundingBox();
  if (!box) throw new Error(`nothing at ${selector}`);
  return [box.x + box.width / 2, box.y + box.height / 2];
};
export const knob = (id: string) => middleOf(`.profile [data-tier="${id}"] .grip-knob`);
/** Centre and radius of the half-section on the page. */
export const frame = async (): Promise<{ cx: number; cy: number; radius: number }> => {
  const box = await page.locator(".profile-equator").boundingBox();
  if (!box) throw new Error("the profile has no equator");
  return { cx: box.x, cy: box.y + box.height / 2, radius: box.width };
};
/** A place at the same distance from the centre, turned by some degrees toward the front pole. */
export function along({ cx, cy }: { cx: number; cy: number }, [x, y]: Point, deg: number): Point {
  const angle = Math.atan2(cy - y, x - cx) + (deg * Math.PI) / 180;
  const away = Math.hypot(x - cx, y - cy);
  return [cx + away * Math.cos(angle), cy - away * Math.sin(angle)];
}
/** A place nearer to the centre by some pixels. */
export function inward({ cx, cy }: { cx: number; cy: number }, [x, y]: Point, px: number): Point {
  const away = Math.hypot(x - cx, y - cy);
  const s = (away - px) / away;
  return [cx + (x - cx) * s, cy + (y - cy) * s];
}

export interface Hand {
  down: (at: Point) => Promise<void>;
  move: (at: Point) => Promise<void>;
  up: () => Promise<void>;
}
export const mouse: Hand = {
  down: async ([x, y]) => {
    await page.mouse.move(x, y);
    await page.mouse.down();
  },
  move: ([x, y]) => page.mouse.move(x, y),
  up: () => page.mouse.up(),
};
/** A finger through the browser's own input, so that pointer events come as they do on a tablet. */
export async function finger(): Promise<Hand> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", at?: Point) =>
    session.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: at ? [{ x: at[0], y: at[1] }] : [],
    });
  return {
    down: async (at) => void (await send("touchStart", at)),
    move: async (at) => void (await send("touchMove", at)),
    up: async () => void (await send("touchEnd")),
  };
}
export async function dragBy(
  hand: Hand,
  from: Point,
  path: readonly Point[],
  modifiers: readonly string[] = [],
) {
  await hand.down(from);
  for (const key of modifiers) await page.keyboard.down(key);
  for (const at of path) await hand.move(at);
  await hand.up();
  for (const key of modifiers) await page.keyboard.up(key);
}
export const typed = (tierId: string, change: Partial<Tier>) =>
  page.evaluate(
    ([id, to, plan]) => {
      const { studio } = window.bench;
      studio.getState().open({ plan });
      studio.getState().dispatch({ type: "change-tier", tierId: id, change: to });
      return JSON.stringify(studio.getState().plan);
    },
    [tierId, change, PLAN] as const,
  );
