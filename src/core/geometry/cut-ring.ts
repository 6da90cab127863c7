/**
 * How the outline of one facet is cut by a plane: a ring of straight pieces and arcs, of which the part on the plane's
 * inner side is kept. What is in, out or on the plane has been decided for every place before, once for all facets that
 * share it; here it is only followed.
 */
import type { CircleCrossing } from "./crossing.ts";
import { SKIN } from "./solid-types.ts";
import { sweep } from "./turn.ts";
import { dot, sub, type Vec3 } from "./vec.ts";

/** Piece i runs counter-clockwise from places[i] to places[i + 1]; labels[i] is the plane beyond it, or SKIN for an arc. */
export interface Ring {
  readonly places: readonly number[];
  readonly labels: readonly number[];
}

/** One kept piece, from place to place. */
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly label: number;
}

/** What a ring may ask of the cut it belongs to. */
export interface Cutting {
  /** -1 in, 0 on, 1 out. */
  readonly side: (place: number) => number;
  readonly at: (place: number) => Vec3;
  /** The place where the cutting plane crosses the edge between this facet and `label`: one for both facets. */
  readonly onEdge: (label: number, from: number, to: number) => number;
  /** The places where the cutting plane crosses this facet's circle. */
  readonly onCircle: (which: "exit" | "entry") => number;
}

export interface CutRing {
  readonly kept: readonly Piece[];
  /** Something of the ring lies strictly within, or strictly beyond, the plane. */
  readonly hasIn: boolean;
  readonly hasOut: boolean;
}

const distance2 = (a: Vec3, b: Vec3): number => {
  const d = sub(a, b);
  return dot(d, d);
};

/** Cuts the arcs of a circle that the plane crosses. The kept part of the whole circle runs from `entry` to `exit`. */
function arcCutter(crossing: CircleCrossing, cutting: Cutting) {
  const { side, at, onCircle } = cutting;
  /** Which crossing a place on the plane stands for. */
  const isExit = (place: number) =>
    distance2(at(place), crossing.exit) <= distance2(at(place), crossing.entry);
  /** True when the arc between the places passes the point `mid` of the circle. */
  const passes = (from: number, to: number, mid: Vec3) => {
    const start = crossing.angleOf(at(from));
    return sweep(start, crossing.angleOf(mid)) < sweep(start, crossing.angleOf(at(to)));
  };
  /** Null for an arc so short that both its ends stand for one and the same crossing. */
  return (from: number, to: number): Piece[] | null => {
    const [s, e] = [side(from), side(to)];
    if (s === 0 && e === 0 && isExit(from) === isExit(to)) {
      const isShort = !passes(from, to, crossing.farthestIn) && !passes(from, to, crossing.farthestOut);
      if (isShort) return null;
    }
    const startsIn = s < 0 || (s === 0 && !isExit(from));
    const endsIn = e < 0 || (e === 0 && isExit(to));
    if (startsIn && endsIn) {
      if (!passes(from, to, crossing.farthestOut)) return [{ from, to, label: SKIN }];
      return [
        { from, to: onCircle("exit"), label: SKIN },
        { from: onCircle("entry"), to, label: SKIN },
      ];
    }
    if (startsIn) return [{ from, to: onCircle("exit"), label: SKIN }];
    if (endsIn) return [{ from: onCircle("entry"), to, label: SKIN }];
    if (!passes(from, to, crossing.farthestIn)) return [];
    return [{ from: onCircle("entry"), to: onCircle("exit"), label: SKIN }];
  };
}

/**
 * @param crossing how the facet's circle is crossed; "in" or "out" when all of it lies on one side
 */
export function cutRing(ring: Ring, crossing: CircleCrossing | "in" | "out", cutting: Cutting): CutRing {
  const { side, onEdge } = cutting;
  const { places, labels } = ring;
  const kept: Piece[] = [];
  let hasIn = false;
  let hasOut = false;
  const cutArc = typeof crossing === "string" ? null : arcCutter(crossing, cutting);
  for (let i = 0; i < places.length; i++) {
    const [from, to, label] = [places[i], places[i + 1 === places.length ? 0 : i + 1], labels[i]];
    const [s, e] = [side(from), side(to)];
    hasIn ||= s < 0;
    hasOut ||= s > 0;
    if (label === SKIN) {
      const parts = cutArc ? cutArc(from, to) : crossing === "in" ? [{ from, to, label }] : [];
      // on the plane as a whole, as an edge can be
      if (parts === null) {
        kept.push({ from, to, label });
        continue;
      }
      hasIn ||= parts.length > 0;
      hasOut ||= parts.length !== 1 || parts[0].from !== from || parts[0].to !== to;
      kept.push(...parts);
    } else if (s <= 0 && e <= 0) kept.push({ from, to, label });
    else if (s < 0) kept.push({ from, to: onEdge(label, from, to), label });
    else if (e < 0) kept.push({ from: onEdge(label, from, to), to, label });
  }
  return { kept, hasIn, hasOut };
}
