/** Facets that are not what they were meant to be: never cut, lost again, twice in one place, or too thin to see. */
import { cutBall } from "../geometry/solid.ts";
import type { Solid } from "../geometry/solid-types.ts";
import { angleBetween } from "../geometry/vec.ts";
import type { PlanFinding } from "../plan/finding.ts";
import type { SolvedPlan, SolvedTier } from "../plan/solved.ts";
import type { Checked } from "./findings.ts";
import { supportOf } from "./size.ts";

/** Normals closer than this are one facet cut twice, not two; about what an arm's angle can be set to. Common practice, no source. */
const NEAR_DUPLICATE_DEG = 1;

/** Depths are told to a hundredth of a millimetre: less than half of that reads as none. */
export const READS_AS_NOTHING_MM = 0.005;

/** All that is asked here. */
type Cut = Pick<Checked, "solved" | "solid" | "toleranceMm">;

/** Facets of a solid that nothing is left of, as positions. */
const goneOf = (swallowed: readonly { readonly swallowed: boolean }[]): number[] =>
  swallowed.flatMap((f, i) => (f.swallowed ? [i] : []));

function vanishedFinding({ solid }: Cut): PlanFinding[] {
  if (!solid.vanished) return [];
  return [
    {
      code: "vanished",
      severity: "stop",
      data: {},
    },
  ];
}

/** Flats cut twice, gathered by the two tiers that cut them: one cause is one finding. */
function byTiers<T extends { readonly a: number; readonly b: number }>(
  { solved }: Cut,
  twice: readonly T[],
): T[][] {
  const groups = new Map<string, T[]>();
  for (const one of twice) {
    const key = `${solved.facets[one.a].tierIndex} ${solved.facets[one.b].tierIndex}`;
    const own = groups.get(key);
    if (own) own.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()];
}

function duplicateFindings(checked: Cut): PlanFinding[] {
  const { solved, solid } = checked;
  const id = (i: number) => solved.facets[i].id;
  const twice = solid.facets.flatMap((facet, b) =>
    facet.duplicateOf < 0 ? [] : [{ a: facet.duplicateOf, b }],
  );
  return byTiers(checked, twice).map((own): PlanFinding => {
    const [{ a, b }] = own;
    const tier = solved.plan.tiers[solved.facets[b].tierIndex].id;
    const other = solved.plan.tiers[solved.facets[a].tierIndex].id;
    return {
      code: "duplicate",
      severity: "warn",
      facets: own.flatMap((one) => [id(one.a), id(one.b)]),
      tier,
      data: { keeps: id(a), swallowed: id(b), count: own.length, other },
    };
  });
}

function nearDuplicateFindings(checked: Cut): PlanFinding[] {
  const { solved, solid } = checked;
  const found: {
    readonly a: number;
    readonly b: number;
    readonly apartDeg: number;
    readonly apartMm: number;
  }[] = [];
  const limit = (NEAR_DUPLICATE_DEG * Math.PI) / 180;
  solved.planes.forEach((plane, a) => {
    if (solid.facets[a].duplicateOf >= 0) return;
    for (let b = a + 1; b < solved.planes.length; b++) {
      if (solid.facets[b].duplicateOf >= 0) continue;
      const dot =
        plane.n[0] * solved.planes[b].n[0] +
        plane.n[1] * solved.planes[b].n[1] +
        plane.n[2] * solved.planes[b].n[2];
      if (dot < 0.999) continue;
      const angle = angleBetween(plane.n, solved.planes[b].n);
      if (angle > limit) continue;
      const apartDeg = (angle * 180) / Math.PI;
      const apartMm = Math.abs(plane.h - solved.planes[b].h) * solved.radiusMm;
      found.push({ a, b, apartDeg, apartMm });
    }
  });
  return byTiers(checked, found).map((own): PlanFinding => {
    const id = (i: number) => solved.facets[i].id;
    const [{ a, b }] = own;
    const tier = solved.plan.tiers[solved.facets[b].tierIndex].id;
    const other = solved.plan.tiers[solved.facets[a].tierIndex].id;
    const apartDeg = Math.max(...own.map((one) => one.apartDeg));
    const apartMm = Math.max(...own.map((one) => one.apartMm));
    return {
      code: "near-duplicate",
      severity: "warn",
      facets: own.flatMap((one) => [id(one.a), id(one.b)]),
      tier,
      data: { apartDeg, apartMm, count: own.length, other },
    };
  });
}

