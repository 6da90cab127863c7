/**
 * What a person reads on the index wheel, front and back. In the plan stops count with the azimuth, seen from the front. On
 * the machine the free side is looked at: the wheel of the front set-up counts as the plan does, and turning the piece over
 * (half a turn about a line across the axis) sends azimuth t to -t, so the back wheel counts the other way.
 */
import { wheelErrors } from "../../check/findings-wheel.ts";
import type { Plan, SetUp, Side, Tier } from "../../plan/document.ts";
import { evenCounts, nearestStop, stopsOf, wrapDeg, zeroOf } from "../../plan/place.ts";
import type { PlacedFacet, SolvedPlan } from "../../plan/solved.ts";

const DEG = Math.PI / 180;
/** Far below what an index can be set to. */
const TRIM_SLACK_DEG = 1e-9;

export type Direction = "with" | "against";
const REVERSED = { with: "against", against: "with" } as const;

/** Which way stop numbers grow on one side: as stated, else `with` in front and the reverse of the front behind. */
export function directionOf(plan: Plan, side: Side): Direction {
  const stated = plan.rig.setUps?.[side]?.direction;
  if (stated) return stated;
  return side === "front" ? "with" : REVERSED[directionOf(plan, "front")];
}

/** What the wheel, or a free protractor, shows for a facet. */
export interface StopRead {
  /** Stop as counted on the machine, 0 .. N-1; null on a free protractor. */
  readonly stop: number | null;
  /** What is written there: the stop's number, or the zero stop's own label; on a protractor degrees to a tenth. */
  readonly label: string;
  /** Reading in degrees from zero in the wheel's own direction, [0, 360). */
  readonly turnDeg: number;
}

/** Reading of an azimuth in degrees from zero in the wheel's own direction, [0, 360). */
function turnAt(plan: Plan, side: Side, azimuthDeg: number): number {
  const ahead = azimuthDeg - zeroOf(plan, side);
  return wrapDeg(directionOf(plan, side) === "with" ? ahead : -ahead);
}

/** What is written at a stop of one side's wheel. */
export const stopLabel = (plan: Plan, side: Side, stop: number): string =>
  (stop === 0 && plan.rig.setUps?.[side]?.zeroLabel) || String(stop);

/** The number engraved on one side's wheel where the plan's own stop stands: the plan counts with the azimuth from the wheel's zero. */
export function engravedStop(plan: Plan, side: Side, wheelStop: number): number {
  const stops = stopsOf(plan, side);
  return stops === null || directionOf(plan, side) === "with" ? wheelStop : (stops - wheelStop) % stops;
}

/** What a tier's ring begins with as a person counts it: stop 6 of 96 with 16 facets is stop 0, for the ring is the same. */
const ringStop = (stop: number, count: number, stops: number): number =>
  stops % count === 0 ? stop % (stops / count) : stop;

/** The stop that a start of a tier comes to on its wheel, as engraved, the least of its ring; null on a free protractor. */
export function startStop(plan: Plan, tier: Pick<Tier, "side" | "count">, startDeg: number): number | null {
  const stops = stopsOf(plan, tier.side);
  if (stops === null) return null;
  const own = nearestStop(startDeg, stops, zeroOf(plan, tier.side));
  return ringStop(engravedStop(plan, tier.side, own), tier.count, stops);
}

/** The same as written on the wheel. */
export function startLabel(plan: Plan, tier: Pick<Tier, "side" | "count">, startDeg: number): string | null {
  const stop = startStop(plan, tier, startDeg);
  return stop === null ? null : stopLabel(plan, tier.side, stop);
}

/** Start of a tier, degrees of azimuth, whose first facet stands at a reading of its wheel, the ring's least where it is a stop. */
export function startAt(plan: Plan, tier: Pick<Tier, "side" | "count">, reading: number): number {
  const stops = stopsOf(plan, tier.side);
  if (stops === null) return reading;
  const perRing = stops % tier.count === 0 ? stops / tier.count : stops;
  const least = ((reading % perRing) + perRing) % perRing;
  const ahead = (360 * least) / stops;
  return zeroOf(plan, tier.side) + (directionOf(plan, tier.side) === "with" ? ahead : -ahead);
}

export function readStop(plan: Plan, facet: PlacedFacet): StopRead {
  const { side } = plan.tiers[facet.tierIndex];
  const stops = stopsOf(plan, side);
  const turnDeg = turnAt(plan, side, facet.azimuthDeg);
  if (stops === null || facet.wheelStop === null) return { stop: null, label: turnDeg.toFixed(1), turnDeg };
  const stop = engravedStop(plan, side, facet.wheelStop);
  return { stop, label: stopLabel(plan, side, stop), turnDeg };
}

