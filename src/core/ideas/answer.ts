/** The answer to a wish: what the search found, measured in full, and where nothing was found, what is in the way. */
import { type Measures, measurePlan } from "../measure/measures.ts";
import { rastersOf } from "../optics/decode-picture.ts";
import type { Plan, Tier } from "../plan/document.ts";
import type { InTheWay, Search } from "./search.ts";
import { brokenLimit, type IdeaWish, type MeasureName, NUMERIC_MEASURES, planOfIdea } from "./wish.ts";

interface Idea {
  readonly cell: readonly [number, number];
  readonly score: number;
  readonly measures: Measures;
  readonly plan: Plan;
}
export interface IdeasAnswer {
  readonly tried: number;
  readonly meeting: number;
  readonly measured: number;
  readonly seconds: number;
  readonly across: { readonly measure: MeasureName; readonly edges: readonly number[] };
  readonly up: { readonly measure: MeasureName; readonly edges: readonly number[] };
  readonly ideas: readonly Idea[];
  readonly inTheWay: readonly InTheWay[];
}

/** Candidates that are asked which limits they break, one by one, when nothing keeps them all. */
const ASKED = 60;

/** What is left to be measured once the search is over, in the order in which `answerOf` wants it. */
export function leftToMeasure(wish: IdeaWish, search: Search): Plan[] {
  const { found } = search;
  if (found.length > 0) return found.map(({ tiers, number }) => planOfIdea(wish, tiers, nameOf(number)));
  return search.firstMeeting.slice(0, ASKED).map((tiers: readonly Tier[]) => planOfIdea(wish, tiers, ""));
}

/** What an idea is called: by its place among all that were tried, the same for the same seed. */
const nameOf = (number: number): string => `Idea ${number + 1}`;

export const measureAll = (plans: readonly Plan[]): Measures[] =>
  plans.map((plan) => measurePlan(plan, rastersOf(plan)));

/** Each limit by itself: of the candidates that meet, the share that breaks it. */
function limitsBroken(wish: IdeaWish, measures: readonly Measures[]): InTheWay[] {
  return NUMERIC_MEASURES.flatMap((name) => {
    const limit = wish.limits?.[name];
    if (!limit) return [];
    const only = { ...wish, limits: { [name]: limit } };
    const broken = measures.filter(
      (own) => own[name] === null || brokenLimit(only, { [name]: own[name] ?? 0 }),
    );
    return broken.length === 0 ? [] : [{ limit: name, share: broken.length / measures.length }];
  }).sort((a, b) => b.share - a.share);
}

function inTheWay(wish: IdeaWish, search: Search, measures: readonly Measures[]): InTheWay[] {
  if (measures.length === 0) return search.refusals;
  const broken = limitsBroken(wish, measures);
  const unmet = search.refusals.filter(({ limit }) => limit === "meets");
  return [...broken, ...unmet];
}

/**
 * @param measures of `leftToMeasure`, in its order
 * @param seconds that all of it took: the one number that differs from run to run
 */
export function answerOf(
  wish: IdeaWish,
  search: Search,
  measures: readonly Measures[],
  seconds: number,
): IdeasAnswer {
  const { found, wall, counts } = search;
  const plans = leftToMeasure(wish, search);
  return {
    ...counts,
    seconds,
    across: { measure: wish.across, edges: wall.across },
    up: { measure: wish.up, edges: wall.up },
    ideas: found.map(({ cell, score }, i) => ({ cell, score, measures: measures[i], plan: plans[i] })),
    inTheWay: found.length > 0 ? [] : inTheWay(wish, search, measures),
  };
}
