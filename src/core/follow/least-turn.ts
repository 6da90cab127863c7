/**
 * The least change of arm angles with which everything that met in one plan meets in another whose first tiers stand
 * otherwise: cut with a slip of the hand, or typed wrong.
 *
 * Descents from many starts follow closed forms (`descend.ts`); what they find is judged by the exact solid, drawn in as far
 * as that allows, and of nearly equal answers the one whose edges are longest is taken. Nothing is left to chance or to the clock.
 */
import { unlessInexact } from "../geometry/inexact-cut.ts";
import type { Plan } from "../plan/document.ts";
import { solvePlan } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import {
  anglesAt,
  costOf,
  type Descent,
  descend,
  type Ground,
  isAllKept,
  marginsAt,
  type Turns,
} from "./descend.ts";
import { type Item, lostOf, type Meets, meetsOf } from "./kept.ts";
import { startsFor } from "./starts.ts";
import { createTrial, leastDepthsOf, withAngles } from "./trial.ts";
import { alikeItems } from "./turns.ts";

/** Angles are turned by at most this much, degrees. */
const MOST_TURN_DEG = 10;
/** Squares that differ by so little are as good as equal. */
const NEARLY = 1.1;
/** Work after which no further start is tried, in tiers solved. */
const MOST_WORK = 9000;
/** Starts that are tried whatever they cost. */
const FEWEST_STARTS = 3;
/** Work that stepping about may take, and the step at which it ends, degrees. */
const MOST_SLIDING = 6000;
const SLID_DEG = 0.01;
/** Answers are given in the coarsest of these that still does it, degrees: what an arm can be set to, what can be read. */
const GRAINS_DEG = [0.1, 0.05, 0.01, 0.001] as const;
/** More tiers than these are rounded to the nearest figure only. */
const MOST_BOTH_WAYS = 6;
const ROUNDINGS_JUDGED = 3;
/** An angle of 90 would make one facet of a whole tier. */
const STEEPEST_DEG = 89.9;
/** Of what descents found, so many of the least are judged exactly. */
const DESCENTS_JUDGED = 6;
/** When nothing keeps all, this many ways of giving something up are followed. */
const PLACES_JUDGED = 8;

export interface Question {
  /** What met, and is to meet. */
  readonly was: Meets;
  /** Of it, what can still be kept. */
  readonly items: readonly Item[];
  /** The plan to turn. */
  readonly plan: Plan;
  /** Tiers that may turn, ascending. */
  readonly free: readonly number[];
  /** As far as they may turn; default `MOST_TURN_DEG`. */
  readonly mostDeg?: number;
}

export interface Found {
  readonly plan: Plan;
  readonly solved: SolvedPlan;
  /** Of the items asked for. */
  readonly lost: readonly Item[];
  /** Tiers whose rule could be met and can't be now, or only by a cut of nothing. */
  readonly broken: readonly number[];
}

/** A place that was judged exactly. */
interface Judged extends Found {
  readonly turns: Turns;
}

const badness = ({ lost, broken }: Found): number => lost.length + broken.length;
const isBetter = (a: Judged, b: Judged): boolean =>
  badness(a) < badness(b) || (badness(a) === badness(b) && costOf(a.turns) < costOf(b.turns));

/** A flat at the pole stays: there it needs no turn, and off it, it would stand to one side. */
export const canTurn = (plan: Plan, tier: number): boolean => plan.tiers[tier].armAngleDeg < STEEPEST_DEG;

function groundOf(
  { was, plan, free, mostDeg = MOST_TURN_DEG }: Question,
  items: readonly Item[],
  isAsked: (tier: number) => boolean,
): Ground {
  const met = was.solved.tiers.map((tier, i) => tier.met && isAsked(i));
  const angles = plan.tiers.map((tier) => tier.armAngleDeg);
  return {
    trial: createTrial(was.solved, solvePlan(plan), alikeItems(items, was.solved), met),
    angles,
    free,
    bounds: free.map((tier) => [
      Math.max(-mostDeg, -angles[tier]),
      Math.min(mostDeg, STEEPEST_DEG - angles[tier]),
    ]),
  };
}

