/**
 * Searches for the best of each kind: a grid of two measures, in each cell the best candidate found, offspring by changes
 * and by crossing of what the cells hold (MAP-Elites: Mouret and Clune, Illuminating search spaces by mapping elites, 2015).
 *
 * Candidates are made in batches of fixed size, each from its own chance and from the wall as it stood two batches before: so
 * two batches can be judged at a time, by any number of threads in any order, and the answer stays the same.
 */
import { seeded } from "../bench/chances/chance.ts";
import type { Tier } from "../plan/document.ts";
import { type Genes, type Ground, groundOf, impossible, keyOf, tiersOf } from "./genes.ts";
import type { Ask, Refusal, Verdict } from "./judge.ts";
import { crossCandidates, makeCandidate, type Reach, SMALL, varyCandidate, WIDE } from "./make.ts";
import { nearestGenes } from "./nearest.ts";
import {
  AXES,
  type Axis,
  CELLS,
  COLUMNS,
  cellAt,
  edgesOf,
  placeOf,
  ROWS,
  type WallEdges,
  widened,
} from "./wall.ts";
import type { IdeaWish } from "./wish.ts";

export interface Candidate {
  readonly tiers: readonly Tier[];
}
export interface Batch {
  readonly index: number;
  readonly candidates: readonly Candidate[];
  readonly ask: Ask;
}
/** The best of a cell so far. */
export interface Found {
  readonly cell: readonly [number, number];
  readonly score: number;
  /** Position among all candidates, from 0. */
  readonly number: number;
  readonly across: number;
  readonly up: number;
  readonly tiers: readonly Tier[];
}
/** Of all candidates that came to a test, the share that it turned away. */
export interface InTheWay {
  readonly limit: string;
  readonly share: number;
}

/** Candidates a batch, and batches that are on their way at a time. */
const BATCH = 24;
const AHEAD = 2;
/** So many candidates that meet divide the wall. */
const FIRST_MEETING = 200;
/**
 * How candidates come about: shares changed and crossed, the rest made out of nothing, and how far changes go. Wide ones find
 * families of plans that small ones from the first good one never come to; near given plans they would lead away.
 */
interface Ways {
  readonly varied: number;
  readonly crossed: number;
  readonly reach: Reach;
}
const WAYS = {
  open: { varied: 0.7, crossed: 0.2, reach: WIDE },
  /** Everything out of nothing: what the search is held against. */
  plain: { varied: 0, crossed: 0, reach: SMALL },
  near: { varied: 0.85, crossed: 0.15, reach: SMALL },
  between: { varied: 0.35, crossed: 0.65, reach: SMALL },
} as const satisfies Record<string, Ways>;
export type WayName = keyof typeof WAYS;
/** Near or between given plans: so often one of them is a parent, whatever has been found since. */
const GIVEN_AGAIN = 0.5;
/** So many that meet are drawn for a parent before the wall is divided, and the best of them is it, or the one farthest out. */
const TOURNAMENT = 60;
const FARTHEST_OUT = 0.3;
/** A parent that has no children yet is drawn as if it had so many, and each had raised the sum of scores by as much. */
const USUAL_CHILDREN = 6;
const USUAL_GAIN = 0.004;
/** Draws for a candidate that was not there before. */
const NEW_DRAWS = 8;

export interface SearchOptions {
  readonly tries: number;
  readonly seed: number;
  /** Plans to begin with, by their tiers, kept ones first: offspring of them come from the first batch on. */
  readonly like?: readonly (readonly Tier[])[];
  /** Missing: open. `near` and `between` stay with what they begin with, and need it. */
  readonly ways?: WayName;
  /** The front's rings have these counts, in this order. */
  readonly frontCounts?: readonly number[];
  /** The wall is divided so from the start; missing: by the wish's limits or by what is met first. */
  readonly wall?: WallEdges;
}

interface Held extends Omit<Found, "tiers"> {
  readonly genes: Genes;
}
/** A candidate as it was made: out of nothing, or of the candidate with this number. */
interface Made {
  readonly genes: Genes;
  readonly parent: number | null;
}
/** What was sent to be judged: candidates by their numbers, null where chance found none. */
type Sent = readonly ((Made & { readonly number: number }) | null)[];
/** What a candidate is made of. */
interface Parent {
  readonly genes: Genes;
  readonly number: number;
}
/** What came of a parent: so many children are judged, and by so much they raised the sum of best scores on the divided wall. */
interface Credit {
  children: number;
  gain: number;
}
/** A candidate that meets and was placed before the wall was divided. */
interface Placed {
  readonly genes: Genes;
  readonly number: number;
  readonly verdict: Verdict;
}

