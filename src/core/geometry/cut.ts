/**
 * The unit ball cut by one plane after another: which facets are left, and how their outlines hang together.
 *
 * All facets share one table of **places** (ends of edges). For each plane every place is decided once: in, on or out.
 * Each circle that may be crossed is asked once how (`crossing.ts`). Outlines are then followed by these decisions alone,
 * so no facet can see a meeting otherwise than its neighbour, and an edge is one pair of places in two outlines by
 * construction. (Topology first, numbers second: Sugihara and Iri 1992.) A plane through corners that are already there
 * makes no new ones; a plane that only touches takes nothing.
 *
 * What doubles decide in contradiction is found and thrown as `InexactCut`, never drawn.
 */
import { type CircleCrossing, crossingOf } from "./crossing.ts";
import { type CutRing, cutRing, type Piece, type Ring } from "./cut-ring.ts";
import { InexactCut } from "./inexact-cut.ts";
import type { Plane } from "./plane.ts";
import { SKIN } from "./solid-types.ts";
import { ON_PLANE, SAME_PLACE, TANGENT } from "./tolerance.ts";
import { sweep } from "./turn.ts";
import { addScaled, cross, dot, type Vec3 } from "./vec.ts";

/** What is left of one plane: nothing, its whole circle, or a ring of edges and arcs. */
export type Face = null | "whole" | Ring;

export interface BallCut {
  readonly planes: Plane[];
  /** One for each plane, in order. */
  readonly faces: Face[];
  /** The earlier plane that each one coincides with, or -1. */
  readonly duplicateOf: number[];
  /** Radius of each plane's uncut circle. */
  readonly radii: number[];
  /** Ends of edges; some are no longer used. Facets that share an end share its index. */
  readonly places: Vec3[];
  /** How far from a plane a place may lie and still be on it. */
  readonly onPlane: number;
  /** True when the planes leave nothing. */
  vanished: boolean;
}

/** The uncut ball. @param onPlane wider than usual for planes that the usual one can't tell apart */
export const uncutBall = (onPlane = ON_PLANE): BallCut => ({
  planes: [],
  faces: [],
  duplicateOf: [],
  radii: [],
  places: [],
  onPlane,
  vanished: false,
});

/** A cut that can go on by itself; rings and places are shared and never change. */
export const copyOf = (cut: BallCut): BallCut => ({
  ...cut,
  planes: [...cut.planes],
  faces: [...cut.faces],
  duplicateOf: [...cut.duplicateOf],
  radii: [...cut.radii],
  places: [...cut.places],
});

const UNKNOWN = 2;

/** One cut while it is made. */
class Cutter {
  private readonly cut: BallCut;
  private readonly plane: Plane;
  private readonly radius: number;
  /** Facets that the plane may come to; all others stay as they are. */
  private readonly near: readonly number[];
  /** True when some facet keeps a part. */
  private leaves = false;
  private readonly k: number;
  private readonly sides: Int8Array;
  private readonly before: number;
  /** Places that lie on the plane, those of this cut too. */
  private onPlane: number[] | null = null;
  /** Place where the plane crosses an edge, by the edge's two facets. */
  private readonly edgePlaces = new Map<number, number>();

  constructor(cut: BallCut, plane: Plane, radius: number) {
    this.cut = cut;
    this.plane = plane;
    this.radius = radius;
    this.k = cut.planes.length;
    this.before = cut.places.length;
    this.sides = new Int8Array(this.before).fill(UNKNOWN);
    this.near = this.facesNear();
  }

  /** Facets that are left and whose disc may come to the plane: the two caps are not clearly apart. */
  private facesNear(): number[] {
    const { planes, faces, radii } = this.cut;
    const { n, h } = this.plane;
    const near: number[] = [];
    for (let j = 0; j < faces.length; j++) {
      if (faces[j] === null) continue;
      const other = planes[j];
      const cosine = n[0] * other.n[0] + n[1] * other.n[1] + n[2] * other.n[2];
      // cos(rho_j + rho_k), which tells caps apart only where they do not reach round the ball
      const together = h * other.h - this.radius * radii[j];
      if (h <= 0 || other.h <= 0 || cosine > together - CLEARLY_APART) near.push(j);
      else this.leaves = true;
    }
    return near;
  }

  private readonly at = (place: number): Vec3 => this.cut.places[place];

