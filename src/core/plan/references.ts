/** How the parts of a plan refer to one another: ids are unique, a depth rule names an earlier tier, a measured facet exists. */
import type { Plan, Tier } from "./document.ts";
import { COUNTS } from "./limits.ts";
import { PlanFileError, pathInWords, shown } from "./plan-file-error.ts";

/** The tier that a depth rule names, with the name of its field; null for rules that stand alone. */
export function referenceOf(tier: Tier): { readonly field: "to" | "of"; readonly id: string } | null {
  if (tier.depth.rule === "close") return { field: "to", id: tier.depth.to };
  if (tier.depth.rule === "corners") return { field: "of", id: tier.depth.of };
  return null;
}

/** Ids of a tier's facets: `tierId/1` .. `tierId/count`. */
export const facetIds = (tier: Pick<Tier, "id" | "count">): string[] =>
  Array.from({ length: tier.count }, (_, k) => `${tier.id}/${k + 1}`);

function refuse(path: readonly PropertyKey[], message: string): never {
  throw new PlanFileError(`${pathInWords(path)}: ${message}`);
}

function checkUnique(ids: readonly string[], path: readonly PropertyKey[]): void {
  const seen = new Set<string>();
  for (const [i, id] of ids.entries()) {
    if (seen.has(id)) refuse([...path, i, "id"], `${shown(id)} is used twice, every id must be different`);
    seen.add(id);
  }
}

function checkReference(tiers: readonly Tier[], i: number): void {
  const reference = referenceOf(tiers[i]);
  if (!reference) return;
  const path = ["tiers", i, "depth", reference.field];
  const at = tiers.findIndex((tier) => tier.id === reference.id);
  if (at < 0) refuse(path, `there is no tier ${shown(reference.id)}, only an earlier tier may be named`);
  if (at === i) refuse(path, `the tier names itself, only an earlier tier may be named`);
  if (at > i)
    refuse(path, `${shown(reference.id)} is cut later than this tier, only an earlier tier may be named`);
}

function checkMeasuredFacets(tier: Tier, i: number): void {
  const own = new Set(facetIds(tier));
  for (const id of Object.keys(tier.asCut?.facets ?? {}))
    if (!own.has(id))
      refuse(
        ["tiers", i, "asCut", "facets"],
        `there is no facet ${shown(id)}, ${shown(`${tier.id}/1`)} to ${shown(`${tier.id}/${tier.count}`)} allowed`,
      );
}

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
  const facets = plan.tiers.reduce((sum, tier) => sum + tier.count, 0);
  if (facets > COUNTS.facets)
    refuse(["tiers"], `${facets} facets in all are too many, at most ${COUNTS.facets} allowed`);
  for (const [i, tier] of plan.tiers.entries()) {
    checkReference(plan.tiers, i);
    checkMeasuredFacets(tier, i);
  }
}
