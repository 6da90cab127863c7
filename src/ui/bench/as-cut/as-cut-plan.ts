/** Putting what was measured, and what follows from it, into the plan. */
import type { Adjusted } from "../../../core/bench/as-cut/adjusted.ts";
import type { AsCutAnswer, FittedTier } from "../../../core/bench/as-cut/as-cut.ts";
import type { AsCut, Measured, Tier } from "../../../core/plan/document.ts";
import type { Command } from "../../../state/commands.ts";

type Change<T> = { readonly [K in keyof T]?: T[K] | undefined };

const without = <T extends object>(fields: T): T =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T;

/** Measurements with some changed or (undefined) taken away; undefined when none is left. */
export function withMeasured(asCut: AsCut | undefined, change: Change<AsCut>): AsCut | undefined {
  const next = without({ ...asCut, ...change }) as AsCut;
  const { sdMm: _sd, readSdDeg: _readSd, ...measured } = next;
  return Object.keys(measured).length > 0 ? next : undefined;
}

/** The same for one facet. */
export function withFacet(
  asCut: AsCut | undefined,
  facetId: string,
  change: Change<Measured>,
): AsCut | undefined {
  const own = without({ ...asCut?.facets?.[facetId], ...change }) as Measured;
  const { [facetId]: _before, ...others } = asCut?.facets ?? {};
  const facets = Object.keys(own).length > 0 ? { ...others, [facetId]: own } : others;
  return withMeasured(asCut, { facets: Object.keys(facets).length > 0 ? facets : undefined });
}

/** Figures are kept as finely as anyone could cut: a thousandth of a degree, a ten-thousandth of a millimetre. */
const round = (value: number, digits: number): number => Number(value.toFixed(digits));
const lockedAs = (fit: FittedTier, depthMm: number) => ({
  armAngleDeg: round(fit.armAngleDeg, 3),
  depth: { rule: "depth", mm: round(depthMm, 4) } as const,
});

/** Whether the plan already holds the tier as it was fitted: locking it again would change nothing that can be read. */
export const isLocked = (tier: Tier, fit: FittedTier): boolean =>
  tier.depth.rule === "depth" &&
  Math.abs(tier.depth.mm - fit.depthMm) < 0.002 &&
  Math.abs(tier.armAngleDeg - fit.armAngleDeg) < 0.02;

/** All measured tiers fixed as they were cut, as one undo step. Tiers still to cut keep their rules and so follow. */
export const lockAll = (answer: AsCutAnswer): Command => ({
  type: "apply-mend",
  code: "as-cut",
  commands: answer.tiers.map((fit) => ({
    type: "change-tier",
    tierId: fit.tier,
    change: lockedAs(fit, fit.depthMm),
  })),
});

/** One tier brought to the depth of its deepest facet. */
export const deepenTo = (fit: FittedTier, depthMm: number): Command => ({
  type: "change-tier",
  tierId: fit.tier,
  change: lockedAs(fit, depthMm),
});

/**
 * Measured tiers as they were cut and the others at the angles that follow, as one undo step. Unrounded: what meets within the
 * tolerance might not by a figure less.
 */
export const followCut = ({ tiers }: AsCutAnswer, { plan, changes }: Adjusted): Command => {
  const turned = new Set([...tiers, ...changes].map(({ tier }) => tier));
  return {
    type: "apply-mend",
    code: "follow-cut",
    commands: plan.tiers
      .filter(({ id }) => turned.has(id))
      .map(({ id, armAngleDeg, depth }) => ({
        type: "change-tier",
        tierId: id,
        change: { armAngleDeg, depth },
      })),
  };
};