  private readonly side = (place: number): number => {
    // what this cut has made lies on its plane
    if (place >= this.before) return 0;
    const known = this.sides[place];
    if (known !== UNKNOWN) return known;
    const d = this.distanceOf(place);
    const side = d > this.cut.onPlane ? 1 : d < -this.cut.onPlane ? -1 : 0;
    this.sides[place] = side;
    return side;
  };

  private distanceOf(place: number): number {
    const p = this.cut.places[place];
    const { n, h } = this.plane;
    return n[0] * p[0] + n[1] * p[1] + n[2] * p[2] - h;
  }

  /** A place on the plane: one that is already there, of whatever facets, or a new one. */
  private placeAt(at: Vec3): number {
    this.onPlane ??= this.placesOn();
    for (const place of this.onPlane) if (gap2(this.at(place), at) <= SAME_PLACE ** 2) return place;
    const made = this.cut.places.push(at) - 1;
    this.onPlane.push(made);
    return made;
  }

  private placesOn(): number[] {
    const found = new Set<number>();
    for (const j of this.near) {
      const face = this.cut.faces[j];
      if (face === null || face === "whole") continue;
      for (const place of face.places) if (this.side(place) === 0) found.add(place);
    }
    return [...found];
  }

  private edgePlace(facet: number, label: number, from: number, to: number): number {
    const key = Math.min(facet, label) * this.cut.planes.length + Math.max(facet, label);
    const known = this.edgePlaces.get(key);
    if (known !== undefined) return known;
    const [d0, d1] = [this.distanceOf(from), this.distanceOf(to)];
    const [p, q] = [this.at(from), this.at(to)];
    const t = d0 / (d0 - d1);
    const made = this.placeAt(addScaled(p, [q[0] - p[0], q[1] - p[1], q[2] - p[2]], t));
    this.edgePlaces.set(key, made);
    return made;
  }

  /** Where the plane crosses a facet's circle: a place of the ring that lies on the plane there, else a new one. */
  private circlePlaces(ring: Ring, crossing: CircleCrossing): (which: "exit" | "entry") => number {
    const made = { exit: -1, entry: -1 };
    const snapped = (which: "exit" | "entry"): number => {
      const [own, other] =
        which === "exit" ? [crossing.exit, crossing.entry] : [crossing.entry, crossing.exit];
      let nearest = -1;
      let least = Number.POSITIVE_INFINITY;
      ring.places.forEach((place, i) => {
        const isArcEnd =
          ring.labels[i] === SKIN || ring.labels[i === 0 ? ring.labels.length - 1 : i - 1] === SKIN;
        if (!isArcEnd || this.side(place) !== 0) return;
        const p = this.at(place);
        const [d, e] = [gap2(p, own), gap2(p, other)];
        if (d <= e && d < least) [nearest, least] = [place, d];
      });
      return nearest >= 0 ? nearest : this.placeAt(own);
    };
    return (which) => {
      if (made[which] < 0) made[which] = snapped(which);
      return made[which];
    };
  }

  /** Cuts one facet. Null when it stays as it is. */
  private cutFace(j: number, face: Ring | "whole", crossing: CircleCrossing | "in" | "out"): CutRing | null {
    if (face === "whole") {
      if (crossing === "in") return null;
      if (crossing === "out") return { kept: [], hasIn: false, hasOut: true };
      const [exit, entry] = [this.placeAt(crossing.exit), this.placeAt(crossing.entry)];
      return { kept: [{ from: entry, to: exit, label: SKIN }], hasIn: true, hasOut: true };
    }
    return cutRing(face, crossing, {
      side: this.side,
      at: this.at,
      onEdge: (label, from, to) => this.edgePlace(j, label, from, to),
      onCircle: typeof crossing === "string" ? () => -1 : this.circlePlaces(face, crossing),
    });
  }

  /** A disc that lies wholly on one side has no end on the other: what rounding says against it is taken as on. */
  private settle(ring: Ring, side: "in" | "out"): void {
    const against = side === "in" ? 1 : -1;
    for (const place of ring.places) if (this.side(place) === against) this.sides[place] = 0;
  }

