/** How the parts of a plan refer to one another: ids are unique, a depth rule names an earlier tier, a measured facet exists. */
import type { Plan, Tier, Work } from "./document.ts";
import { COUNTS } from "./limits.ts";
import { checkPictures } from "./pictures.ts";
import { PlanFileError } from "./plan-file-error.ts";
import { referenceIn } from "./rules/amounts.ts";

/** Ids of a tier's facets: `tierId/1` .. `tierId/count`. */
export const facetIds = (tier: Pick<Tier, "id" | "count">): string[] =>
  Array.from({ length: tier.count }, (_, k) => `${tier.id}/${k + 1}`);

function checkUnique(ids: readonly string[], path: readonly PropertyKey[]): void {
  const seen = new Set<string>();
  for (const [i, id] of ids.entries()) {
    if (seen.has(id))
      throw new PlanFileError({ code: "id-used-twice", data: { id }, path: [...path, i, "id"] });
    seen.add(id);
  }
}

function checkReference(tiers: readonly Tier[], i: number): void {
  const reference = referenceIn(tiers[i].depth);
  if (!reference) return;
  const path = ["tiers", i, "depth", reference.field];
  const { id } = reference;
  const at = tiers.findIndex((tier) => tier.id === id);
  if (at < 0) throw new PlanFileError({ code: "names-no-tier", data: { id }, path });
  if (at === i) throw new PlanFileError({ code: "names-itself", data: {}, path });
  if (at > i) throw new PlanFileError({ code: "names-later-tier", data: { id }, path });
}

function checkMeasuredFacets(tier: Tier, i: number): void {
  const own = facetIds(tier);
  const [first, last] = [own[0], own[own.length - 1]];
  const path = ["tiers", i, "asCut", "facets"];
  for (const id of Object.keys(tier.asCut?.facets ?? {}))
    if (!own.includes(id))
      throw new PlanFileError({ code: "no-such-facet", data: { id, first, last }, path });
}

/**
 * The work stands at a tier and a facet that are there. Its stage may be one that the rig no longer has: the lap then begins
 * that tier anew, so that nothing is skipped.
 */
function checkWork({ work, tiers }: Plan): void {
  if (!work) return;
  const tier = tiers.find(({ id }) => id === work.tier);
  if (!tier)
    throw new PlanFileError({ code: "no-such-tier", data: { id: work.tier }, path: ["work", "tier"] });
  const own = facetIds(tier);
  const data = { id: work.facet, first: own[0], last: own[own.length - 1] };
  if (!own.includes(work.facet))
    throw new PlanFileError({ code: "no-such-facet", data, path: ["work", "facet"] });
}

/** Whether a place in the work is one that the plan has. */
export const hasPlaceOf = (tiers: readonly Pick<Tier, "id" | "count">[], { tier, facet }: Work): boolean =>
  tiers.some((one) => one.id === tier && facetIds(one).includes(facet));

/** @throws PlanFileError for the first id used twice, reference that can't be followed or count that is too large */
export function checkReferences(plan: Plan): void {
  checkUnique(
    plan.tiers.map((tier) => tier.id),
    ["tiers"],
  );
  checkUnique(
    (plan.rig.stages ?? []).map((stage) => stage.id),
    ["rig", "stages"],
  );
  const count = plan.tiers.reduce((sum, tier) => sum + tier.count, 0);
  if (count > COUNTS.facets)
    throw new PlanFileError({
      code: "too-many-facets",
      data: { count, most: COUNTS.facets },
      path: ["tiers"],
    });
  for (const [i, tier] of plan.tiers.entries()) {
    checkReference(plan.tiers, i);
    checkMeasuredFacets(tier, i);
  }
  checkWork(plan);
  checkPictures(plan.pictures ?? {});
}
