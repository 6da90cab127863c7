/**
 * What a look comes to, guessed from a ninth of the rays: so that most candidates are turned away before all rays are followed.
 * A guess only ever turns away; what is hung on the wall has been counted in full.
 */
import { type LookRoom, lookRoom, measureLook } from "../measure/look-measures.ts";
import type { RayBody } from "../measure/straight-rays.ts";
import { cellsAt, type WallEdges } from "./wall.ts";
import { bestScore, type IdeaWish, type Limits, type MeasureName, type Values, wantedIn } from "./wish.ts";

/** Rays across, where the measures themselves are counted on 96. */
const GUESS_GRID = 32;
/** How far a guess may be off: 19 of 20 were within this for 90 made plans of 8 to 60 facets about a core (measured). */
const SHARE_OFF = 0.015;
const SPARKLE_OFF = { share: 0.12, least: 0.04 };

/** What may still be true of each measure. */
export type Guess = Partial<Record<MeasureName, Limits>>;

export const guessRoom = (): LookRoom => lookRoom(GUESS_GRID);

/** @param hasSparkle sparkle takes four times the looks: only asked for where it decides */
export function guessLook(body: RayBody, hasSparkle: boolean, room: LookRoom): Guess {
  const seen = measureLook(body, hasSparkle ? ["face", "sparkle"] : ["face"], room);
  const guess: Guess = {};
  for (const name of ["back", "through", "inside"] as const) {
    const share = seen[name] ?? 0;
    guess[name] = [Math.max(0, share - SHARE_OFF), Math.min(1, share + SHARE_OFF)];
  }
  if (seen.sparkle !== undefined) {
    const off = SPARKLE_OFF.share * seen.sparkle + SPARKLE_OFF.least;
    guess.sparkle = [Math.max(0, seen.sparkle - off), seen.sparkle + off];
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

/** Whether each cell that a candidate may come to holds a better one, at the best that may be true of it. */
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
  const hoped: Values = { ...known };
  for (const name of wantedIn(wish)) {
    const range = rangeOf(name);
    if (range) hoped[name] = (wish.want[name] ?? 0) > 0 ? range[1] : range[0];
  }
  const most = bestScore(wish, hoped);
  return cellsAt(edges, across, up).every((cell) => (best[cell] ?? Number.NEGATIVE_INFINITY) >= most);
}
