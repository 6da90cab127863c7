/**
 * What a look comes to, guessed from few rays: first from a thirty-sixth of them, then from a ninth, so that most candidates are
 * turned away before all are followed. A guess only ever turns away; what is hung on the wall has been counted in full.
 */
import { type LookRoom, lookRoom, measureLook } from "../measure/look-measures.ts";
import type { RayBody, StraightRays } from "../measure/straight-rays.ts";
import { cellsAt, rangesOf, type WallEdges } from "./wall.ts";
import { bestScore, type IdeaWish, type Limits, type MeasureName, type Values, wantedIn } from "./wish.ts";

/** A guess by so many rays across, where the measures themselves are counted on 96, and how far it may be off. */
interface Level {
  readonly grid: number;
  /** Shares of the face. */
  readonly share: number;
  /**
   * By how much sparkle may be less and more, times its root and a little: what turns on and off does so a facet at a time, and
   * facets in line with the few rays are counted too high rather than too low.
   */
  readonly sparkle: Limits;
}
/** 19 of 20 were no more than this off, to either side, for 150 plans of all kinds that a search for sparkle about a core came by (measured). */
const LEVELS: readonly Level[] = [
  { grid: 16, share: 0.03, sparkle: [0.4, 0.3] },
  { grid: 32, share: 0.012, sparkle: [0.2, 0.13] },
];
const SPARKLE_LEAST = 0.05;

/** What may still be true of each measure. */
export type Guess = Partial<Record<MeasureName, Limits>>;

/** Where guesses are made, the roughest first. */
export interface GuessRoom {
  readonly level: Level;
  readonly look: LookRoom;
}
export const guessRooms = (): readonly GuessRoom[] =>
  LEVELS.map((level) => ({ level, look: lookRoom(level.grid) }));

/**
 * @param hasSparkle sparkle takes four times the looks: only asked for where it decides
 * @param rays of the body, where they are asked again
 */
export function guessLook(
  body: RayBody,
  hasSparkle: boolean,
  { level, look }: GuessRoom,
  rays?: StraightRays,
): Guess {
  const seen = measureLook(body, hasSparkle ? ["face", "sparkle"] : ["face"], look, rays);
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

/** The limit that is broken whatever the guess is off by; null where none is. */
export function limitBrokenBy({ limits }: IdeaWish, guess: Guess): MeasureName | null {
  for (const name of ["back", "through", "inside", "sparkle"] as const) {
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
