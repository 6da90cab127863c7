/** What a person wishes for: the piece and rig that are there, how much work it may be, and what the piece should be like. */
import type { Measures } from "../measure/measures.ts";
import type { Piece, Plan, Rig, Tier } from "../plan/document.ts";

/** Measures that are numbers, so that they can be limited, wanted and spread over the wall. */
export const NUMERIC_MEASURES = [
  "back",
  "through",
  "inside",
  "sparkle",
  "images",
  "skinShare",
  "facets",
  "tiers",
  "leastFacetMm",
  "minutes",
] as const satisfies readonly (keyof Measures)[];
export type MeasureName = (typeof NUMERIC_MEASURES)[number];

/** [least, most], both allowed. */
export type Limits = readonly [number, number];

export interface IdeaWish {
  readonly format: "glintwright-wish";
  readonly version: 1;
  readonly piece: Piece;
  readonly rig: Rig;
  readonly sides: "front" | "both";
  /** All tiers of a plan, kept ones and poles included. */
  readonly tiers: Limits;
  readonly facets: Limits;
  /** Tiers that stay as they are and are cut first. */
  readonly keep?: readonly Tier[];
  /** Every tier joined to another (the default), or only each ring closed in itself. */
  readonly meets?: "all" | "rings";
  readonly limits?: Readonly<Partial<Record<MeasureName, Limits>>>;
  /** Weights, -1 .. 1. */
  readonly want: Readonly<Partial<Record<MeasureName, number>>>;
  readonly across: MeasureName;
  readonly up: MeasureName;
  /** Files of the pictures inside the piece, as in a plan: only with them is a picture there to be seen. */
  readonly pictures?: Plan["pictures"];
}

/** Values of one plan as far as they are known. */
export type Values = Partial<Record<MeasureName, number>>;

/** The value at which a measure counts as 1; shares are what they are, facets are judged by the radius. */
const FULL: Readonly<Record<Exclude<MeasureName, "leastFacetMm">, number>> = {
  back: 1,
  through: 1,
  inside: 1,
  sparkle: 5,
  images: 12,
  skinShare: 1,
  facets: 100,
  tiers: 10,
  minutes: 600,
};
export const fullValue = (name: MeasureName, radiusMm: number): number =>
  name === "leastFacetMm" ? radiusMm : FULL[name];

/** A value scaled to 0 .. 1. */
export const scaledValue = (name: MeasureName, value: number, radiusMm: number): number =>
  Math.min(1, Math.max(0, value / fullValue(name, radiusMm)));

export const radiusOf = ({ piece }: IdeaWish): number => piece.diameterMm / 2;

/** Measures that are wanted or not wanted, in their fixed order, so that sums come out the same everywhere. */
export const wantedIn = ({ want }: IdeaWish): MeasureName[] =>
  NUMERIC_MEASURES.filter((name) => (want[name] ?? 0) !== 0);

/** Sum of weight times scaled value. @param values all that are wanted */
export function scoreOf(wish: IdeaWish, values: Values): number {
  const R = radiusOf(wish);
  return wantedIn(wish).reduce(
    (sum, name) => sum + (wish.want[name] ?? 0) * scaledValue(name, values[name] ?? 0, R),
    0,
  );
}

/** The most that the score can come to when some of what is wanted is not known yet. */
export function bestScore(wish: IdeaWish, values: Values): number {
  const R = radiusOf(wish);
  return wantedIn(wish).reduce((sum, name) => {
    const weight = wish.want[name] ?? 0;
    const value = values[name];
    if (value !== undefined) return sum + weight * scaledValue(name, value, R);
    const [least, most] = wish.limits?.[name] ?? [0, Number.MAX_VALUE];
    return sum + weight * scaledValue(name, weight > 0 ? most : least, R);
  }, 0);
}

/** The first limit that a known value breaks; null where none does. */
export function brokenLimit({ limits }: IdeaWish, values: Values): MeasureName | null {
  const broken = NUMERIC_MEASURES.find((name) => {
    const [limit, value] = [limits?.[name], values[name]];
    return limit && value !== undefined && (value < limit[0] || value > limit[1]);
  });
  return broken ?? null;
}

/** A plan of the wish's piece and rig with these tiers. */
export const planOfIdea = (
  { piece, rig, pictures }: IdeaWish,
  tiers: readonly Tier[],
  name: string,
): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name,
  piece,
  rig,
  tiers,
  ...(pictures ? { pictures } : {}),
});