  /** How a facet's circle is crossed, where it has skin beside it; one with edges only is told by its places. */
  private crossingOf(j: number, face: Ring | "whole"): CircleCrossing | "in" | "out" {
    if (face !== "whole" && !face.labels.includes(SKIN)) return "in";
    const crossing = crossingOf(this.cut.planes[j], this.plane);
    // a twin has been looked for before
    if (crossing === "same") throw new InexactCut("one-line");
    if (face !== "whole" && typeof crossing === "string") this.settle(face, crossing);
    return crossing;
  }

  /** Edges on the plane itself whose other facet is gone now border the new facet. */
  private relabel(pieces: readonly Piece[], gone: ReadonlySet<number>): Piece[] {
    return pieces.map((piece) =>
      gone.has(piece.label) && this.side(piece.from) === 0 && this.side(piece.to) === 0
        ? { ...piece, label: this.k }
        : piece,
    );
  }

  /** The line along which the plane cuts a facet, closing the ring of what is kept. */
  private closed(kept: readonly Piece[]): { ring: Ring; chord: Piece | null } {
    const places: number[] = [];
    const labels: number[] = [];
    let chord: Piece | null = null;
    const setChord = (from: number, to: number) => {
      if (chord !== null) throw new InexactCut("one-line");
      chord = { from, to, label: this.k };
    };
    kept.forEach((piece, i) => {
      places.push(piece.from);
      labels.push(piece.label);
      if (piece.label === this.k) setChord(piece.from, piece.to);
      const next = kept[i + 1 === kept.length ? 0 : i + 1];
      if (piece.to === next.from) return;
      places.push(piece.to);
      labels.push(this.k);
      setChord(piece.to, next.from);
    });
    return { ring: { places, labels }, chord };
  }

  /** True when the plane's own circle, which no outline meets, is on the skin. */
  private isFree(): boolean {
    const { radius } = this;
    const { n, h } = this.plane;
    const u = Math.abs(n[2]) < 0.9 ? cross(n, [0, 0, 1]) : cross(n, [1, 0, 0]);
    const size = Math.sqrt(dot(u, u));
    const a: Vec3 = [u[0] / size, u[1] / size, u[2] / size];
    const b = cross(n, a);
    let best = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < FREE_PROBES; i++) {
      const t = (2 * Math.PI * (i + 0.37)) / FREE_PROBES;
      const p = addScaled(
        addScaled([n[0] * h, n[1] * h, n[2] * h], a, radius * Math.cos(t)),
        b,
        radius * Math.sin(t),
      );
      let slack = Number.POSITIVE_INFINITY;
      this.cut.planes.forEach((plane, j) => {
        if (this.cut.faces[j] !== null) slack = Math.min(slack, plane.h - dot(plane.n, p));
      });
      best = Math.max(best, slack);
    }
    // a circle that lies on another's everywhere is the far side of the same plane: nothing is between them
    return best > SAME_PLACE;
  }

  /** The new facet's ring: the lines of all facets it cuts, joined by arcs of its own circle where they end on the skin. */
  private ringOf(chords: readonly Piece[]): Ring {
    const { n } = this.plane;
    const origin = this.at(chords[0].from);
    const u = addScaled(origin, n, -dot(origin, n));
    const v = cross(n, u);
    const angleOf = (place: number) => Math.atan2(dot(this.at(place), v), dot(this.at(place), u));
    const startingAt = new Map<number, Piece>();
    for (const chord of chords) {
      if (startingAt.has(chord.from)) throw new InexactCut("one-ring");
      startingAt.set(chord.from, chord);
    }
    const endings = new Set(chords.map((chord) => chord.to));
    // only where no other line ends can an arc come in
    const open = chords
      .filter((chord) => !endings.has(chord.from))
      .map((chord) => ({ chord, angle: angleOf(chord.from) }));
    const places: number[] = [];
    const labels: number[] = [];
    let chord = chords[0];
    for (let step = 0; step < chords.length; step++) {
      places.push(chord.from);
      labels.push(chord.label);
      let next = startingAt.get(chord.to);
      if (!next) {
        const start = angleOf(chord.to);
        let least = Number.POSITIVE_INFINITY;
        for (const o of open) {
          const turn = sweep(start, o.angle);
          if (turn < least) [least, next] = [turn, o.chord];
        }
        places.push(chord.to);
        labels.push(SKIN);
      }
      if (!next) throw new InexactCut("one-ring");
      if (next === chords[0] && step < chords.length - 1) throw new InexactCut("one-ring");
      chord = next;
    }
    if (chord !== chords[0]) throw new InexactCut("one-ring");
    return { places, labels };
  }

  /** What the cut does to each facet near it that it touches. All places are settled before the first is cut. */
  private results(): Map<number, CutRing> {
    const { faces } = this.cut;
    const crossings = this.near.map((j) => {
      const face = faces[j];
      return face === null ? "in" : this.crossingOf(j, face);
    });
    const found = new Map<number, CutRing>();
    this.near.forEach((j, i) => {
      const face = faces[j];
      const result = face === null ? null : this.cutFace(j, face, crossings[i]);
      if (result) found.set(j, result);
      this.leaves ||= result?.hasIn ?? true;
    });
    return found;
  }

  /** Changes the outlines; gives the lines that the plane draws on them, as its own facet sees them. */
  private cutFaces(results: ReadonlyMap<number, CutRing>): Piece[] {
    const { faces } = this.cut;
    const gone = new Set<number>();
    for (const [j, result] of results) if (result.hasOut && !result.hasIn) gone.add(j);
    const chords: Piece[] = [];
    for (const [j, result] of results) {
      const face = faces[j];
      if (gone.has(j) || face === null) continue;
      const isBeside = face !== "whole" && face.labels.some((label) => gone.has(label));
      if (!result.hasOut && !isBeside) continue;
      const { ring, chord } = this.closed(this.relabel(result.kept, gone));
      if (chord) chords.push({ from: chord.to, to: chord.from, label: j });
      faces[j] = ring;
    }
    for (const j of gone) faces[j] = null;
    return chords;
  }

  run(): void {
    const { cut } = this;
    const results = this.results();
    let [takes, crosses] = [false, false];
    for (const { hasIn, hasOut } of results.values()) {
      takes ||= hasOut;
      crosses ||= hasIn && hasOut;
    }
    const isFree = !crosses && this.isFree();
    const isVanished = takes && !this.leaves && !isFree;
    const chords = isVanished ? [] : this.cutFaces(results);
    let own: Face = null;
    if (isVanished) cut.faces.fill(null);
    else if (chords.length > 0) own = this.ringOf(chords);
    else if (isFree) own = "whole";
    // else a tip no larger than one place went, and the plane has no facet; the check of the whole sees to the rest
    cut.vanished = isVanished;
    addPlane(cut, this.plane, own, this.radius);
  }
}

