import type { names as en } from "../en/names.ts";
import type { Translated } from "../language.ts";

export const names: Translated<typeof en> = {
  tier: (place) => `Reihe ${place}`,
  facet: (tier, place) => `Facette ${place} von ${tier}`,
};