/**
 * Tiers that could be cut by their rules and can't be now: a depth of nothing is no cut. One of which nothing was left as
 * planned has nothing to lose.
 */
function brokenOf({ solved: was, swallowed }: Meets, now: SolvedPlan): number[] {
  const leastMm = leastDepthsOf(was);
  return now.tiers.flatMap(({ met, depthMm }, i) => {
    const isCut = met && (now.plan.tiers[i].depth.rule === "depth" || depthMm >= leastMm[i]);
    const { first, count } = was.tiers[i];
    const isThere = swallowed.slice(first, first + count).includes(false);
    return was.tiers[i].met && isThere && !isCut ? [i] : [];
  });
}

function judge({ was, plan, items }: Question, ground: Ground, turns: Turns): Judged | null {
  const turned = withAngles(plan, anglesAt(ground, turns));
  return unlessInexact(() => {
    const now = meetsOf(turned);
    const broken = brokenOf(was, now.solved);
    return {
      plan: turned,
      solved: now.solved,
      turns,
      lost: lostOf(items, now),
      broken,
    };
  });
}

/** Descents from all starts, the least answers first; a yielded number is the share done. */
function* descents(ground: Ground): Generator<number, Descent[]> {
  const found: Descent[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const [i, start] of startsFor(ground.bounds).entries()) {
    if (i >= FEWEST_STARTS && ground.trial.work > MOST_WORK) break;
    // What lies so much farther out than the best answer leads to no better one.
    if (costOf(start) > 4 * least + 1) continue;
    const one = descend(ground, start);
    found.push(one);
    if (one.best) least = Math.min(least, costOf(one.best));
    yield Math.min(1, Math.max(i / 40, ground.trial.work / MOST_WORK));
  }
  const cost = ({ best }: Descent) => (best ? costOf(best) : Number.POSITIVE_INFINITY);
  return found.sort((a, b) => cost(a) - cost(b));
}

/**
 * Less turn by stepping about, some tiers a little more and others less: rules whose depth jumps can hold a descent up.
 * Ends when so much work is done.
 */
function slid(ground: Ground, from: Turns): Turns {
  const enough = ground.trial.work + MOST_SLIDING;
  const ways = directions(from.length);
  let best = from;
  for (let step = Math.sqrt(costOf(from)) / 2; step > SLID_DEG; step /= 2) {
    for (let moved = true; moved; ) {
      moved = false;
      for (const way of ways) {
        if (ground.trial.work > enough) return best;
        const turns = best.map((t, j) => t + way[j] * step);
        const isInside = turns.every((t, j) => t >= ground.bounds[j][0] && t <= ground.bounds[j][1]);
        if (!isInside || costOf(turns) >= costOf(best) || !isAllKept(marginsAt(ground, turns))) continue;
        best = turns;
        moved = true;
      }
    }
  }
  return best;
}

/** Each turn drawn in as far as the exact solid allows: the quick conditions keep a hair more than they must. */
function drawIn(question: Question, ground: Ground, from: Judged): Judged {
  let best = from;
  const tryAt = (turns: Turns): boolean => {
    if (costOf(turns) >= costOf(best.turns)) return false;
    const one = judge(question, ground, turns);
    if (!one || badness(one) > badness(best)) return false;
    best = one;
    return true;
  };
  for (const step of [0.1, 0.03, 0.01, 0.003]) {
    const all = Math.sqrt(costOf(best.turns));
    while (all > 0 && tryAt(best.turns.map((t) => t * Math.max(0, 1 - step / all))));
    for (const j of best.turns.keys())
      while (
        best.turns[j] !== 0 &&
        tryAt(best.turns.with(j, Math.sign(best.turns[j]) * Math.max(0, Math.abs(best.turns[j]) - step)))
      );
  }
  return best;
}

/** Steps along each tier alone, and along two at once. */
function directions(size: number): number[][] {
  const unit = (j: number, by: number) => Array.from({ length: size }, (_, l) => (l === j ? by : 0));
  const alone = Array.from({ length: size }, (_, j) => [unit(j, 1), unit(j, -1)]).flat();
  const two = alone.flatMap((a, i) =>
    alone.slice(i + 1).flatMap((b) => {
      const sum = a.map((x, j) => x + b[j]);
      return sum.some((x) => x !== 0) ? [sum] : [];
    }),
  );
  return [...alone, ...two];
}

