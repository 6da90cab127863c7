/**
 * The corners of the mesh that the exact solid knows: its outlines' own ends, each once, and points along its arcs, made
 * once for facet and skin together. Everything else of the mesh joins on these.
 */
import type { Plane } from "./plane.ts";
import type { Solid, SolidFacet } from "./solid-types.ts";
import { EPSILON, SAME_PLACE } from "./tolerance.ts";
import { addScaled, cross, distance, dot, normalize, scale, type Vec3 } from "./vec.ts";

/** Outlines as rings of places. */
export interface Border {
  readonly places: readonly Vec3[];
  /** For each facet the places round it, counter-clockwise from outside; empty where nothing of it is left. */
  readonly rings: readonly (readonly number[])[];
  /** The chords of the arcs, two places each, with the skin on the left. */
  readonly chords: readonly (readonly [number, number])[];
  /** Places that border skin, ascending. */
  readonly onSkin: readonly number[];
}

/** Chords that a whole circle gets, however small it is. */
const LEAST_CHORDS = 24;
/** Shorter arcs stay one chord: their ends are known no better than a thousandth of this. */
const LEAST_PARTED = 1000 * SAME_PLACE;
/** A point on an arc nearer than this to another place is that place: two circles touch there. */
const TOUCHING = SAME_PLACE / 10;

/** The points between the ends of an arc of `length` that begins at `from`, in the facet's plane and on the sphere. */
function pointsAlong({ plane: { n, h } }: SolidFacet, from: Vec3, length: number, edge: number): Vec3[] {
  const radius = Math.sqrt(Math.max(0, (1 - h) * (1 + h)));
  const turn = length / radius;
  const fewest = length > LEAST_PARTED ? 2 : 1;
  // a chord c of a circle of radius r stands off it by c^2 / 8 r: on small circles shorter ones serve as well
  const chords = length / (edge * Math.sqrt(radius));
  const count = Math.max(fewest, Math.ceil(chords), Math.ceil((turn * LEAST_CHORDS) / (2 * Math.PI)));
  const foot = scale(n, h);
  const u = scale(normalize(addScaled(from, n, -dot(from, n))), radius);
  const v = cross(n, u);
  return Array.from({ length: count - 1 }, (_, i) => {
    const angle = ((i + 1) * turn) / count;
    return addScaled(addScaled(foot, u, Math.cos(angle)), v, Math.sin(angle));
  });
}

/**
 * @param edge longest chord along an arc of a great circle, radians; along any arc chords stand off by edge^2 / 8 at most
 */
export function borderOf(solid: Solid, edge: number): Border {
  const places: Vec3[] = [];
  const known = new Map<Vec3, number>();
  const add = (at: Vec3): number => places.push(at) - 1;
  const corner = (at: Vec3): number => {
    const old = known.get(at);
    if (old !== undefined) return old;
    known.set(at, places.length);
    return add(at);
  };
  for (const facet of solid.facets) for (const { from } of facet.outline) corner(from);
  const cornerCount = places.length;
  const pieces = solid.facets.map((facet) =>
    facet.outline.map(({ kind, from, to, length }): Piece => {
      const between = kind === "arc" ? pointsAlong(facet, from, length, edge).map(add) : [];
      return { isArc: kind === "arc", places: [corner(from), ...between, corner(to)] };
    }),
  );
  const names = namesOf(places, cornerCount);
  solid.facets.forEach(({ plane }, i) => {
    touched(pieces[i], plane, places, names);
  });
  const rings = pieces.map((own) => own.flatMap((piece) => piece.places.slice(0, -1)));
  const chords = pieces.flatMap((own) =>
    own.flatMap(({ isArc, places: along }) =>
      isArc ? along.slice(1).map((place, k): [number, number] => [place, along[k]]) : [],
    ),
  );
  return joined(places, rings, chords, names);
}

/** One line or arc of an outline, its ends included. */
interface Piece {
  readonly isArc: boolean;
  readonly places: number[];
}

/** Adds to a facet's arcs the places of others that stand on them: circles touch there, in one vertex of both. */
function touched(
  pieces: readonly Piece[],
  { n, h }: Plane,
  places: readonly Vec3[],
  names: Uint32Array,
): void {
  if (!pieces.some((piece) => piece.isArc)) return;
  const own = new Set(pieces.flatMap((piece) => piece.places.map((place) => names[place])));
  places.forEach((at, place) => {
    if (n[0] * at[0] + n[1] * at[1] + n[2] * at[2] <= h - EPSILON || own.has(names[place])) return;
    for (const { isArc, places: along } of pieces) {
      const next = isArc
        ? along.findIndex((b, i) => i > 0 && isBetween(places[along[i - 1]], at, places[b]))
        : -1;
      if (next > 0) {
        along.splice(next, 0, place);
        own.add(names[place]);
        return;
      }
    }
  });
}

/** Whether a place on an arc lies between two neighbours on it: by way of it is hardly longer than straight, and it is nearer to each. */
function isBetween(a: Vec3, at: Vec3, b: Vec3): boolean {
  const straight = distance(a, b);
  const [toA, toB] = [distance(a, at), distance(at, b)];
  return toA < straight && toB < straight && toA + toB < DETOUR * straight;
}
/** An arc of one chord of 24 is 1.003 times as long as that. */
const DETOUR = 1.01;

/** For each place the first that stands where it stands; the solid's own corners keep their names. */
function namesOf(places: readonly Vec3[], cornerCount: number): Uint32Array {
  const names = Uint32Array.from(places, (_, i) => i);
  // along a direction that no symmetry of a plan knows, hardly any two places fall together
  const along = places.map((p) => 0.5361 * p[0] + 0.3172 * p[1] + 0.7823 * p[2]);
  const order = Uint32Array.from(names).sort((a, b) => along[a] - along[b]);
  order.forEach((place, rank) => {
    for (let r = rank - 1; r >= 0 && along[place] - along[order[r]] <= TOUCHING; r--) {
      const [low, high] = [Math.min(place, order[r]), Math.max(place, order[r])];
      if (high >= cornerCount && distance(places[low], places[high]) <= TOUCHING)
        names[high] = Math.min(names[high], names[low]);
    }
  });
  return names;
}

function joined(
  places: readonly Vec3[],
  rings: readonly (readonly number[])[],
  chords: readonly (readonly [number, number])[],
  names: Uint32Array,
): Border {
  const key = (a: number, b: number): number => a * places.length + b;
  const named = chords.map(([a, b]): [number, number] => [names[a], names[b]]);
  const all = new Set(named.map(([a, b]) => key(a, b)));
  // a chord without length is none; where one runs back along another there is no skin between the two facets
  const left = named.filter(([a, b]) => a !== b && !all.has(key(b, a)));
  return {
    places,
    rings: rings.map((ring) => {
      const own = ring.map((place) => names[place]);
      return own.filter((place, i) => place !== own[(i + 1) % own.length]);
    }),
    chords: left,
    onSkin: [...new Set(left.flat())].sort((a, b) => a - b),
  };
}
