/** A wish as the person says it on screen, and the wish that it means for the plan on the bench. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { IdeaWish, MeasureName } from "../../core/ideas/wish.ts";
import { wishFromData } from "../../core/ideas/wish-file.ts";
import type { Plan, Side, Tier } from "../../core/plan/document.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { COUNTS } from "../../core/plan/limits.ts";
import { perStudio, useStudioStore } from "../studio.ts";
import { keepLine, readLine } from "./wall-shelf.ts";

/**
 * What one may ask of a piece, as weights of measures. Many images of the inside are no wish: blind eyes that ranked pictures
 * hardly followed the count of them, so it only spreads the wall.
 */
export const WANTS = {
  sparkle: { sparkle: 1 },
  back: { back: 1 },
  through: { through: 1 },
  inside: { inside: 1 },
  round: { skinShare: 1 },
  covered: { skinShare: -1 },
  large: { leastFacetMm: 1 },
  quick: { minutes: -1 },
} as const satisfies Record<string, Partial<Record<MeasureName, number>>>;
export type Want = keyof typeof WANTS;

/** Measures that the wall can be spread over. */
export const AXES = [
  "minutes",
  "facets",
  "tiers",
  "leastFacetMm",
  "skinShare",
  "back",
  "through",
  "inside",
  "images",
  "sparkle",
] as const satisfies readonly MeasureName[];
export type Axis = (typeof AXES)[number];

export const LEAST_FACETS = 3;
/** A wish that a file brought: taken as it stands, since it may ask for more than the sentences here can say. */
export interface GivenWish {
  /** The file's. */
  readonly name: string;
  readonly wish: IdeaWish;
}
export interface Draft {
  readonly sides: IdeaWish["sides"];
  readonly leastTiers: number;
  readonly mostTiers: number;
  readonly mostFacets: number;
  readonly mostHours: number;
  readonly want: Want;
  readonly also: Want | "nothing";
  readonly across: Axis;
  readonly up: Axis;
  /** So many of the plan's first tiers stay as they are. */
  readonly keep: number;
  /** Goes before all else here as long as it is there. */
  readonly given: GivenWish | null;
}

const FIRST: Draft = {
  sides: "both",
  leastTiers: 1,
  mostTiers: 5,
  mostFacets: 60,
  mostHours: 8,
  want: "back",
  also: "nothing",
  across: "minutes",
  up: "back",
  keep: 0,
  given: null,
};

export const MOST = { tiers: 9, hours: 40, facets: Math.min(COUNTS.facets, 200) } as const;
/** What each field may hold. */
const isAllowed: { readonly [K in keyof Draft]: (value: unknown) => boolean } = {
  sides: (value) => value === "front" || value === "both",
  leastTiers: (value) => isWhole(value, 1, MOST.tiers),
  mostTiers: (value) => isWhole(value, 1, MOST.tiers),
  mostFacets: (value) => isWhole(value, LEAST_FACETS, MOST.facets),
  mostHours: (value) => isWhole(value, 1, MOST.hours),
  want: (value) => Object.hasOwn(WANTS, String(value)),
  also: (value) => value === "nothing" || Object.hasOwn(WANTS, String(value)),
  across: (value) => AXES.includes(value as Axis),
  up: (value) => AXES.includes(value as Axis),
  keep: (value) => isWhole(value, 0, COUNTS.tiers),
  given: (value) => value === null || isGiven(value),
};
function isGiven(value: unknown): boolean {
  const { name, wish } = (value ?? {}) as Readonly<Record<string, unknown>>;
  try {
    return typeof name === "string" && wishFromData(wish).wish !== null;
  } catch (error) {
    if (error instanceof PlanFileError) return false;
    throw error;
  }
}
const isWhole = (value: unknown, least: number, most: number): boolean =>
  Number.isInteger(value) && Number(value) >= least && Number(value) <= most;

/** A wish as this device kept it: each field that can be read, and the first wish's for every other. */
function draftFrom(data: unknown): Draft {
  const given = Object.entries(data ?? {}).filter(([key, value]) => isAllowed[key as keyof Draft]?.(value));
  const read: Draft = { ...FIRST, ...Object.fromEntries(given) };
  return {
    ...read,
    also: read.also === read.want ? "nothing" : read.also,
    up: read.up === read.across ? (AXES.find((axis) => axis !== read.across) ?? FIRST.up) : read.up,
  };
}

function createDraft() {
  const draft = createStore<Draft>(() => FIRST);
  readLine("wish", (data) => draft.setState(draftFrom(data)));
  draft.subscribe((now) => keepLine("wish", now));
  return draft;
}

/** A studio's wish; this browser keeps it, of two studios the one written last. */
export const draftOf = perStudio(createDraft);
export const useDraft = (): Draft => useStore(draftOf(useStudioStore()));

/** Less than the first wish by as much. */
const ALSO = 0.6;
const MINUTES = 60;

/** The last tier that is cut already, counted from 1: it stays, and all before it. */
export const leastKept = ({ tiers }: Plan): number =>
  tiers.findLastIndex(({ asCut }) => asCut !== undefined) + 1;

const LEAST_POLE_MM = 0.5;
/** A pole that hardly takes anything: the least that a side can be given. */
const leastPole = (side: Side): Tier => ({
  id: `least ${side}`,
  name: "",
  side,
  armAngleDeg: 90,
  count: 1,
  startDeg: 0,
  depth: { rule: "depth", mm: LEAST_POLE_MM },
});

/** The least that a pattern can be. */
export const leastPlan = ({ work: _, ...plan }: Plan, { sides }: Draft): Plan => ({
  ...plan,
  tiers: sides === "both" ? [leastPole("front"), leastPole("back")] : [leastPole("front")],
});

