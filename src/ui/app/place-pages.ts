/** The table of places: a place is added by its name in `state/store.ts` and a line here. All but the first come in chunks of their own. */
import { type ComponentType, lazy } from "react";
import type { Place } from "../../state/store.ts";
import { Recipe } from "../plan/recipe/Recipe.tsx";

export const PLACES = {
  plan: Recipe,
  look: lazy(() => import("../look/LookPage.tsx")),
  bench: lazy(() => import("../bench/BenchPage.tsx")),
  ideas: lazy(() => import("../ideas/IdeasPage.tsx")),
} as const satisfies Record<Place, ComponentType>;

/** In the order in which they stand. */
export const PLACE_NAMES = Object.keys(PLACES) as readonly Place[];
