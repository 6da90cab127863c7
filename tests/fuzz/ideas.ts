/**
 * `npm run fuzz -- ideas --wishes 50 --tries 480 --seed 1`: so many wishes as people make them, each idea judged by brute force; every
 * tenth also in two threads and in four, which must answer the same. One wish in five contradicts itself: it must answer with no idea and
 * name what stands in its way. Prints one JSON object; status 1 when anything was wrong.
 */
import { findIdeas } from "../../src/cli/ideas-threads.ts";
import type { IdeasAnswer } from "../../src/core/ideas/answer.ts";
import { type IdeaWish, NUMERIC_MEASURES } from "../../src/core/ideas/wish.ts";
import { wishFromData } from "../../src/core/ideas/wish-file.ts";
import { faultsOf } from "../core/ideas/judged-ideas.ts";
import { vainWishOf, wishOf } from "../core/ideas/wishes.ts";

const OTHER_THREADS = [2, 4];
const [VAIN_EVERY, AGAIN_EVERY] = [5, 10];

interface Tally {
  wishes: number;
  ideas: number;
  withoutIdeas: number[];
  vain: number;
  askedAgain: number;
  tried: number;
  meeting: number;
  measured: number;
  wrong: { seed: number; faults: readonly string[] }[];
}

const textOf = (answer: IdeasAnswer): string => JSON.stringify({ ...answer, seconds: 0 });

/** The same wish on other numbers of threads: those that answer otherwise. */
async function otherThreads(wish: IdeaWish, tries: number, seed: number, answer: IdeasAnswer) {
  const faults: string[] = [];
  for (const threads of OTHER_THREADS) {
    const other = await findIdeas(wish, { tries, seed }, threads);
    if (textOf(other) !== textOf(answer)) faults.push(`${threads} threads answer otherwise`);
  }
  return faults;
}

function vainFaults(limit: string, { ideas, inTheWay }: IdeasAnswer): string[] {
  if (ideas.length > 0) return ["ideas where none can be"];
  const [first] = inTheWay;
  return first?.limit === limit && first.share === 1
    ? []
    : [`${JSON.stringify(inTheWay)} is said to be in the way, not ${limit}`];
}

async function judgeWish(tally: Tally, seed: number, tries: number): Promise<string[]> {
  const vain = seed % VAIN_EVERY === 0 ? vainWishOf(seed / VAIN_EVERY) : null;
  // as a file has it
  const wish = wishFromData(JSON.parse(JSON.stringify(vain?.wish ?? wishOf(seed, NUMERIC_MEASURES)))).wish;
  const answer = await findIdeas(wish, { tries, seed }, 1);
  tally.tried += answer.tried;
  tally.meeting += answer.meeting;
  tally.measured += answer.measured;
  tally.ideas += answer.ideas.length;
  const faults = [...faultsOf(wish, answer), ...(vain ? vainFaults(vain.limit, answer) : [])];
  if (vain) tally.vain++;
  else if (answer.ideas.length === 0) tally.withoutIdeas.push(seed);
  if (answer.ideas.length === 0 && answer.inTheWay.length === 0)
    faults.push("no idea, and nothing in the way");
  if (seed % AGAIN_EVERY !== 1) return faults;
  tally.askedAgain++;
  return [...faults, ...(await otherThreads(wish, tries, seed, answer))];
}

export async function fuzzIdeas(wishes: number, tries: number, seed: number): Promise<void> {
  const tally: Tally = {
    wishes: 0,
    ideas: 0,
    withoutIdeas: [],
    vain: 0,
    askedAgain: 0,
    tried: 0,
    meeting: 0,
    measured: 0,
    wrong: [],
  };
  for (let own = seed; own < seed + wishes; own++) {
    const faults = await judgeWish(tally, own, tries);
    tally.wishes++;
    if (faults.length > 0) tally.wrong.push({ seed: own, faults });
    process.stderr.write(`\r${tally.wishes} of ${wishes}, ${tally.wrong.length} wrong `);
  }
  console.log(JSON.stringify({ fuzz: "ideas", seed, tries, ...tally }, null, 2));
  process.exitCode = tally.wrong.length > 0 ? 1 : 0;
}
