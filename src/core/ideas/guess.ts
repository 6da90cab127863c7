/**
 * What a look comes to, guessed from few of its rays: from a twenty-fifth of them, then from more, so that most candidates are turned
 * away before all are followed. A guess only turns away, now and then wrongly; what hangs has been counted in full.
 */
import type { LookCounts } from "../measure/look-measures.ts";
import { AXES, cellsAt, rangesOf, type WallEdges } from "./wall.ts";
import { bestScore, type IdeaWish, type Limits, type MeasureName, type Values, wantedIn } from "./wish.ts";

/** A guess by so many parts of the grid's 25, and how far it may be off. */
export interface Level {
  readonly parts: number;
  /** Shares of the face. */
  readonly share: number;
  /** Sparkle, times its root and a little: what turns on and off does so a facet at a time. */
  readonly sparkle: number;
}
/**
 * Each guess was off by no more than this, to either side, for five of six of the 24,775 plans that searches for six wishes of all kinds
 * looked at (of single wishes, for 0.57 at one level to 0.96; `npm run bench -- guesses` counts fewer anew). Errors fall off a little
 * more slowly than a normal distribution: 19 of 20 plans stay within 1.6 times as much. Of candidates that are turned away 2 in 100
 * would have hung.
 */
export const LEVELS: readonly Level[] = [
  { parts: 1, share: 0.012, sparkle: 0.24 },
  { parts: 2, share: 0.008, sparkle: 0.16 },
  { parts: 3, share: 0.006, sparkle: 0.12 },
  { parts: 4, share: 0.005, sparkle: 0.1 },
  { parts: 5, share: 0.004, sparkle: 0.08 },
  { parts: 7, share: 0.0033, sparkle: 0.07 },
  { parts: 9, share: 0.0025, sparkle: 0.055 },
  { parts: 11, share: 0.002, sparkle: 0.046 },
  { parts: 13, share: 0.0018, sparkle: 0.04 },
  { parts: 15, share: 0.0014, sparkle: 0.033 },
  { parts: 17, share: 0.0013, sparkle: 0.029 },
  { parts: 19, share: 0.001, sparkle: 0.024 },
  { parts: 21, share: 0.0008, sparkle: 0.019 },
  { parts: 23, share: 0.0006, sparkle: 0.014 },
];
const SPARKLE_LEAST = 0.05;
const GUESSED = ["back", "through", "inside", "sparkle"] as const;

/** What may still be true of each measure. */
export type Guess = Partial<Record<MeasureName, Limits>>;

/** What all rays may come to where few have seen this. */
export function guessFrom(seen: LookCounts, level: Level): Guess {
  const guess: Guess = {};
  for (const name of ["back", "through", "inside"] as const) {
    const share = seen[name];
    guess[name] = [Math.max(0, share - level.share), Math.min(1, share + level.share)];
  }
  if (seen.sparkle !== undefined) {
    const off = level.sparkle * (Math.sqrt(seen.sparkle) + SPARKLE_LEAST);
    guess.sparkle = [Math.max(0, seen.sparkle - off), seen.sparkle + off];
  }
  return guess;
}

/** The limit that is broken whatever the guess is off by; null where none is. */
export function limitBrokenBy({ limits }: IdeaWish, guess: Guess): MeasureName | null {
  for (const name of GUESSED) {
    const [limit, own] = [limits?.[name], guess[name]];
    if (limit && own && (own[1] < limit[0] || own[0] > limit[1])) return name;
  }
  return null;
}

/** Whether each cell that a candidate may come to holds a better one, at the best that may be true of it there. */
export function isOutdone(
  wish: IdeaWish,
  edges: WallEdges,
  best: readonly (number | null)[],
  known: Values,
  guess: Guess,
): boolean {
  const rangeOf = (name: MeasureName): Limits | undefined => {
    const value = known[name];
    return value === undefined ? guess[name] : [value, value];
  };
  const [across, up] = [rangeOf(wish.across), rangeOf(wish.up)];
  if (!across || !up) return false;
  return cellsAt(edges, across, up).every((cell) => {
    const held = best[cell];
    if (held === null) return false;
    const within = rangesOf(edges, cell);
    const hoped: Values = { ...known };
    for (const name of wantedIn(wish)) {
      const range = rangeOf(name);
      if (!range) continue;
      let [least, most] = range;
      // what falls into this cell is no more, and no less, than the cell's own
      for (const axis of AXES)
        if (wish[axis] === name)
          [least, most] = [Math.max(least, within[axis][0]), Math.min(most, within[axis][1])];
      hoped[name] = (wish.want[name] ?? 0) > 0 ? most : least;
    }
    return held >= bestScore(wish, hoped);
  });
}