/** Of all turns whose squares come to no more than `most`, near `from`, those with the longest kept edges. */
function longestEdges(ground: Ground, from: Turns, most: number): Turns {
  let best = { turns: from, edges: marginsAt(ground, from).edgesMm };
  const ways = directions(from.length);
  for (let step = Math.sqrt(most) / 8; step > 0.004; step /= 2) {
    for (let moved = true; moved; ) {
      moved = false;
      for (const way of ways) {
        const turns = best.turns.map((t, j) => t + way[j] * step);
        const isInside = turns.every((t, j) => t >= ground.bounds[j][0] && t <= ground.bounds[j][1]);
        if (!isInside || costOf(turns) > most) continue;
        const there = marginsAt(ground, turns);
        if (there.edgesMm <= best.edges + 1e-6 || !isAllKept(there)) continue;
        best = { turns, edges: there.edgesMm };
        moved = true;
      }
    }
  }
  return best.turns;
}

/** Each angle at the figure below or above it; of many tiers only at the nearer, since all ways would be too many. */
function figuresAround(ground: Ground, turns: Turns, grain: number): Turns[] {
  const choices = turns.map((t, j) => {
    if (t === 0) return [0];
    const planned = ground.angles[ground.free[j]];
    const at = (planned + t) / grain;
    const figures = turns.length > MOST_BOTH_WAYS ? [Math.round(at)] : [Math.floor(at), Math.ceil(at)];
    return figures.map((n) => Number((n * grain).toFixed(3)) - planned);
  });
  return choices.reduce<number[][]>(
    (ways, figures) => ways.flatMap((way) => figures.map((figure) => [...way, figure])),
    [[]],
  );
}

/** The coarsest figures that still keep as much for no more than `most`, of those with the longest edges. */
function rounded(question: Question, ground: Ground, from: Judged, most: number): Judged {
  for (const grain of GRAINS_DEG) {
    const ways = figuresAround(ground, from.turns, grain)
      .filter((turns) => costOf(turns) <= most)
      .map((turns) => ({ turns, margins: marginsAt(ground, turns) }))
      .sort(
        (a, b) =>
          Number(isAllKept(b.margins)) - Number(isAllKept(a.margins)) ||
          b.margins.edgesMm - a.margins.edgesMm,
      );
    for (const { turns } of ways.slice(0, ROUNDINGS_JUDGED)) {
      const one = judge(question, ground, turns);
      if (one && badness(one) <= badness(from)) return one;
    }
  }
  return from;
}

/** The least answer, drawn in, then the one of nearly equal squares with the longest edges, in plain figures. */
function finished(question: Question, ground: Ground, found: Judged): Judged {
  const less = judge(question, ground, slid(ground, found.turns));
  const least = drawIn(question, ground, less && badness(less) <= badness(found) ? less : found);
  const most = costOf(least.turns) * NEARLY;
  if (most === 0) return least;
  const longer = judge(question, ground, longestEdges(ground, least.turns, most));
  const chosen = longer && badness(longer) <= badness(least) ? longer : least;
  return rounded(question, ground, chosen, most);
}

/** Places looked at to learn what can be kept at all: all starts, and each tier alone by whole degrees. */
function places(ground: Ground): Turns[] {
  const still = ground.free.map(() => 0);
  const alone = ground.bounds.flatMap(([low, high], j) => {
    const degrees = Array.from({ length: 2 * MOST_TURN_DEG + 1 }, (_, i) => i - MOST_TURN_DEG);
    return degrees.filter((deg) => deg >= low && deg <= high).map((deg) => still.with(j, deg));
  });
  return [...startsFor(ground.bounds), ...alone];
}

/** One way of giving something up: what is asked still. */
interface Asked {
  readonly items: readonly Item[];
  readonly tiers: (tier: number) => boolean;
}