/** Caps whose cosine is apart by this much share nothing, not even by rounding. */
const CLEARLY_APART = 1e-8;
/** Points of a plane's circle at which it is asked whether it is on the skin: the clearest answer counts. */
const FREE_PROBES = 8;

const gap2 = (a: Vec3, b: Vec3): number => (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 + (a[2] - b[2]) ** 2;

function addPlane(cut: BallCut, plane: Plane, face: Face, radius: number, duplicateOf = -1): void {
  cut.planes.push(plane);
  cut.faces.push(face);
  cut.radii.push(radius);
  cut.duplicateOf.push(duplicateOf);
}

/** Position of the first plane that `plane` coincides with, or -1. */
function twinOf(cut: BallCut, plane: Plane): number {
  return cut.planes.findIndex(
    (other) =>
      Math.abs(other.h - plane.h) < 1e-9 &&
      dot(other.n, plane.n) > 1 - 1e-14 &&
      crossingOf(other, plane) === "same",
  );
}

/**
 * Cuts on, by one more plane. Changes `cut`.
 * Degenerate: a plane that misses the ball, only touches it, or coincides with an earlier one has no facet; one at
 * h <= -1 leaves nothing.
 * @throws InexactCut when doubles decide in contradiction; `cut` is then of no more use
 */
export function cutOn(cut: BallCut, plane: Plane): void {
  const twin = twinOf(cut, plane);
  const radius2 = (1 - plane.h) * (1 + plane.h);
  if (plane.h < 0 && radius2 <= TANGENT) {
    cut.faces.fill(null);
    cut.vanished = true;
  }
  const radius = Math.sqrt(Math.max(0, radius2));
  if (cut.vanished || twin >= 0 || radius2 <= TANGENT) addPlane(cut, plane, null, radius, twin);
  else new Cutter(cut, plane, radius).run();
}
