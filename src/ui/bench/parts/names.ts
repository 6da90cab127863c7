/** How tiers and facets are called on the bench. */
import type { Plan } from "../../../core/plan/document.ts";
import { nameOrPlace } from "../../../words/names.ts";

interface TierWords {
  readonly tierNumber: (place: number) => string;
}

/** A tier by its name, or by its place when it has none. */
export const tierName = (plan: Plan, index: number, words: TierWords): string =>
  nameOrPlace(plan.tiers[index]?.name, index, words.tierNumber);

export const tierIndexOf = (plan: Plan, tierId: string): number =>
  plan.tiers.findIndex((tier) => tier.id === tierId);

export const tierNameOf = (plan: Plan, tierId: string, words: TierWords): string =>
  tierName(plan, tierIndexOf(plan, tierId), words);

/** Position of a facet in its tier, from 1: the figure after the last slash of its id. */
export const facetNumber = (facetId: string): number => Number(facetId.slice(facetId.lastIndexOf("/") + 1));