const NO_CREDIT: Credit = { children: 0, gain: 0 };

/**
 * Puts a measured candidate into its cell where it is better than what hangs there; ties go to the earlier one.
 * @returns by how much that raised the sum of best scores; 0 for the first in a cell where it lowered it
 */
function hang(
  cells: (Held | null)[],
  edges: WallEdges | null,
  genes: Genes,
  number: number,
  { refusal, across, up, score }: Verdict,
): number {
  if (refusal !== null || across === null || up === null || score === null || !edges) return 0;
  const cell = cellAt(edges, across, up);
  const held = cells[cell];
  if (held && (held.score > score || (held.score === score && held.number <= number))) return 0;
  cells[cell] = { cell: placeOf(cell), score, number, across, up, genes };
  return held ? score - held.score : Math.max(0, score);
}

const pick = <T>(random: () => number, list: readonly T[]): T => list[Math.floor(random() * list.length)];

/** One of a list, each as likely as its weight says. @param weights above 0 */
function draw<T>(random: () => number, list: readonly T[], weights: readonly number[]): T {
  let left = random() * weights.reduce((sum, weight) => sum + weight, 0);
  const at = weights.findIndex((weight) => {
    left -= weight;
    return left < 0;
  });
  return list[at < 0 ? list.length - 1 : at];
}

export class Search {
  private readonly wish: IdeaWish;
  private readonly options: SearchOptions;
  private readonly ground: Ground;
  private readonly limit: "tiers" | "facets" | null;
  private edges: WallEdges | null = null;
  private cells: (Held | null)[] = Array.from({ length: CELLS }, () => null);
  private placed: Placed[] = [];
  private readonly like: readonly Genes[];
  private readonly known = new Set<string>();
  private readonly sent: Sent[] = [];
  private readonly credits = new Map<number, Credit>();
  private readonly answers = new Map<number, readonly (Verdict | null)[]>();
  private readonly refused = new Map<Refusal, number>();
  private tried = 0;
  private decided = 0;
  private taken = 0;
  private meeting = 0;
  private measured = 0;
  /** Batches to be judged: take them as they come. */
  readonly pending: Batch[] = [];

  constructor(wish: IdeaWish, options: SearchOptions) {
    this.wish = wish;
    this.options = options;
    this.ground = { ...groundOf(wish), frontCounts: options.frontCounts ?? null };
    this.limit = impossible(this.ground);
    this.like = (options.like ?? [])
      .map((tiers) => nearestGenes(this.ground, tiers))
      .filter((genes) => genes !== null);
    const { limits, across, up } = wish;
    if (options.wall) this.edges = options.wall;
    else if (limits?.[across] && limits[up]) this.divide();
    if (this.limit === null) this.send();
  }

  /** True when all candidates are made and judged. */
  get isDone(): boolean {
    return this.taken === this.sent.length;
  }

  /** Share of the tries that are judged, 0 .. 1. */
  get share(): number {
    return this.isDone ? 1 : this.decided / this.options.tries;
  }

  get counts(): { tried: number; meeting: number; measured: number } {
    return {
      tried: this.isDone ? this.tried : this.decided,
      meeting: this.meeting,
      measured: this.measured,
    };
  }

  /** What the wall holds, from below, row by row; before it is divided, as it would be by what has been seen so far. */
  get found(): Found[] {
    if (this.edges) return this.asFound(this.cells);
    const cells: (Held | null)[] = this.cells.map(() => null);
    const edges = this.dividedBy(this.placed);
    for (const { genes, number, verdict } of this.placed) hang(cells, edges, genes, number, verdict);
    return this.asFound(cells);
  }

  private asFound(cells: readonly (Held | null)[]): Found[] {
    return cells.flatMap((held) => {
      if (!held) return [];
      const { genes, ...rest } = held;
      return [{ ...rest, tiers: tiersOf(this.ground, genes) }];
    });
  }

