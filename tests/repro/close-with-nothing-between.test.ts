/**
 * A flat at the pole that is to close up to a ring from which another ring parts it already: at every depth, however slight, no
 * skin borders both. No depth is the least then. The rule took the depth at which some far circle was met: 0.62 of the radius.
 */
import { describe, expect, it } from "vitest";
import type { DepthRule, Plan, Side, Tier } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import type { SolvedPlan } from "../../src/core/plan/solved.ts";

const tier = (
  id: string,
  side: Side,
  armAngleDeg: number,
  count: number,
  startDeg: number,
  depth: DepthRule,
): Tier => ({
  id,
  name: id,
  side,
  armAngleDeg,
  count,
  startDeg,
  depth,
});
const planOf = (wheelStops: number, ...tiers: Tier[]): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: "nothing between",
  piece: { diameterMm: 25, glass: "borosilicate" },
  rig: { wheelStops },
  tiers,
});
const close = (to: string): DepthRule => ({ rule: "close", to });

/** Below the waist, and the flat on the other side of it. */
const across = planOf(
  96,
  tier("waist", "front", 20, 8, 0, { rule: "touch" }),
  tier("below", "back", 35, 8, 11.25, close("waist")),
  tier("flat", "front", 90, 1, 0, close("below")),
);
/** The ring in the middle parts the flat from those lower down. */
const over = planOf(
  60,
  tier("high", "front", 47.5, 8, 11.25, { rule: "touch" }),
  tier("low", "front", 25, 8, 0, { rule: "corners", of: "high" }),
  tier("flat", "front", 90, 1, 0, close("low")),
);

const ROWS = 240;
const COLUMNS = 480;
/** Circles that touch are made to overlap by more than a step of the grid, so that it finds no way between them. */
const SUNK = 0.02;

/** Whether some connected patch of skin borders two tiers: a grid on the sphere, flooded; no engine in between. */
function bordersBoth(
  { planes, tiers }: SolvedPlan,
  depth: number,
  a: string,
  b: string,
  sunk: number,
): boolean {
  const of = tiers.flatMap(({ tierId, count }) => Array.from({ length: count }, () => tierId));
  const at = planes.map(({ n, h }, i) => ({ n, h: of[i] === "flat" ? 1 - depth : h - sunk }));
  /** Of each place the tier that takes it; null on skin. */
  const taken = Array.from({ length: ROWS * COLUMNS }, (_, k) => {
    const polar = (Math.PI * (Math.floor(k / COLUMNS) + 0.5)) / ROWS;
    const turn = (2 * Math.PI * (k % COLUMNS)) / COLUMNS;
    const p = [Math.sin(polar) * Math.cos(turn), Math.sin(polar) * Math.sin(turn), Math.cos(polar)];
    const i = at.findIndex(({ n, h }) => n[0] * p[0] + n[1] * p[1] + n[2] * p[2] > h);
    return i < 0 ? null : of[i];
  });
  const beside = (k: number): number[] => {
    const [row, column] = [Math.floor(k / COLUMNS), k % COLUMNS];
    const sides = [(column + 1) % COLUMNS, (column + COLUMNS - 1) % COLUMNS].map((c) => row * COLUMNS + c);
    return [...sides, ...(row > 0 ? [k - COLUMNS] : []), ...(row < ROWS - 1 ? [k + COLUMNS] : [])];
  };
  const seen = new Set<number>();
  for (let start = 0; start < taken.length; start++) {
    if (taken[start] !== null || seen.has(start)) continue;
    const borders = new Set<string>();
    const open = [start];
    seen.add(start);
    for (let k = open.pop(); k !== undefined; k = open.pop()) {
      for (const next of beside(k)) {
        const by = taken[next];
        if (by !== null) borders.add(by);
        else if (!seen.has(next)) {
          seen.add(next);
          open.push(next);
        }
      }
    }
    if (borders.has(a) && borders.has(b)) return true;
  }
  return false;
}

describe("closing up to a tier that is parted already", () => {
  it.each([
    ["by the waist", across, "below"],
    ["by the ring above it", over, "low"],
  ] as const)("%s is an answer in words, and takes nothing", (_, plan, to) => {
    const solved = solvePlan(plan);
    for (const depth of [0.005, 0.02, 0.1]) expect(bordersBoth(solved, depth, "flat", to, SUNK)).toBe(false);
    expect(solved.tiers.at(-1)).toMatchObject({ depthMm: 0, met: false });
    const said = solved.findings.filter(({ code }) => code === "rule-unmet");
    expect(said).toMatchObject([
      {
        severity: "stop",
        tier: "flat",
        data: { rule: "close", why: "nothing-between", other: to, depthMm: 0 },
      },
    ]);
  });

  it.each([
    [
      "the waist",
      planOf(96, ...across.tiers.slice(0, 2), tier("flat", "front", 90, 1, 0, close("waist"))),
      "waist",
    ],
    [
      "the high ring",
      planOf(60, ...over.tiers.slice(0, 2), tier("flat", "front", 90, 1, 0, close("high"))),
      "high",
    ],
  ] as const)("is met by a depth where skin lies between: up to %s", (_, plan, to) => {
    const solved = solvePlan(plan);
    const { depthMm, met } = solved.tiers.at(-1) ?? { depthMm: 0, met: false };
    expect(met).toBe(true);
    for (const part of [0.2, 0.5])
      expect(bordersBoth(solved, (part * depthMm) / 12.5, "flat", to, 0)).toBe(true);
    expect(bordersBoth(solved, (1.02 * depthMm) / 12.5, "flat", to, SUNK)).toBe(false);
  });
});
