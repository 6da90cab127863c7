/**
 * How far guesses from few rays are off, and what that costs: for six wishes the error of each guess that five of six plans stay within,
 * over what `guess.ts` states, and of the candidates that a guess turned away the share that would have hung had they been measured in
 * full (every fifth is). `npm run bench -- guesses 480` says how many tries a wish.
 */
import { LEVELS } from "../../src/core/ideas/guess.ts";
import { createJudge } from "../../src/core/ideas/judge.ts";
import { type Batch, Search } from "../../src/core/ideas/search.ts";
import { cellAt } from "../../src/core/ideas/wall.ts";
import { type IdeaWish, planOfIdea } from "../../src/core/ideas/wish.ts";
import { Looks, lookRoom, rayBodyOf } from "../../src/core/measure/look-measures.ts";
import { ALL_PARTS } from "../../src/core/measure/places.ts";
import type { Tier } from "../../src/core/plan/document.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { WISHES } from "./idea-wishes.ts";

const TRIES = 480;
const SEED = 11;
/** One candidate of so many that meet has its guesses judged, and one of so many that were turned away is measured. */
const [GUESSED_EVERY, MEASURED_EVERY] = [6, 5];
const STAYED_WITHIN = 5 / 6;

interface Tally {
  /** Error over what is stated, by level. */
  readonly share: number[][];
  readonly sparkle: number[][];
  turnedAway: number;
  wouldHang: number;
  hung: number;
}

function judgeGuesses(
  tally: Tally,
  wish: IdeaWish,
  tiers: readonly Tier[],
  room: ReturnType<typeof lookRoom>,
) {
  const looks = new Looks(rayBodyOf(solvePlan(planOfIdea(wish, tiers, ""))), true, room);
  const seen = LEVELS.map(({ parts }) => looks.upTo(parts));
  const all = looks.upTo(ALL_PARTS);
  LEVELS.forEach((level, k) => {
    for (const name of ["back", "through", "inside"] as const)
      tally.share[k].push(Math.abs(all[name] - seen[k][name]) / level.share);
    const few = seen[k].sparkle ?? 0;
    tally.sparkle[k].push(Math.abs((all.sparkle ?? 0) - few) / (level.sparkle * (Math.sqrt(few) + 0.05)));
  });
}

function judgeWish(tally: Tally, wish: IdeaWish, tries: number): void {
  const search = new Search(wish, { tries, seed: SEED });
  const judge = createJudge(wish);
  const room = lookRoom();
  let meeting = 0;
  let turned = 0;
  const judged = ({ candidates, ask }: Batch) =>
    candidates.map(({ tiers }) => {
      const verdict = judge(tiers, ask);
      if (verdict.meets && meeting++ % GUESSED_EVERY === 0) judgeGuesses(tally, wish, tiers, room);
      const { edges, best } = ask;
      if (edges && verdict.isMeasured && verdict.refusal === null) tally.hung++;
      if (!edges || !verdict.isLooked || verdict.isMeasured || turned++ % MEASURED_EVERY > 0) return verdict;
      tally.turnedAway++;
      // as if nothing hung: measured in full
      const { refusal, across, up, score } = judge(tiers, { edges: null, best: best.map(() => null) });
      const held = best[cellAt(edges, across ?? 0, up ?? 0)];
      if (refusal === null && (held === null || (score ?? 0) > held)) tally.wouldHang++;
      return verdict;
    });
  while (!search.isDone)
    for (const batch of search.pending.splice(0)) search.take(batch.index, judged(batch));
}

const within = (values: readonly number[]): number =>
  Number([...values].sort((a, b) => a - b)[Math.floor(STAYED_WITHIN * values.length)].toPrecision(3));

/** @param asked tries a wish */
export function bench([asked]: readonly string[] = process.argv.slice(3)): object {
  const tries = Number(asked) >= 1 ? Number(asked) : TRIES;
  const tally: Tally = {
    share: LEVELS.map(() => []),
    sparkle: LEVELS.map(() => []),
    turnedAway: 0,
    wouldHang: 0,
    hung: 0,
  };
  for (const wish of Object.values(WISHES)) judgeWish(tally, wish, tries);
  const { turnedAway, wouldHang, hung } = tally;
  return {
    bench: "guesses",
    tries,
    wishes: Object.keys(WISHES),
    plans: tally.sparkle[0].length,
    levels: LEVELS.map(({ parts }, k) => ({
      parts,
      shareOverStated: within(tally.share[k]),
      sparkleOverStated: within(tally.sparkle[k]),
    })),
    turnedAwayByGuess: MEASURED_EVERY * turnedAway,
    ofThese: { measured: turnedAway, wouldHaveHung: wouldHang, share: wouldHang / Math.max(1, turnedAway) },
    hung,
  };
}
