/** Times one move of a drag after another in the page: solving, clipping exactly, reporting, drawing. */
import { createRoot } from "react-dom/client";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import { report, solid, solved } from "../../../src/state/derived.ts";
import { FIRST_EXAMPLE } from "../../../src/ui/first-example.ts";
import { facetArrays } from "../../../src/ui/piece/body-geometry.ts";
import { Profile } from "../../../src/ui/plan/profile/Profile.tsx";
import { Skin } from "../../../src/ui/plan/skin/Skin.tsx";
import { createStudio } from "../../../src/ui/studio.ts";
import { StudioProvider } from "../../../src/ui/studio-provider.tsx";
import "../../../src/ui/theme/tokens.css";

const studio = createStudio({ plan: FIRST_EXAMPLE });
const root = document.getElementById("root");
if (!root) throw new Error("the page has no root");
createRoot(root).render(
  <StudioProvider studio={studio}>
    <div id="bench">
      <Profile />
      <Skin />
    </div>
  </StudioProvider>,
);

const tier = (
  id: string,
  side: Tier["side"],
  armAngleDeg: number,
  startDeg: number,
  count: number,
  depth: Tier["depth"],
): Tier => ({ id, name: id, side, armAngleDeg, count, startDeg, depth });

/**
 * A waist whose facets share edges, and on each side rings that go to the corners of the ring before, every second one half
 * a facet further: all of them follow when the waist moves, and all meet.
 */
function rings(
  count: number,
  edgeMm: number,
  angles: readonly number[],
  sides: readonly Tier["side"][],
): Plan {
  const ringsOf = (side: Tier["side"]) =>
    angles.map((angle, i): Tier => {
      const of = i === 0 ? "waist" : `${side}${i - 1}`;
      return tier(`${side}${i}`, side, angle, i % 2 === 0 ? 180 / count : 0, count, { rule: "corners", of });
    });
  return {
    format: "glintwright-plan",
    version: 1,
    name: "drag bench",
    piece: { diameterMm: 38, glass: "borosilicate" },
    rig: { wheelStops: 96 },
    tiers: [
      tier("waist", "front", WAIST_DEG, 0, count, { rule: "edge", mm: edgeMm }),
      ...sides.flatMap(ringsOf),
    ],
  };
}
const WAIST_DEG = 1;
const small = rings(12, 5, [24], ["front"]);
const PLANS: Readonly<Record<string, Plan>> = {
  25: {
    ...small,
    tiers: [...small.tiers, tier("table", "front", 90, 0, 1, { rule: "corners", of: "front0" })],
  },
  60: rings(12, 5, [24, 47], ["front", "back"]),
  120: rings(24, 2.4, [13, 27], ["front", "back"]),
};

const PARTS = ["solve", "clip", "report", "draw"] as const;
type Part = (typeof PARTS)[number];
type Times = Record<Part, number[]>;

const MOVES = 60;
const WARM_UP = 12;

/** Moves the waist's arm a little and times what follows. */
async function move(step: number, times: Times | null): Promise<void> {
  const armAngleDeg = WAIST_DEG + 0.7 * Math.sin(step / 7);
  studio.getState().dragTo({ type: "change-tier", tierId: "waist", change: { armAngleDeg } });
  const { plan } = studio.getState();
  const at = [performance.now()];
  solved(plan);
  at.push(performance.now());
  facetArrays(solid(plan).facets);
  at.push(performance.now());
  report(plan);
  at.push(performance.now());
  // React answers the store in a microtask of its own.
  await Promise.resolve();
  document.querySelector(".skin svg")?.getBoundingClientRect();
  at.push(performance.now());
  PARTS.forEach((part, i) => {
    times?.[part].push(at[i + 1] - at[i]);
  });
  // Lets the browser in, without waiting for a frame of a screen that is not there.
  await new Promise((resolve) => setTimeout(resolve));
}

const quantile = (values: readonly number[], q: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return Number(sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))].toFixed(2));
};
const summary = (values: readonly number[]) => ({
  medianMs: quantile(values, 0.5),
  p95Ms: quantile(values, 0.95),
});

async function run(count: string) {
  studio.getState().open({ plan: PLANS[count] });
  studio.getState().beginDrag({ about: "tier", tier: 1, field: "armAngleDeg" });
  const times: Times = { solve: [], clip: [], report: [], draw: [] };
  for (let i = 0; i < WARM_UP; i++) await move(i, null);
  for (let i = 0; i < MOVES; i++) await move(WARM_UP + i, times);
  const unmet = solved(studio.getState().plan).tiers.filter(({ met }) => !met).length;
  studio.getState().cancelDrag();
  return {
    moves: MOVES,
    unmetTiers: unmet,
    ...Object.fromEntries(PARTS.map((part) => [part, summary(times[part])])),
    solveAndClip: summary(times.solve.map((ms, i) => ms + times.clip[i])),
    all: summary(times.solve.map((_, i) => PARTS.reduce((sum, part) => sum + times[part][i], 0))),
  };
}

const dragBench = { counts: Object.keys(PLANS), run };
declare global {
  interface Window {
    dragBench: typeof dragBench;
  }
}
window.dragBench = dragBench;