/** What is kept at one place at least: the rest is asked no more. Tiers whose rule is met nowhere hide what follows, so they go first. */
function keepable(question: Question): Asked {
  const hopeless = new Set<number>();
  for (;;) {
    const ground = groundOf(question, question.items, (tier) => !hopeless.has(tier));
    const seen = places(ground).map((turns) => marginsAt(ground, turns));
    const reach = Math.max(...seen.map(({ broken }) => broken?.tier ?? Number.POSITIVE_INFINITY));
    if (reach < Number.POSITIVE_INFINITY) {
      hopeless.add(reach);
      continue;
    }
    const kept = alikeItems(question.items, question.was.solved).flatMap(({ all }, i) =>
      seen.some((margins) => (margins.kept[i] ?? -1) >= 0) ? all : [],
    );
    return { items: kept, tiers: (tier) => !hopeless.has(tier) };
  }
}

/** Of the places looked at those that keep most, each with what it keeps; the more it keeps the sooner. */
function bestPlaces(question: Question, asked: Asked): { turns: Turns; asked: Asked }[] {
  const ground = groundOf(question, asked.items, asked.tiers);
  const alike = alikeItems(asked.items, question.was.solved);
  const ways = new Map<string, { turns: Turns; lost: number; asked: Asked }>();
  for (const turns of places(ground)) {
    const { kept, broken } = marginsAt(ground, turns);
    const isKept = kept.map((m) => m !== null && m >= 0);
    const lost = alike.reduce((sum, { all }, i) => sum + (isKept[i] ? 0 : all.length), broken ? 1 : 0);
    const key = `${isKept.join()} ${broken?.tier}`;
    const known = ways.get(key);
    if (known && costOf(known.turns) <= costOf(turns)) continue;
    const items = alike.flatMap(({ all }, i) => (isKept[i] ? all : []));
    const tiers = (tier: number) => asked.tiers(tier) && tier !== broken?.tier;
    ways.set(key, { turns, lost, asked: { items, tiers } });
  }
  return [...ways.values()].sort((a, b) => a.lost - b.lost || costOf(a.turns) - costOf(b.turns));
}

/** A tier that can't be reached at its new angle either keeps the one it had. */
function withoutVain(question: Question, ground: Ground, found: Judged): Judged {
  const turns = found.turns.map((t, j) => (found.broken.includes(ground.free[j]) ? 0 : t));
  const less = costOf(turns) < costOf(found.turns) ? judge(question, ground, turns) : null;
  return less ?? found;
}

/** Where not everything can be kept: the least turn that keeps most. */
function* keepingMost(question: Question, still: Judged): Generator<number, Judged> {
  let best = { judged: still, ground: groundOf(question, question.items, () => true) };
  const consider = (ground: Ground, turns: Turns) => {
    const judged = judge(question, ground, turns);
    if (judged && isBetter(judged, best.judged)) best = { judged, ground };
  };
  const asked = keepable(question);
  const ground = groundOf(question, asked.items, asked.tiers);
  for (const { best: turns } of (yield* descents(ground)).slice(0, DESCENTS_JUDGED))
    if (turns) consider(ground, turns);
  if (best.judged === still) {
    for (const way of bestPlaces(question, asked).slice(0, PLACES_JUDGED)) {
      const own = groundOf(question, way.asked.items, way.asked.tiers);
      for (const start of [way.turns, way.turns.map(() => 0)]) {
        const { best: turns } = descend(own, start);
        if (turns) consider(own, turns);
      }
      yield 0.95;
    }
  }
  if (costOf(best.judged.turns) === 0) return best.judged;
  return withoutVain(question, best.ground, finished(question, best.ground, best.judged));
}

/**
 * Searches; each yielded number is the share done.
 * @returns null only where the exact solid can't reckon the plan as it stands
 */
export function* leastTurn(question: Question): Generator<number, Found | null> {
  const ground = groundOf(question, question.items, () => true);
  const still = judge(
    question,
    ground,
    question.free.map(() => 0),
  );
  if (!still || badness(still) === 0 || question.free.length === 0) return still;
  const found = yield* descents(ground);
  for (const { best } of found) {
    const one = best && judge(question, ground, best);
    if (one && badness(one) === 0) return finished(question, ground, one);
  }
  return yield* keepingMost(question, still);
}
