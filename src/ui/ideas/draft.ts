/** A wish as the person says it on screen, and the wish that it means for the plan on the bench. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { IdeaWish, MeasureName } from "../../core/ideas/wish.ts";
import type { Plan } from "../../core/plan/document.ts";

/** What one may ask of a piece, each a measure with its sign. */
export const WANTS = {
  sparkle: ["sparkle", 1],
  back: ["back", 1],
  through: ["through", 1],
  inside: ["inside", 1],
  images: ["images", 1],
  round: ["skinShare", 1],
  covered: ["skinShare", -1],
  large: ["leastFacetMm", 1],
  quick: ["minutes", -1],
} as const satisfies Record<string, readonly [MeasureName, number]>;
export type Want = keyof typeof WANTS;

/** Measures that the wall can be spread over. */
export const AXES = [
  "minutes",
  "facets",
  "leastFacetMm",
  "skinShare",
  "back",
  "through",
  "inside",
  "images",
  "sparkle",
] as const satisfies readonly MeasureName[];
export type Axis = (typeof AXES)[number];

export interface Draft {
  readonly sides: IdeaWish["sides"];
  readonly mostTiers: number;
  readonly mostFacets: number;
  readonly mostHours: number;
  readonly want: Want;
  readonly also: Want | "nothing";
  readonly across: Axis;
  readonly up: Axis;
  /** So many of the plan's first tiers stay as they are. */
  readonly keep: number;
}

export const draft = createStore<Draft>(() => ({
  sides: "both",
  mostTiers: 5,
  mostFacets: 60,
  mostHours: 8,
  want: "back",
  also: "nothing",
  across: "minutes",
  up: "back",
  keep: 0,
}));
export const useDraft = (): Draft => useStore(draft);

/** Less than the first wish by as much. */
const ALSO = 0.6;
const MINUTES = 60;

/** The last tier that is cut already, counted from 1: it stays, and all before it. */
export const leastKept = ({ tiers }: Plan): number =>
  tiers.findLastIndex(({ asCut }) => asCut !== undefined) + 1;

export function wishOf(plan: Plan, own: Draft): IdeaWish {
  const keep = plan.tiers.slice(0, Math.max(own.keep, leastKept(plan)));
  const keptFacets = keep.reduce((sum, { count }) => sum + count, 0);
  const want: Partial<Record<MeasureName, number>> = {};
  if (own.also !== "nothing") want[WANTS[own.also][0]] = ALSO * WANTS[own.also][1];
  want[WANTS[own.want][0]] = WANTS[own.want][1];
  return {
    format: "glintwright-wish",
    version: 1,
    piece: plan.piece,
    rig: plan.rig,
    sides: own.sides,
    tiers: [Math.max(1, keep.length), Math.max(own.mostTiers, keep.length)],
    facets: [1, Math.max(own.mostFacets, keptFacets)],
    ...(keep.length > 0 ? { keep } : {}),
    limits: { minutes: [0, own.mostHours * MINUTES] },
    want,
    across: own.across,
    up: own.up,
  };
}
