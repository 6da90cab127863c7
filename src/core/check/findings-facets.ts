/** Facets that are not what they were meant to be: never cut, lost again, twice in one place, or too thin to see. */
import { cutBall } from "../geometry/solid.ts";
import { angleBetween } from "../geometry/vec.ts";
import { degrees, many, mm } from "../plan/say.ts";
import type { Finding } from "../plan/solved.ts";
import type { Checked } from "./findings.ts";
import { supportOf } from "./size.ts";

/** Normals closer than this are one facet cut twice, not two; about what an arm's angle can be set to. Common practice, no source. */
const NEAR_DUPLICATE_DEG = 1;

/** Facets of a solid that nothing is left of, as positions. */
const goneOf = (swallowed: readonly { readonly swallowed: boolean }[]): number[] =>
  swallowed.flatMap((f, i) => (f.swallowed ? [i] : []));

function vanishedFinding({ solid }: Checked): Finding[] {
  if (!solid.vanished) return [];
  return [
    {
      code: "vanished",
      severity: "stop",
      data: {},
      text: "Nothing is left of the piece: some facets are cut deeper than the glass is thick. Make the deepest tier shallower.",
    },
  ];
}

function duplicateFindings({ solved, solid }: Checked): Finding[] {
  return solid.facets.flatMap((facet, i): Finding[] => {
    if (facet.duplicateOf < 0) return [];
    const [id, other] = [solved.facets[i].id, solved.facets[facet.duplicateOf].id];
    return [
      {
        code: "duplicate",
        severity: "warn",
        facets: [other, id],
        tier: solved.plan.tiers[solved.facets[i].tierIndex].id,
        data: { keeps: other, swallowed: id },
        text: `Facet ${id} is the very same flat as ${other}, which keeps the face. Leave it out or turn its tier.`,
      },
    ];
  });
}

function nearDuplicateFindings({ solved, solid }: Checked): Finding[] {
  const found: Finding[] = [];
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
      found.push({
        code: "near-duplicate",
        severity: "warn",
        facets: [solved.facets[a].id, solved.facets[b].id],
        tier: solved.plan.tiers[solved.facets[b].tierIndex].id,
        data: { apartDeg, apartMm },
        text: `Facets ${solved.facets[a].id} and ${solved.facets[b].id} are one flat cut twice: ${degrees(apartDeg)} and ${mm(apartMm)} apart. Leave one out.`,
      });
    }
  });
  return found;
}

/** Facets not on the finished piece, told apart by whether they were there when their tier was cut. One finding a tier and kind. */
function missingFindings({ solved, solid }: Checked): Finding[] {
  const gone = goneOf(solid.facets).filter((i) => solid.facets[i].duplicateOf < 0);
  if (gone.length === 0 || solid.vanished) return [];
  return solved.tiers.flatMap((tier): Finding[] => {
    const own = gone.filter((i) => i >= tier.first && i < tier.first + tier.count);
    if (own.length === 0) return [];
    const whenCut = cutBall(solved.planes.slice(0, tier.first + tier.count));
    const lost = own.filter((i) => !whenCut.facets[i].swallowed);
    const never = own.filter((i) => whenCut.facets[i].swallowed);
    const ids = (list: readonly number[]) => list.map((i) => solved.facets[i].id);
    const found: Finding[] = [];
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
        text: `At ${mm(tier.depthMm)} there is no glass for ${many(never.length, "facet")} of tier ${tier.tierId}: it begins ${mm(depthMm)} below the round surface. Cut deeper than that or leave the tier out.`,
      });
    }
    if (lost.length > 0) {
      const by = solved.tiers.filter((later) => later.first > tier.first).map((later) => later.tierId);
      found.push({
        code: "lost",
        severity: "warn",
        tier: tier.tierId,
        facets: ids(lost),
        data: { by },
        text: `${many(lost.length, "facet")} of tier ${tier.tierId} ${lost.length === 1 ? "is" : "are"} ground away again by later tiers (${by.join(", ")}). Make those shallower or tier ${tier.tierId} deeper.`,
      });
    }
    return found;
  });
}

function sliverFindings({ solved, solid, toleranceMm }: Checked): Finding[] {
  const limit = toleranceMm / solved.radiusMm;
  return solved.tiers.flatMap((tier): Finding[] => {
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
        text: `${many(thin.length, "facet")} of tier ${tier.tierId} ${thin.length === 1 ? "is a sliver" : "are slivers"}, ${mm(leastMm)} at the least: thinner than the ${mm(toleranceMm)} you permit. Cut the tier deeper or leave it out.`,
      },
    ];
  });
}

export function facetFindings(checked: Checked): Finding[] {
  return [
    ...vanishedFinding(checked),
    ...duplicateFindings(checked),
    ...nearDuplicateFindings(checked),
    ...missingFindings(checked),
    ...sliverFindings(checked),
  ];
}
