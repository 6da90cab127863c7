/** Times one move of a drag after another in the page: solving, cutting exactly, reporting, cutting the mesh, drawing. */
import { createRoot } from "react-dom/client";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import { report, solid, solved } from "../../../src/state/derived.ts";
import { bodyArrays } from "../../../src/ui/piece/body-geometry.ts";
import Profile from "../../../src/ui/plan/profile/Profile.tsx";
import Skin from "../../../src/ui/plan/skin/Skin.tsx";
import { studio } from "../../../src/ui/studio.ts";
import "../../../src/ui/theme/tokens.css";

const root = document.getElementById("root");
if (!root) throw new Error("the page has no root");
createRoot(root).render(
  <div id="bench">
    <Profile />
    <Skin />
  </div>,
);

const tier = (
  id: string,
  armAngleDeg: number,
  startDeg: number,
  count: number,
  depth: Tier["depth"],
): Tier => ({
  id,
  name: id,
  side: "front",
  armAngleDeg,
  count,
  startDeg,
  depth,
});

/** Rings one above the other, each to the corners of the one before, so that a move of the first moves all; a flat on top. */
function rings(count: number, angles: readonly number[], hasTable: boolean): Plan {
  const tiers = angles.map((angle, i): Tier => {
    const depth: Tier["depth"] = i === 0 ? { rule: "touch" } : { rule: "corners", of: `t${i - 1}` };
    return tier(`t${i}`, angle, i % 2 === 0 ? 0 : 180 / count, count, depth);
  });
  const table = tier("top", 90, 0, 1, { rule: "depth", mm: 0.4 });
  return {
    format: "glintwright-plan",
    version: 1,
    name: "drag bench",
    piece: { diameterMm: 30, glass: "borosilicate" },
    rig: { wheelStops: 96 },
    tiers: hasTable ? [...tiers, table] : tiers,
  };
}
const PLANS: Readonly<Record<string, Plan>> = {
  25: rings(12, [5, 30], true),
  60: rings(12, [5, 24, 42, 58, 72], false),
  120: rings(24, [5, 18, 30, 42, 54], false),
};

const PARTS = ["solve", "cut", "report", "clip", "draw"] as const;
type Part = (typeof PARTS)[number];
type Times = Record<Part, number[]>;

const MOVES = 20;
const WARM_UP = 4;

/** Moves the first tier's arm a little and times what follows; `draw` is React and the browser's layout. */
async function move(step: number, times: Times | null): Promise<void> {
  const angle = 5 + 4 * Math.sin(step / 7);
  studio.getState().dragTo({ type: "change-tier", tierId: "t0", change: { armAngleDeg: angle } });
  const { plan } = studio.getState();
  const at = [performance.now()];
  const { planes } = solved(plan);
  at.push(performance.now());
  solid(plan);
  at.push(performance.now());
  report(plan);
  at.push(performance.now());
  bodyArrays(planes);
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

async function run() {
  const results: Record<string, unknown> = {};
  for (const [facets, plan] of Object.entries(PLANS)) {
    studio.getState().open({ plan });
    studio.getState().beginDrag({ about: "tier", tier: 1, field: "armAngleDeg" });
    const times: Times = { solve: [], cut: [], report: [], clip: [], draw: [] };
    for (let i = 0; i < WARM_UP; i++) await move(i, null);
    for (let i = 0; i < MOVES; i++) await move(WARM_UP + i, times);
    studio.getState().cancelDrag();
    const together = times.solve.map((ms, i) => ms + times.cut[i]);
    results[facets] = {
      ...Object.fromEntries(PARTS.map((part) => [part, summary(times[part])])),
      solveAndCut: summary(together),
    };
  }
  return results;
}

declare global {
  interface Window {
    runDragBench: typeof run;
  }
}
window.runDragBench = run;