/** So many more tiers than what one begins with. */
const MORE_TIERS = 1;
/** So much more work, as a share. */
const MORE_WORK = 1.25;

/**
 * The wish of a search that stays near given plans: its bounds give way as far as these need, and no side is asked for that none of
 * them has.
 * @param minutes what each takes; null where it can't be reckoned
 */
export function wishNear(
  wish: IdeaWish,
  plans: readonly (readonly Tier[])[],
  minutes: readonly (number | null)[],
): IdeaWish {
  const tiers = plans.map(({ length }) => length);
  const facets = plans.map((own) => own.reduce((sum, { count }) => sum + count, 0));
  const hasBack = plans.some((own) => own.some(({ side }) => side === "back"));
  const [least, most] = wish.limits?.minutes ?? [0, Number.MAX_VALUE];
  const known = minutes.filter((one) => one !== null);
  const time = [Math.min(least, ...known), Math.max(most, ...known.map((one) => one * MORE_WORK))] as const;
  return {
    ...wish,
    sides: hasBack ? "both" : "front",
    tiers: [Math.min(wish.tiers[0], ...tiers), Math.max(wish.tiers[1], ...tiers.map((n) => n + MORE_TIERS))],
    facets: [
      Math.min(wish.facets[0], ...facets),
      Math.max(wish.facets[1], ...facets.map((n) => Math.ceil(n * MORE_WORK))),
    ],
    // what the wish leaves open stays open
    ...(wish.limits ? { limits: { ...wish.limits, ...(wish.limits.minutes ? { minutes: time } : {}) } } : {}),
  };
}

/** Bounds of a wish that a search near given plans did not keep, each with what was asked and what held instead. */
export interface GaveWay {
  readonly sides?: IdeaWish["sides"];
  readonly leastTiers?: Instead;
  readonly mostTiers?: Instead;
  readonly leastFacets?: Instead;
  readonly mostFacets?: Instead;
  /** Minutes. */
  readonly leastTime?: Instead;
  readonly mostTime?: Instead;
}
/** [asked, what held instead] */
type Instead = readonly [number, number];

/** Where one wish differs from another in its bounds; null where it doesn't. */
export function gaveWay(said: IdeaWish, used: IdeaWish): GaveWay | null {
  const pairs: Readonly<Record<Exclude<keyof GaveWay, "sides">, readonly (number | undefined)[]>> = {
    leastTiers: [said.tiers[0], used.tiers[0]],
    mostTiers: [said.tiers[1], used.tiers[1]],
    leastFacets: [said.facets[0], used.facets[0]],
    mostFacets: [said.facets[1], used.facets[1]],
    leastTime: [said.limits?.minutes?.[0], used.limits?.minutes?.[0]],
    mostTime: [said.limits?.minutes?.[1], used.limits?.minutes?.[1]],
  };
  const changed = Object.entries(pairs).filter(([, [asked, held]]) => asked !== held);
  if (changed.length === 0 && said.sides === used.sides) return null;
  return { ...Object.fromEntries(changed), ...(said.sides === used.sides ? {} : { sides: used.sides }) };
}

const WAYS_TO_GIVE = [
  "leastTiers",
  "mostTiers",
  "leastFacets",
  "mostFacets",
  "leastTime",
  "mostTime",
] as const satisfies readonly (keyof GaveWay)[];

/** As this device kept it: what can't be read is left out; null where nothing is left. */
export function gaveWayFrom(data: unknown): GaveWay | null {
  const given = (data ?? {}) as Readonly<Record<string, unknown>>;
  const isInstead = (value: unknown) =>
    Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);
  const read = WAYS_TO_GIVE.filter((key) => isInstead(given[key])).map((key) => [key, given[key]] as const);
  const { sides } = given;
  const all: GaveWay = {
    ...Object.fromEntries(read),
    ...(sides === "front" || sides === "both" ? { sides } : {}),
  };
  return Object.keys(all).length > 0 ? all : null;
}

/** A wish of one's own without where its columns of time begin, which nobody asked for. */
export const asSaid = (wish: IdeaWish, used: IdeaWish): IdeaWish =>
  wish.limits?.minutes && used.limits?.minutes
    ? { ...wish, limits: { ...wish.limits, minutes: [used.limits.minutes[0], wish.limits.minutes[1]] } }
    : wish;

/**
 * @param leastMinutes what the least pattern takes: the wall's columns of time begin there, and none stays empty for nothing;
 * null where it can't be reckoned
 */
export function wishOf(plan: Plan, own: Draft, leastMinutes: number | null): IdeaWish {
  const keep = plan.tiers.slice(0, Math.max(own.keep, leastKept(plan)));
  const keptFacets = keep.reduce((sum, { count }) => sum + count, 0);
  const most = own.mostHours * MINUTES;
  const want: Partial<Record<MeasureName, number>> = {};
  const add = (wanted: Want, share: number) => {
    for (const [name, weight] of Object.entries(WANTS[wanted]) as [MeasureName, number][])
      want[name] = Math.min(1, Math.max(-1, (want[name] ?? 0) + share * weight));
  };
  add(own.want, 1);
  if (own.also !== "nothing") add(own.also, ALSO);
  return {
    format: "glintwright-wish",
    version: 1,
    piece: plan.piece,
    rig: plan.rig,
    sides: own.sides,
    tiers: [
      Math.max(Math.min(own.leastTiers, own.mostTiers), keep.length),
      Math.max(own.mostTiers, keep.length),
    ],
    facets: [1, Math.max(own.mostFacets, keptFacets)],
    ...(keep.length > 0 ? { keep } : {}),
    limits: { minutes: [Math.min(most / 2, leastMinutes ?? 0), most] },
    want,
    across: own.across,
    up: own.up,
    ...(plan.pictures ? { pictures: plan.pictures } : {}),
  };
}