  /** Edges of the wall, the outer ones moved out to hold what is on it; null before it is divided. */
  get wall(): WallEdges {
    const edges = this.edges ?? this.dividedBy(this.placed);
    const held = this.cells.filter((cell) => cell !== null);
    return {
      across: widened(
        edges.across,
        held.map(({ across }) => across),
      ),
      up: widened(
        edges.up,
        held.map(({ up }) => up),
      ),
    };
  }

  /** Candidates that met, the earliest first: what is asked about limits when nothing keeps them. */
  get firstMeeting(): readonly (readonly Tier[])[] {
    return this.placed.map(({ genes }) => tiersOf(this.ground, genes));
  }

  /** What turned candidates away, most first: bounds of the wish that nothing can keep stand alone. */
  get refusals(): InTheWay[] {
    if (this.limit) return [{ limit: this.limit, share: 1 }];
    return [...this.refused]
      .filter(([refusal]) => refusal !== "outdone")
      .map(([limit, count]) => ({ limit, share: count / Math.max(1, this.tried) }))
      .sort((a, b) => b.share - a.share);
  }

  /** Verdicts on a batch's candidates, in their order. Batches may come back in any order. */
  take(index: number, verdicts: readonly Verdict[]): void {
    let at = 0;
    this.answers.set(
      index,
      this.sent[index].map((made) => (made ? verdicts[at++] : null)),
    );
    for (let next = this.answers.get(this.taken); next; next = this.answers.get(this.taken)) {
      this.answers.delete(this.taken);
      this.merge(this.sent[this.taken], next);
      this.taken++;
      this.send();
    }
    if (this.isDone && !this.edges) this.divide();
  }

  private dividedBy(placed: readonly Placed[]): WallEdges {
    const { across, up } = this.wish;
    const values = (of: (verdict: Verdict) => number | null) =>
      placed.map(({ verdict }) => of(verdict)).filter((value) => value !== null);
    return {
      across: edgesOf(
        this.wish,
        across,
        values((v) => v.across),
        COLUMNS,
      ),
      up: edgesOf(
        this.wish,
        up,
        values((v) => v.up),
        ROWS,
      ),
    };
  }

  /** Divides the wall by what has been seen, and hangs it. */
  private divide(): void {
    this.edges = this.dividedBy(this.placed);
    for (const own of this.placed) this.place(own);
  }

  /** On the divided wall. @returns what `hang` does */
  private place({ genes, number, verdict }: Placed): number {
    return hang(this.cells, this.edges, genes, number, verdict);
  }

  private merge(made: Sent, verdicts: readonly (Verdict | null)[]): void {
    this.decided += made.length;
    made.forEach((own, i) => {
      const verdict = verdicts[i];
      const refusal = verdict ? verdict.refusal : "facets";
      if (refusal) this.refused.set(refusal, (this.refused.get(refusal) ?? 0) + 1);
      if (verdict?.isMeasured) this.measured++;
      if (own && verdict) this.mergeNew({ genes: own.genes, number: own.number, verdict }, own.parent);
    });
  }

  private mergeNew(own: Placed, parent: number | null): void {
    const credit = parent === null ? null : this.creditOf(parent);
    if (credit) credit.children++;
    if (!own.verdict.meets) return;
    this.meeting++;
    if (this.placed.length < FIRST_MEETING) {
      this.placed.push(own);
      if (!this.edges) {
        if (this.placed.length === FIRST_MEETING) this.divide();
        return;
      }
    }
    const gain = this.place(own);
    if (credit) credit.gain += gain;
  }

  private creditOf(number: number): Credit {
    let credit = this.credits.get(number);
    if (!credit) {
      credit = { children: 0, gain: 0 };
      this.credits.set(number, credit);
    }
    return credit;
  }

  /** So many batches are on their way at a time, while there is something to be judged. */
  private send(): void {
    while (this.sent.length - this.taken < AHEAD && this.tried < this.options.tries) {
      const count = Math.min(BATCH, this.options.tries - this.tried);
      const made = Array.from({ length: count }, (_, i) => {
        const number = this.tried + i;
        const own = this.makeNew(number);
        return own && { ...own, number };
      });
      this.tried += count;
      this.sent.push(made);
      this.pending.push({
        index: this.sent.length - 1,
        candidates: made.flatMap((own) => (own ? [{ tiers: tiersOf(this.ground, own.genes) }] : [])),
        ask: { edges: this.edges, best: this.cells.map((held) => held?.score ?? null) },
      });
    }
  }

