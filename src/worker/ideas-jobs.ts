/**
 * Judges candidates of a wish and measures ideas, in a worker of the page or a thread of the command line. After each it listens for
 * the word to stop, so that none but the one in hand is finished for nothing: one can take as long as the pause that a report makes.
 */
import { type Ask, createJudge, type Judge, type Verdict } from "../core/ideas/judge.ts";
import type { Candidate } from "../core/ideas/search.ts";
import type { IdeaWish } from "../core/ideas/wish.ts";
import { type Measures, measurePlan } from "../core/measure/measures.ts";
import { rastersOf } from "../core/optics/decode-picture.ts";
import type { Plan } from "../core/plan/document.ts";
import type { Ticket } from "./job.ts";

interface JudgeQuestion {
  readonly wish: IdeaWish;
  readonly candidates: readonly Candidate[];
  readonly ask: Ask;
}

/** What the judge of a wish remembers serves as long as the wish stays the same. */
let current: { readonly wish: string; readonly judge: Judge } | null = null;

function judgeFor(wish: IdeaWish): Judge {
  const text = JSON.stringify(wish);
  if (current?.wish !== text) current = { wish: text, judge: createJudge(wish) };
  return current.judge;
}

async function judge({ wish, candidates, ask }: JudgeQuestion, ticket: Ticket): Promise<readonly Verdict[]> {
  const own = judgeFor(wish);
  const verdicts: Verdict[] = [];
  for (const { tiers } of candidates) {
    verdicts.push(own(tiers, ask));
    await ticket.rest();
  }
  return verdicts;
}

async function measure(plans: readonly Plan[], ticket: Ticket): Promise<readonly Measures[]> {
  const measures: Measures[] = [];
  for (const plan of plans) {
    measures.push(measurePlan(plan, rastersOf(plan)));
    await ticket.rest();
  }
  return measures;
}

export const ideasJobs = { judge, measure };
export type IdeasJobs = typeof ideasJobs;
