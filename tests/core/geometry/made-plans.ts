/**
 * Plans as people make them: neat angles, counts that divide the wheel and some that don't, rings chained to one another on
 * both sides so that planes really meet in a point, which planes drawn at random never do.
 */
import fc from "fast-check";
import type { DepthRule, Plan, Tier } from "../../../src/core/plan/document.ts";
import { within } from "./mesh-support.ts";

const wheels = [12, 32, 48, 64, 72, 80, 96, null] as const;
const counts = [1, 2, 3, 4, 5, 6, 7, 8, 8, 9, 10, 12, 12, 16, 20, 24] as const;

interface Seed {
  readonly count: number;
  readonly neatAngle: number;
  readonly oddAngle: number;
  readonly isNeat: boolean;
  readonly offset: number;
  readonly rule: DepthRule["rule"];
  readonly share: number;
  readonly isFront: boolean;
  readonly target: number;
}

const seed: fc.Arbitrary<Seed> = fc.record({
  count: fc.constantFrom(...counts),
  neatAngle: fc.integer({ min: 0, max: 18 }).map((k) => 5 * k),
  oddAngle: within(0, 90),
  isNeat: fc.constantFrom(true, true, true, false),
  offset: fc.constantFrom(0, 0.5, 0.25),
  rule: fc.constantFrom<DepthRule["rule"]>(
    ...(["depth", "width", "gap", "touch", "touch", "edge"] as const),
    ...(["close", "close", "corners", "corners"] as const),
  ),
  share: within(0, 1),
  isFront: fc.constantFrom(true, true, false),
  target: fc.nat(),
});

function ruleOf({ rule, share, target }: Seed, diameterMm: number, before: number): DepthRule {
  const id = `T${before === 0 ? 1 : (target % before) + 1}`;
  if (rule === "close") return before === 0 ? { rule: "touch" } : { rule, to: id };
  if (rule === "corners") return before === 0 ? { rule: "touch" } : { rule, of: id };
  if (rule === "touch") return { rule };
  const parts = { depth: 0.15, width: 0.45, gap: 0.03, edge: 0.15 };
  return { rule, mm: Number((diameterMm * parts[rule] * (0.1 + share)).toFixed(2)) };
}

function tierOf(from: Seed, i: number, diameterMm: number): Tier {
  const angle = from.isNeat ? from.neatAngle : Number(from.oddAngle.toFixed(1));
  const count = angle === 90 ? 1 : from.count;
  return {
    id: `T${i + 1}`,
    name: `Tier ${i + 1}`,
    side: from.isFront ? "front" : "back",
    armAngleDeg: angle,
    count,
    startDeg: (from.offset * 360) / count,
    depth: ruleOf(from, diameterMm, i),
  };
}

export const madePlan: fc.Arbitrary<Plan> = fc
  .record({
    diameterMm: fc.integer({ min: 15, max: 80 }),
    wheelStops: fc.constantFrom(...wheels),
    tiers: fc.array(seed, { minLength: 1, maxLength: 6 }),
  })
  .map(({ diameterMm, wheelStops, tiers }) => ({
    format: "glintwright-plan",
    version: 1,
    name: "made",
    piece: { diameterMm, glass: "borosilicate" },
    rig: { wheelStops },
    tiers: tiers.map((t, i) => tierOf(t, i, diameterMm)),
  }));
