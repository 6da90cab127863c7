/** What a tier, a facet and a stage are called: by their names, else by their places. Said here and nowhere else. */
import type { Plan, Stage } from "../core/plan/document.ts";
import { names as de } from "./de/names.ts";
import { names as en } from "./en/names.ts";
import { dictionary, type Language } from "./language.ts";

const WORDS = dictionary(en, de);

type Tiers = { readonly tiers: readonly Pick<Plan["tiers"][number], "id" | "name">[] };

/** A tier by its own name, or by its place (from 0) where it has none. */
export const nameOrPlace = (
  name: string | undefined,
  index: number,
  numbered: (place: number) => string,
): string => name?.trim() || numbered(index + 1);

/** A tier that may be gone, by the name and the place (from 0) that it had. */
export const nameOfTier = (name: string | undefined, index: number, language: Language): string =>
  nameOrPlace(name, index, WORDS[language].tier);

/** The tier at a place of a plan, from 0. */
export const tierNameAt = ({ tiers }: Tiers, index: number, language: Language): string =>
  nameOfTier(tiers[index]?.name, index, language);

/** A tier by its id; one that the plan doesn't have is called by its id. */
export function tierName(plan: Tiers, id: string, language: Language): string {
  const index = plan.tiers.findIndex((tier) => tier.id === id);
  return index < 0 ? id : tierNameAt(plan, index, language);
}

/** A facet by its id, `tierId/k`: "Facet 3 of Shoulder". */
export function facetName(plan: Tiers, id: string, language: Language): string {
  const cut = id.lastIndexOf("/");
  return WORDS[language].facet(tierName(plan, id.slice(0, cut), language), id.slice(cut + 1));
}

export const stageName = (stages: readonly Stage[], id: string): string =>
  stages.find((stage) => stage.id === id)?.name.trim() || id;