  /** A candidate that was not tried before; null where chance finds none. */
  private makeNew(number: number): Made | null {
    // what one begins with is tried as it is
    const given = this.like[number];
    if (given && !this.known.has(keyOf(given))) {
      this.known.add(keyOf(given));
      return { genes: given, parent: null };
    }
    const random = seeded((Math.imul(this.options.seed, 0x9e3779b1) + number) >>> 0);
    for (let k = 0; k < NEW_DRAWS; k++) {
      const made = this.make(random);
      if (!made) return null;
      const key = keyOf(made.genes);
      if (this.known.has(key)) continue;
      this.known.add(key);
      return made;
    }
    return null;
  }

  /** A candidate's parent: what the wall holds and what one began with, or only the latter. */
  private parent(random: () => number): Parent | null {
    const isNear = this.options.ways === "near" || this.options.ways === "between";
    // what one begins with is tried first, each at its place
    const like = this.like.map((genes, number) => ({ genes, number }));
    if (isNear && random() < GIVEN_AGAIN && like.length > 0) return pick(random, like);
    const held: Parent[] = this.cells.filter((cell) => cell !== null);
    if (held.length > 0) {
      const all = [...held, ...like];
      return draw(
        random,
        all,
        all.map(({ number }) => this.promise(number)),
      );
    }
    return like.length > 0 && random() < 0.5 ? pick(random, like) : this.firstParent(random);
  }

  /**
   * How much a child of this candidate may be hoped to raise the sum: what its children did so far, and as if there had been a few
   * of the usual kind (curiosity: Cully and Demiris, Quality and diversity optimization, 2018).
   */
  private promise(number: number): number {
    const { children, gain } = this.credits.get(number) ?? NO_CREDIT;
    return (gain + USUAL_GAIN * USUAL_CHILDREN) / (children + USUAL_CHILDREN);
  }

  /**
   * Before the wall is divided: of many that meet the best, or the one farthest out along an axis that is wanted, so that the wall
   * spans what good candidates come to: no cell holds more of what is wanted than its row or column reaches to.
   */
  private firstParent(random: () => number): Parent | null {
    if (this.placed.length === 0) return null;
    const drawn = Array.from({ length: TOURNAMENT }, () => pick(random, this.placed));
    const axis = random() >= FARTHEST_OUT ? null : pick(random, this.axesWanted);
    const least = Number.NEGATIVE_INFINITY;
    const sign = axis !== null && this.wantOf(axis) < 0 ? -1 : 1;
    const rank = ({ verdict }: Placed): number =>
      axis === null ? (verdict.score ?? least) : verdict[axis] === null ? least : sign * verdict[axis];
    return drawn.reduce((best, one) => (rank(one) > rank(best) ? one : best));
  }

  private wantOf(axis: Axis): number {
    return this.wish.want[this.wish[axis]] ?? 0;
  }

  /** Both where none is wanted: then they are there to part what is alike in all else. */
  private get axesWanted(): readonly Axis[] {
    const wanted = AXES.filter((axis) => this.wantOf(axis) !== 0);
    return wanted.length > 0 ? wanted : AXES;
  }

  private get ways(): Ways {
    return WAYS[this.options.ways ?? "open"];
  }

  private make(random: () => number): Made | null {
    const { varied, crossed } = this.ways;
    const chance = random();
    const first = chance < varied + crossed ? this.parent(random) : null;
    const genes = this.makeFrom(first, chance < varied, random);
    return genes && { genes, parent: first?.number ?? null };
  }

  private makeFrom(first: Parent | null, isVaried: boolean, random: () => number): Genes | null {
    if (!first) return makeCandidate(this.ground, random);
    const { reach } = this.ways;
    if (isVaried) return varyCandidate(this.ground, random, first.genes, reach);
    const second = this.parent(random) ?? first;
    const child = crossCandidates(this.ground, random, first.genes, second.genes, reach);
    // two plans alone have few children: between them each is changed a little besides
    return child && this.options.ways === "between"
      ? varyCandidate(this.ground, random, child, reach)
      : child;
  }
}
