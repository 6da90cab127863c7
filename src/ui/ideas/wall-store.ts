/** What hangs on a studio's wall; it outlives the page that shows it, and this browser keeps it, of two studios the one written last. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { InTheWay } from "../../core/ideas/search.ts";
import { COLUMNS, ROWS, type WallEdges } from "../../core/ideas/wall.ts";
import { NUMERIC_MEASURES } from "../../core/ideas/wish.ts";
import type { Measures } from "../../core/measure/measures.ts";
import type { Plan } from "../../core/plan/document.ts";
import { perStudio, useStudioStore } from "../studio.ts";
import { AXES, type Axis, type GaveWay, gaveWayFrom } from "./draft.ts";
import { keepLine, packPlans, readLine, unpackPlans } from "./wall-shelf.ts";

export interface Hung {
  readonly cell: readonly [number, number];
  readonly plan: Plan;
  /** Null until the search has come to its end. */
  readonly measures: Measures | null;
}
/** What the wall is laid out by, which is not the wish any more once that is changed. */
interface Spread {
  readonly across: Axis;
  readonly up: Axis;
  readonly edges: WallEdges;
}
export interface Wall {
  readonly state: "new" | "trying" | "stopped" | "done";
  readonly hung: readonly Hung[];
  readonly spread: Spread | null;
  readonly tried: number;
  readonly meeting: number;
  /** What the wish had to give for patterns near given ones; null where it was kept. */
  readonly gaveWay: GaveWay | null;
  /** Where nothing was found. */
  readonly inTheWay: readonly InTheWay[];
  readonly seed: number;
  /** Patterns tried in all searches before this one: each idea has a number of its own. */
  readonly before: number;
}

const BARE: Wall = {
  state: "new",
  hung: [],
  spread: null,
  tried: 0,
  meeting: 0,
  gaveWay: null,
  inTheWay: [],
  seed: 0,
  before: 0,
};
type Fields = Readonly<Record<string, unknown>>;
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && Number(value) >= 0;
const isNumbers = (value: unknown, length: number): value is number[] =>
  Array.isArray(value) && value.length === length && value.every(Number.isFinite);
const isMeasures = (value: unknown): value is Measures =>
  NUMERIC_MEASURES.every((name) => {
    const one = (value as Fields | null)?.[name];
    return one === null || Number.isFinite(one);
  });

function spreadFrom(data: unknown): Spread | null {
  const { across, up, edges } = (data ?? {}) as Fields;
  const both = (edges ?? {}) as Fields;
  const isSpread =
    AXES.includes(across as Axis) &&
    AXES.includes(up as Axis) &&
    isNumbers(both.across, COLUMNS + 1) &&
    isNumbers(both.up, ROWS + 1);
  return isSpread ? (data as Spread) : null;
}

/** What a line holds; a bare wall where it can't be read. A search that was under way has stopped with its page. */
function wallFrom(data: unknown): Wall {
  const { state, spread, tried, meeting, inTheWay, seed, before, cells, measures, ...rest } = (data ??
    {}) as Fields;
  if (![tried, meeting, seed, before].every(isCount) || !Array.isArray(cells) || !Array.isArray(measures))
    return BARE;
  const hung = unpackPlans(data).flatMap((plan, i) => {
    const cell: unknown = cells[i];
    const isPlace = isNumbers(cell, 2) && cell.every(isCount) && cell[0] < COLUMNS && cell[1] < ROWS;
    if (!plan || !isPlace) return [];
    const own: unknown = measures[i];
    return [{ cell: cell as unknown as Hung["cell"], plan, measures: isMeasures(own) ? own : null }];
  });
  return {
    state: state === "done" ? "done" : Number(tried) > 0 ? "stopped" : "new",
    hung,
    spread: spreadFrom(spread),
    tried: Number(tried),
    meeting: Number(meeting),
    gaveWay: gaveWayFrom(rest.gaveWay),
    inTheWay: Array.isArray(inTheWay) ? inTheWay.filter(isInTheWay) : [],
    seed: Number(seed),
    before: Number(before),
  };
}

const isInTheWay = (data: unknown): data is InTheWay => {
  const { limit, share } = (data ?? {}) as Fields;
  return typeof limit === "string" && Number.isFinite(share);
};

function createWall() {
  const wall = createStore<Wall>(() => BARE);
  const keep = (): void => {
    const { hung, ...rest } = wall.getState();
    const cells = hung.map(({ cell }) => cell);
    const measures = hung.map((one) => one.measures);
    keepLine("wall", { ...rest, ...packPlans(hung.map(({ plan }) => plan)), cells, measures });
  };
  readLine("wall", (data) => {
    // a search that was begun while pictures were waited for goes first
    if (wall.getState() === BARE) wall.setState(wallFrom(data));
  });
  wall.subscribe(({ state }) => {
    if (state !== "trying") keep();
  });
  // one that fills changes many times a second: it is written down when it rests, or when it is left
  globalThis.window?.addEventListener("pagehide", () => {
    if (wall.getState().state === "trying") keep();
  });
  return wall;
}

export const wallOf = perStudio(createWall);
export const useWall = (): Wall => useStore(wallOf(useStudioStore()));
