/**
 * Judges candidates, the cheap tests first: do its rules hold, does it meet, do its limits, and only then rays. Pure: the same
 * candidate asked the same has the same answer in any thread; what it remembers only saves time.
 */
import { InexactCut } from "../geometry/inexact-cut.ts";
import { cutBall } from "../geometry/solid.ts";
import { imagesSeen, type LookRoom, Looks, lookRoom, rayBodyOf } from "../measure/look-measures.ts";
import { shapeMeasures } from "../measure/measures.ts";
import { ringsMeet, tiersMeet } from "../measure/meeting.ts";
import { minutesOf } from "../measure/minutes.ts";
import { ALL_PARTS } from "../measure/places.ts";
import { rastersOf } from "../optics/decode-picture.ts";
import type { Rasters } from "../optics/raster.ts";
import type { Tier } from "../plan/document.ts";
import { solvePlan } from "../plan/solve.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { type Guess, guessFrom, isOutdone, LEVELS, limitBrokenBy } from "./guess.ts";
import { cellAt, type WallEdges } from "./wall.ts";
import {
  bestScore,
  brokenLimit,
  type IdeaWish,
  type MeasureName,
  NUMERIC_MEASURES,
  planOfIdea,
  scoreOf,
  type Values,
  wantedIn,
} from "./wish.ts";

/** What is known of the wall when a candidate is asked about. */
export interface Ask {
  /** Null until it is known how the wall is divided: then every candidate that meets is measured where its place is. */
  readonly edges: WallEdges | null;
  /** Best score of each cell, null where it is empty. */
  readonly best: readonly (number | null)[];
}

/** Why a candidate is turned away: it doesn't meet, it breaks a limit, or it can't better what its cell holds. */
export type Refusal = "meets" | MeasureName | "outdone";

export interface Verdict {
  readonly refusal: Refusal | null;
  readonly meets: boolean;
  /** Whether any ray was followed. */
  readonly isLooked: boolean;
  /** Whether all that the wish needs was measured in full, and not turned away before. */
  readonly isMeasured: boolean;
  /** Where it belongs on the wall; null where not measured. */
  readonly across: number | null;
  readonly up: number | null;
  readonly score: number | null;
}

export type Judge = (tiers: readonly Tier[], ask: Ask) => Verdict;

const UNMET: Verdict = {
  refusal: "meets",
  meets: false,
  isLooked: false,
  isMeasured: false,
  across: null,
  up: null,
  score: null,
};

/** Measures that take rays from many sides. */
const LEANING = ["back", "through", "inside", "sparkle"] as const satisfies readonly MeasureName[];

/** Depths by the tiers up to each one, null where its rule can't be met; the oldest are forgotten. */
const MOST_REMEMBERED = 20_000;

/** A tier as far as its depth depends on it. */
const partOf = ({ side, armAngleDeg, count, startDeg, depth }: Tier): string =>
  JSON.stringify([side, armAngleDeg, count, startDeg, depth]);

/** Solves tier by tier and stops at the first that can't be: most candidates share their first tiers with others. */
function createSolver(wish: IdeaWish): (tiers: readonly Tier[]) => SolvedPlan | null {
  const known = new Map<string, number | null>();
  const depthOf = (key: string, tiers: readonly Tier[], depths: Readonly<Record<string, number>>) => {
    const found = known.get(key);
    if (found !== undefined) return found;
    const last = solvePlan(planOfIdea(wish, tiers, ""), depths).tiers[tiers.length - 1];
    const depth = last.met && last.depthMm > 0 ? last.depthMm : null;
    if (known.size >= MOST_REMEMBERED) known.clear();
    known.set(key, depth);
    return depth;
  };
  return (tiers) => {
    const depths: Record<string, number> = {};
    let key = "";
    for (let i = 0; i < tiers.length; i++) {
      key += partOf(tiers[i]);
      const depth = depthOf(key, tiers.slice(0, i + 1), depths);
      if (depth === null) return null;
      depths[tiers[i].id] = depth;
    }
    return solvePlan(planOfIdea(wish, tiers, ""), depths);
  };
}

/** Measures that decide: those limited, wanted or spread over the wall. */
function needed(wish: IdeaWish): ReadonlySet<MeasureName> {
  const limited = NUMERIC_MEASURES.filter((name) => wish.limits?.[name]);
  return new Set([...limited, ...wantedIn(wish), wish.across, wish.up]);
}

/** One candidate on its way through the tests. */
class Trial {
  readonly values: Values = {};
  isLooked = false;
  private readonly wish: IdeaWish;
  private readonly ask: Ask;

