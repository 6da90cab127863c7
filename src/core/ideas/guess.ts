/**
 * What a look comes to, guessed from few rays: first from a thirty-sixth of them, then from a ninth, then from a third, so that most
 * candidates are turned away before all are followed. A guess turns away, and places the first candidates before the wall is
 * divided; what is hung on the divided wall has been counted in full.
 */
import { type LookMeasures, type LookRoom, lookRoom, measureLook } from "../measure/look-measures.ts";
import type { RayBody, StraightRays } from "../measure/straight-rays.ts";
import { cellsAt, rangesOf, type WallEdges } from "./wall.ts";
import { bestScore, type IdeaWish, type Limits, type MeasureName, type Values, wantedIn } from "./wish.ts";

/** A guess by so many rays across, or one of so many of them, where the measures themselves are counted on 96, and how far it may be off. */
interface Level {
  readonly grid: number;
  readonly every: number;
  /** Shares of the face. */
  readonly share: number;
  /**
   * By how much sparkle may be less and more, times its root and a little: what turns on and off does so a facet at a time, and
   * facets in line with the few rays are counted too high rather than too low.
   */
  readonly sparkle: Limits;
}
/**
 * 19 of 20 were no more than this off, to either side, for 150 plans of all kinds that a search for sparkle about a core came by (the
 * third: 66 of those below). But for what sparkle may be more by the first two: of 196 plans that such a search measured in full,
 * one in nine was more than that by each. So what would have hung for a hair is now and then turned away, the same in every run.
 */
const LEVELS: readonly Level[] = [
  { grid: 16, every: 1, share: 0.03, sparkle: [0.4, 0.2] },
  { grid: 32, every: 1, share: 0.012, sparkle: [0.2, 0.08] },
  { grid: 96, every: 3, share: 0.003, sparkle: [0.06, 0.03] },
];
const SPARKLE_LEAST = 0.05;
const GUESSED = ["back", "through", "inside", "sparkle"] as const;

/** What may still be true of each measure. */
export type Guess = Partial<Record<MeasureName, Limits>>;

/** A candidate that has not been measured in full: what is known of it, and what the rest may be. */
export interface Hope {
  readonly known: Values;
  readonly guess: Guess;
}

/** Where guesses are made, the roughest first. */
export interface GuessRoom {
  readonly level: Level;
  readonly look: LookRoom;
}
export const guessRooms = (): readonly GuessRoom[] =>
  LEVELS.map((level) => ({ level, look: lookRoom(level.grid, level.every) }));

/**
 * The measures as few rays count them.
 * @param hasSparkle sparkle takes four times the looks: only asked for where it decides
 * @param rays of the body, where they are asked again
 */
export const seenByFew = (
  body: RayBody,
  hasSparkle: boolean,
  { look }: GuessRoom,
  rays?: StraightRays,
): Partial<LookMeasures> => measureLook(body, hasSparkle ? ["face", "sparkle"] : ["face"], look, rays);

/** What all rays may come to where few have seen this. */
export function guessFrom(seen: Partial<LookMeasures>, { level }: GuessRoom): Guess {
  const guess: Guess = {};
  for (const name of ["back", "through", "inside"] as const) {
    const share = seen[name] ?? 0;
    guess[name] = [Math.max(0, share - level.share), Math.min(1, share + level.share)];
  }
  if (seen.sparkle !== undefined) {
    const scale = Math.sqrt(seen.sparkle) + SPARKLE_LEAST;
    const [less, more] = level.sparkle;
    guess.sparkle = [Math.max(0, seen.sparkle - less * scale), seen.sparkle + more * scale];
  }
  return guess;
}

/** Whether all limits of what is guessed are kept, whatever the guess is off by. */
export const keepsLimits = ({ limits }: IdeaWish, guess: Guess): boolean =>
  GUESSED.every((name) => {
    const [limit, own] = [limits?.[name], guess[name]];
    return !limit || !own || (own[0] >= limit[0] && own[1] <= limit[1]);
  });

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
      for (const axis of ["across", "up"] as const)
        if (wish[axis] === name)
          [least, most] = [Math.max(least, within[axis][0]), Math.min(most, within[axis][1])];
      hoped[name] = (wish.want[name] ?? 0) > 0 ? most : least;
    }
    return held >= bestScore(wish, hoped);
  });
}