/** The piece as it stands when a tier has been cut; each is made once, however many tiers ask. */
function piecesWhenCut({ solved, solid }: Cut): (tier: SolvedTier) => Solid {
  const made = new Map<number, Solid>([[solved.planes.length, solid]]);
  return ({ first, count }) => {
    const known = made.get(first + count) ?? cutBall(solved.planes.slice(0, first + count));
    made.set(first + count, known);
    return known;
  };
}

/** The later tiers with which facets of a tier are gone for the first time, in cutting order. */
function tiersThatTake(
  solved: SolvedPlan,
  tier: SolvedTier,
  lost: readonly number[],
  pieceWhenCut: (tier: SolvedTier) => Solid,
): string[] {
  let left = lost;
  return solved.tiers.flatMap((later) => {
    if (later.first <= tier.first || left.length === 0) return [];
    const { facets } = pieceWhenCut(later);
    const before = left.length;
    left = left.filter((i) => !facets[i].swallowed);
    return left.length < before ? [later.tierId] : [];
  });
}

/** Facets not on the finished piece, told apart by whether they were there when their tier was cut. One finding a tier and kind. */
function missingFindings(checked: Cut): PlanFinding[] {
  const { solved, solid } = checked;
  const gone = goneOf(solid.facets).filter((i) => solid.facets[i].duplicateOf < 0);
  if (gone.length === 0 || solid.vanished) return [];
  const pieceWhenCut = piecesWhenCut(checked);
  return solved.tiers.flatMap((tier): PlanFinding[] => {
    const own = gone.filter((i) => i >= tier.first && i < tier.first + tier.count);
    if (own.length === 0) return [];
    const whenCut = pieceWhenCut(tier);
    const lost = own.filter((i) => !whenCut.facets[i].swallowed);
    const never = own.filter((i) => whenCut.facets[i].swallowed);
    const ids = (list: readonly number[]) => list.map((i) => solved.facets[i].id);
    const found: PlanFinding[] = [];
    if (never.length > 0) {
      const depthMm = Math.max(
        ...never.map((i) => (1 - supportOf(whenCut, solved.planes[i].n)) * solved.radiusMm),
      );
      found.push({
        code: "swallowed",
        severity: "warn",
        tier: tier.tierId,
        facets: ids(never),
        data: { depthMm: tier.depthMm, neededMm: depthMm, all: never.length === tier.count },
      });
    }
    if (lost.length > 0) {
      const by = tiersThatTake(solved, tier, lost, pieceWhenCut);
      found.push({
        code: "lost",
        severity: "warn",
        tier: tier.tierId,
        facets: ids(lost),
        data: { by },
      });
    }
    return found;
  });
}

function sliverFindings({ solved, solid, toleranceMm }: Cut): PlanFinding[] {
  const limit = toleranceMm / solved.radiusMm;
  return solved.tiers.flatMap((tier): PlanFinding[] => {
    const thin = solid.facets.flatMap((f, i) =>
      i >= tier.first && i < tier.first + tier.count && !f.swallowed && Math.min(f.width, f.height) < limit
        ? [i]
        : [],
    );
    if (thin.length === 0) return [];
    const leastMm =
      Math.min(...thin.map((i) => Math.min(solid.facets[i].width, solid.facets[i].height))) * solved.radiusMm;
    return [
      {
        code: "sliver",
        severity: "warn",
        tier: tier.tierId,
        facets: thin.map((i) => solved.facets[i].id),
        data: { leastMm, toleranceMm },
      },
    ];
  });
}

export function facetFindings(checked: Cut): PlanFinding[] {
  return [
    ...vanishedFinding(checked),
    ...duplicateFindings(checked),
    ...nearDuplicateFindings(checked),
    ...missingFindings(checked),
    ...sliverFindings(checked),
  ];
}
