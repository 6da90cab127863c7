/** Plans of every kind that the format admits, ends of ranges included, for properties that must hold for all of them. */
import fc from "fast-check";
import type { DepthRule, Plan, Tier } from "../../../src/core/plan/document.ts";
import { planFromData } from "../../../src/core/plan/file.ts";

const mm = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 0, max: 20, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(0, 1e-12, 1e-6, 5e-324, 1e6) },
);
const angle = fc.oneof(
  fc.double({ min: 0, max: 90, noNaN: true }),
  fc.constantFrom(0, 90, 30, 45, 89.999999999, 1e-9),
);
const start = fc.oneof(
  fc.double({ min: -720, max: 720, noNaN: true }),
  fc.constantFrom(0, 1e15, -1e300, Number.MAX_VALUE, 5e-324),
);

/** A rule for the tier at place `i`; it names an earlier tier when there is one. */
function ruleAt(i: number): fc.Arbitrary<DepthRule> {
  const alone = fc.oneof(
    mm.map((value): DepthRule => ({ rule: "depth", mm: value })),
    mm.map((value): DepthRule => ({ rule: "width", mm: value })),
    mm.map((value): DepthRule => ({ rule: "gap", mm: value })),
    mm.map((value): DepthRule => ({ rule: "edge", mm: value })),
    fc.constant<DepthRule>({ rule: "touch" }),
  );
  if (i === 0) return alone;
  const earlier = fc.nat(i - 1).map((k) => `t${k}`);
  return fc.oneof(
    { weight: 5, arbitrary: alone },
    { weight: 2, arbitrary: earlier.map((to): DepthRule => ({ rule: "close", to })) },
    { weight: 2, arbitrary: earlier.map((of): DepthRule => ({ rule: "corners", of })) },
  );
}

const tierAt = (i: number, mostFacets: number): fc.Arbitrary<Tier> =>
  fc.record({
    id: fc.constant(`t${i}`),
    name: fc.string({ maxLength: 20 }),
    side: fc.constantFrom("front" as const, "back" as const),
    armAngleDeg: angle,
    count: fc.integer({ min: 1, max: mostFacets }),
    startDeg: start,
    depth: ruleAt(i),
  });

/** @param mostFacets of one tier; keep it small where every plan is solved */
export const arbitraryPlan = (mostTiers = 5, mostFacets = 16): fc.Arbitrary<Plan> =>
  fc
    .record({
      name: fc.string({ maxLength: 30 }),
      toleranceMm: fc.option(fc.double({ min: 1e-6, max: 10, noNaN: true }), { nil: undefined }),
      diameterMm: fc.oneof(fc.double({ min: 3, max: 300, noNaN: true }), fc.constantFrom(3, 300, 30)),
      glass: fc.constantFrom("borosilicate" as const, "soda-lime" as const, {
        name: "own",
        nd: 1.6,
        vd: 40,
        densityGcm3: 3,
      }),
      wheelStops: fc.oneof(fc.constantFrom(null, 2, 64, 96, 400), fc.integer({ min: 2, max: 400 })),
      tiers: fc
        .integer({ min: 0, max: mostTiers })
        .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => tierAt(i, mostFacets)))),
    })
    .map(({ name, toleranceMm, diameterMm, glass, wheelStops, tiers }) => {
      const tolerance = toleranceMm === undefined ? {} : { toleranceMm };
      const plan: Plan = {
        format: "glintwright-plan",
        version: 1,
        name,
        ...tolerance,
        piece: { diameterMm, glass },
        rig: { wheelStops },
        tiers,
      };
      return planFromData(JSON.parse(JSON.stringify(plan))).plan;
    });
