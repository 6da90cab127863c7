/**
 * What a person likes, learned from what they hold and throw away: a linear model on the measures (logistic regression with a
 * ridge). It only puts ideas into an order; it hides none and changes no search.
 */

import type { Measures } from "../measure/measures.ts";
import { NUMERIC_MEASURES, scaledValue } from "./wish.ts";

/** What is looked at: all that one sees of a piece, and the time that it takes. */
const LOOKED_AT = NUMERIC_MEASURES.filter((name) => name !== "leastFacetMm");

/** One idea that was held or thrown away. */
export interface Mark {
  /** Each measure that is looked at, scaled to 0 .. 1, in a fixed order. */
  readonly features: readonly number[];
  readonly isLiked: boolean;
}
/** Weight of each feature; the last is the constant. */
export type Taste = readonly number[];

/** Before so many of each kind nothing is said: chance would look like taste. */
export const LEAST_MARKS = 3;
/** The oldest are forgotten: taste changes. */
export const MOST_MARKS = 200;
const STEPS = 400;
const RATE = 0.5;
const RIDGE = 0.01;

export const FEATURES = LOOKED_AT.length;
/** @param radiusMm of the piece. What isn't known counts as nothing. */
export const featuresOf = (measures: Measures, radiusMm: number): number[] =>
  LOOKED_AT.map((name) => scaledValue(name, measures[name] ?? 0, radiusMm));

const dot = (taste: Taste, features: readonly number[]): number =>
  features.reduce((sum, x, i) => sum + taste[i] * x, taste[features.length]);

/** @returns null while there are too few marks of either kind */
export function tasteOf(marks: readonly Mark[]): Taste | null {
  const liked = marks.filter(({ isLiked }) => isLiked).length;
  if (liked < LEAST_MARKS || marks.length - liked < LEAST_MARKS) return null;
  let taste = Array.from({ length: FEATURES + 1 }, () => 0);
  // gradient of the mean loss, a fixed number of steps: convex, and the same everywhere
  for (let step = 0; step < STEPS; step++) {
    const slope = taste.map((weight, i) => (i < FEATURES ? RIDGE * weight : 0));
    for (const { features, isLiked } of marks) {
      const off = 1 / (1 + Math.exp(-dot(taste, features))) - (isLiked ? 1 : 0);
      for (let i = 0; i <= FEATURES; i++) slope[i] += (off * (features[i] ?? 1)) / marks.length;
    }
    taste = taste.map((weight, i) => weight - RATE * slope[i]);
  }
  return taste;
}

/** Preference learning by logistic regression: how likely a person is to like it, 0 .. 1. */
export const likingOf = (taste: Taste, features: readonly number[]): number =>
  1 / (1 + Math.exp(-dot(taste, features)));