/** In which order a tier's facets are ground: round from the ring's least stop, as it is named, or from the plan's first facet. */
export type FacetOrder = "ring" | "plan";

/** Facets of a tier, as positions in plan order, in the order in which they are ground. */
export function facetsInOrder(solved: SolvedPlan, tierIndex: number, order: FacetOrder): readonly number[] {
  const { first, count } = solved.tiers[tierIndex];
  const inPlan = Array.from({ length: count }, (_, k) => first + k);
  const tier = solved.plan.tiers[tierIndex];
  const least = startStop(solved.plan, tier, tier.startDeg);
  if (order === "plan" || least === null) return inPlan;
  const from = inPlan.findIndex((k) => readStop(solved.plan, solved.facets[k]).stop === least);
  return from <= 0 ? inPlan : [...inPlan.slice(from), ...inPlan.slice(0, from)];
}

/** Where the wheel of one side's set-up stands when the ink mark on the skin is up. */
export interface MarkRead {
  /** What is written at the nearest stop, or degrees to a tenth on a protractor. */
  readonly label: string;
  readonly isStop: boolean;
  /** How far past that stop, in the wheel's own direction, the mark lies, degrees; 0 on a protractor. */
  readonly pastDeg: number;
}

/** The mark by which the piece is turned right on this side; without one in the plan it is at azimuth 0. */
export function readMark(plan: Plan, side: Side): MarkRead {
  const turnDeg = turnAt(plan, side, plan.piece.inkMarkDeg ?? 0);
  const stops = stopsOf(plan, side);
  if (stops === null) return { label: turnDeg.toFixed(1), isStop: false, pastDeg: 0 };
  const stop = nearestStop(turnDeg, stops);
  const past = turnDeg - (360 * stop) / stops;
  return { label: stopLabel(plan, side, stop), isStop: true, pastDeg: past > 180 ? past - 360 : past };
}

/** How well the wheel serves one tier. */
export interface WheelFit {
  readonly divides: boolean;
  /** Counts that the wheel can do evenly; every count on a free protractor is written as an empty list. */
  readonly evenCounts: readonly number[];
  /** Greatest distance of a facet from where it was asked. */
  readonly errorDeg: number;
  /** The most that the gap between two next neighbours is opened or narrowed by, along the surface, mm. */
  readonly gapMm: number;
}

export function wheelFit(solved: SolvedPlan, tierIndex: number): WheelFit {
  const { plan } = solved;
  const tier = plan.tiers[tierIndex];
  const stops = stopsOf(plan, tier.side);
  const divides = stops === null || stops % tier.count === 0;
  const { errorDeg, gapMm } = divides ? { errorDeg: 0, gapMm: 0 } : wheelErrors(solved, tierIndex);
  return { divides, evenCounts: stops === null ? [] : evenCounts(stops), errorDeg, gapMm };
}

const withBackZero = (plan: Plan, zeroDeg: number): Plan => {
  const back: SetUp = { ...plan.rig.setUps?.back, zeroDeg: wrapDeg(zeroDeg) };
  return { ...plan, rig: { ...plan.rig, setUps: { ...plan.rig.setUps, back } } };
};

/** Turn about the axis that an offset along the surface means at a facet's height; null at the pole, where it means none. */
export function offsetTurn(offsetMm: number, radiusMm: number, armAngleDeg: number): number | null {
  const ring = radiusMm * Math.cos(armAngleDeg * DEG);
  return armAngleDeg === 90 ? null : offsetMm / ring / DEG;
}

/**
 * The plan after the transfer, when a trial facet of the back landed `offsetDeg` further along the azimuth than asked: the back
 * wheel's zero really stands that much further on. Facets of the back then take the stops nearest to where they were asked,
 * and solving the plan again gives what is left of the offset its due. The front is untouched.
 */
export const afterTrialFacet = (plan: Plan, offsetDeg: number): Plan =>
  withBackZero(plan, zeroOf(plan, "back") + offsetDeg);

/** What is still off after the wheel has been moved by whole stops; 0 on a free protractor. */
export function offsetLeft(plan: Plan, offsetDeg: number): number {
  const stops = stopsOf(plan, "back");
  if (stops === null) return 0;
  const step = 360 / stops;
  return offsetDeg - step * Math.round(offsetDeg / step);
}

/** Whether the rig can turn its index by what whole stops leave. */
export const canTrim = (plan: Plan, leftDeg: number): boolean =>
  Math.abs(leftDeg) <= (plan.rig.indexTrimDeg ?? 0) + TRIM_SLACK_DEG;

/** The plan after the transfer when what whole stops leave is taken off with the index's fine turn: the back stands as planned. */
export const afterFineTurn = (plan: Plan, offsetDeg: number): Plan =>
  withBackZero(plan, zeroOf(plan, "back") + offsetDeg - offsetLeft(plan, offsetDeg));