  constructor(wish: IdeaWish, ask: Ask) {
    this.wish = wish;
    this.ask = ask;
  }

  knows(name: MeasureName): boolean {
    return this.values[name] !== undefined;
  }

  /** Why it need not be measured any farther; null where it has to be. */
  refusal(): Refusal | null {
    const broken = brokenLimit(this.wish, this.values);
    if (broken) return broken;
    const { across, up } = this.wish;
    const { edges, best } = this.ask;
    const [x, y] = [this.values[across], this.values[up]];
    if (!edges || x === undefined || y === undefined) return null;
    const held = best[cellAt(edges, x, y)];
    return held !== null && bestScore(this.wish, this.values) <= held ? "outdone" : null;
  }

  /** Refused, unless the wall has yet to be divided and its axes are not known: then it is measured all the same. */
  isOver(): boolean {
    const { edges } = this.ask;
    const isPlaced = this.knows(this.wish.across) && this.knows(this.wish.up);
    return this.refusal() !== null && (edges !== null || isPlaced);
  }

  /** Why a guess from few rays turns it away. */
  refusalBy(edges: WallEdges, guess: Guess): Refusal | null {
    const broken = limitBrokenBy(this.wish, guess);
    if (broken) return broken;
    return isOutdone(this.wish, edges, this.ask.best, this.values, guess) ? "outdone" : null;
  }

  verdict(isMeasured: boolean, refusal: Refusal | null = this.refusal()): Verdict {
    const { across, up } = this.wish;
    return {
      refusal,
      meets: true,
      isLooked: this.isLooked,
      isMeasured,
      across: this.values[across] ?? null,
      up: this.values[up] ?? null,
      score: refusal === null ? scoreOf(this.wish, this.values) : null,
    };
  }
}

/** What judging needs again for each candidate. */
interface Rooms {
  readonly rasters: Rasters;
  readonly look: LookRoom;
}

/** Follows rays as far as they decide. */
function lookedAt(
  trial: Trial,
  solved: SolvedPlan,
  needs: ReadonlySet<MeasureName>,
  { edges }: Ask,
  rooms: Rooms,
): Verdict {
  const body = rayBodyOf(solved, rooms.rasters);
  const isLeaning = LEANING.some((name) => needs.has(name));
  trial.isLooked = isLeaning || needs.has("images");
  // one look without leaning comes before the many that have to lean
  if (needs.has("images")) {
    trial.values.images = imagesSeen(body);
    if (trial.isOver()) return trial.verdict(false);
  }
  if (!isLeaning) return trial.verdict(true);
  const looks = new Looks(body, needs.has("sparkle"), rooms.look);
  for (const level of edges ? LEVELS : []) {
    const refusal = edges && trial.refusalBy(edges, guessFrom(looks.upTo(level.parts), level));
    if (refusal) return trial.verdict(false, refusal);
  }
  Object.assign(trial.values, looks.upTo(ALL_PARTS));
  return trial.verdict(true);
}

function judged(
  wish: IdeaWish,
  solved: SolvedPlan,
  needs: ReadonlySet<MeasureName>,
  ask: Ask,
  rooms: Rooms,
): Verdict {
  const solid = cutBall(solved.planes);
  const meets = ringsMeet(solved, solid) && (wish.meets === "rings" || tiersMeet(solved, solid));
  if (!meets) return UNMET;
  const trial = new Trial(wish, ask);
  const { leastFacetMm, ...shape } = shapeMeasures(solved, solid);
  Object.assign(trial.values, shape, leastFacetMm === null ? {} : { leastFacetMm });
  if (needs.has("leastFacetMm") && leastFacetMm === null) return trial.verdict(false, "leastFacetMm");
  if (trial.isOver()) return trial.verdict(false);
  if (needs.has("minutes")) {
    const minutes = minutesOf(solved);
    if (minutes === null) return trial.verdict(false, "minutes");
    trial.values.minutes = minutes;
    if (trial.isOver()) return trial.verdict(false);
  }
  return lookedAt(trial, solved, needs, ask, rooms);
}

/** The evaluator of candidates (fitness and constraints). @returns a judge for one wish, with a memory of its own */
export function createJudge(wish: IdeaWish): Judge {
  const solve = createSolver(wish);
  const needs = needed(wish);
  const rooms: Rooms = { rasters: rastersOf(planOfIdea(wish, [], "")), look: lookRoom() };
  return (tiers, ask) => {
    try {
      const solved = solve(tiers);
      return solved ? judged(wish, solved, needs, ask, rooms) : UNMET;
    } catch (error) {
      // a plan that can't be reckoned is no idea
      if (error instanceof InexactCut) return UNMET;
      throw error;
    }
  };
}
