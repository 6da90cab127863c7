/**
 * What is in the glass, as the tracer meets it: analytic where a closed form exists, signed distance where not. Unit sphere.
 * A design's own frame: origin at its centre, z along its axis; tilt turns z away from the piece's +z, turn counts from the ink mark.
 */
import { dot, normalize, type Vec3 } from "../geometry/vec.ts";
import type { InsideDesign, Piece, Placement } from "../plan/document.ts";
import { realSizeMm } from "./apparent-size.ts";
import { hash, nextRandom, type Random, unitOf } from "./random.ts";
import { lookUp, type Raster, type Rasters } from "./raster.ts";
import type { Rgb } from "./spectrum.ts";

export const CORE = 0;
export const TINTED_CORE = 1;
export const BUBBLE = 2;
export const RIBBON = 3;
export const PETALS = 4;
export const BACKING = 5;
export const SPECKLE = 6;
export const PICTURE_DISC = 7;
export const PICTURE_CORE = 8;

/** What a picture shows on either side; null where its picture is missing: nothing is there. */
export interface Faces {
  readonly front: Raster | null;
  /** "through" = the front's picture as painted on a thin sheet. */
  readonly back: Raster | null | "through";
}

/** One design in unit-sphere lengths. What `size` and `extra` mean depends on `kind`, see `packDesign`. */
export interface SceneDesign {
  readonly kind: number;
  readonly centre: Vec3;
  /** Directions of the design's own x, y, z in the piece's axes. */
  readonly axisX: Vec3;
  readonly axisY: Vec3;
  readonly axisZ: Vec3;
  readonly size: Vec3;
  readonly extra: number;
  readonly rgb: Rgb;
  readonly rgb2: Rgb;
  /** Of a picture; null for all others, and for a picture whose pixels nobody asked for. */
  readonly faces: Faces | null;
}

/** Sheets are no thinner than this, so that marching can't step over them. */
const THINNEST = 0.004;
/** Petals are this thick as a share of their diameter (stated). */
const PETAL_THICKNESS = 0.02;

/** Axes of a design: turned about +z by the ink mark's azimuth and its own turn, after its z was tilted towards that azimuth. */
function axesOf(piece: Piece, place: Placement): Pick<SceneDesign, "axisX" | "axisY" | "axisZ"> {
  const turn = (((piece.inkMarkDeg ?? 0) + (place.turnDeg ?? 0)) * Math.PI) / 180;
  const tilt = ((place.tiltDeg ?? 0) * Math.PI) / 180;
  const [ct, st, cp, sp] = [Math.cos(tilt), Math.sin(tilt), Math.cos(turn), Math.sin(turn)];
  return { axisX: [ct * cp, ct * sp, -st], axisY: [-sp, cp, 0], axisZ: [st * cp, st * sp, ct] };
}

const WHITE: Rgb = [1, 1, 1];

/** What a picture shows; null when neither side has anything. */
function facesOf(design: InsideDesign & { readonly kind: "picture" }, rasters: Rasters): Faces | null {
  const front = rasters.get(design.picture) ?? null;
  const back = design.back === undefined ? "through" : (rasters.get(design.back) ?? null);
  return front || (back && back !== "through") ? { front, back } : null;
}

/** The designs of a piece that are there: a picture without pixels is not. */
export const packDesigns = (piece: Piece, nd: number, rasters: Rasters): SceneDesign[] =>
  (piece.inside ?? [])
    .map((design) => packDesign(piece, design, nd, rasters))
    .filter(({ kind, faces }) => faces !== null || (kind !== PICTURE_DISC && kind !== PICTURE_CORE));

/** A design as the tracer wants it; sizes typed as seen are converted by `nd` of the glass. */
export function packDesign(
  piece: Piece,
  design: InsideDesign,
  nd: number,
  rasters: Rasters = new Map(),
): SceneDesign {
  const toUnit = 2 / piece.diameterMm;
  const at = design.atMm ?? [0, 0, 0];
  const rgb = "rgb" in design ? design.rgb : WHITE;
  const base = {
    centre: [at[0] * toUnit, at[1] * toUnit, at[2] * toUnit] as Vec3,
    ...axesOf(piece, design),
    extra: 0,
    rgb,
    rgb2: ("rgb2" in design ? design.rgb2 : undefined) ?? rgb,
    faces: null,
  };
  switch (design.kind) {
    // size: half axes.
    case "core": {
      const across = realSizeMm(piece, design, nd);
      const along = design.lengthMm === undefined ? across : (across * design.lengthMm) / design.diameterMm;
      const [a, c] = [(across * toUnit) / 2, (along * toUnit) / 2];
      return { ...base, kind: design.opaque === false ? TINTED_CORE : CORE, size: [a, a, c] };
    }
    case "bubble": {
      const r = (realSizeMm(piece, design, nd) * toUnit) / 2;
      return { ...base, kind: BUBBLE, size: [r, r, r] };
    }
    // size: half width, half thickness, half length; extra: radians of twist per unit length.
    case "ribbon": {
      const half = (design.lengthMm * toUnit) / 2;
      const thick = Math.max(THINNEST, design.thicknessMm * toUnit) / 2;
      return {
        ...base,
        kind: RIBBON,
        size: [(design.widthMm * toUnit) / 2, thick, half],
        extra: (Math.PI * design.turns) / half,
      };
    }
    // size: radius, depth of the bowl, half thickness; extra: number of petals.
    case "petals": {
      const r = (design.diameterMm * toUnit) / 2;
      const thick = Math.max(THINNEST, PETAL_THICKNESS * 2 * r) / 2;
      return { ...base, kind: PETALS, size: [r, design.depthMm * toUnit, thick], extra: design.count };
    }
    // size[0]: distance of the layer's face from the centre, along axisZ away from the dop.
    case "backing": {
      const back = (piece.dop?.side ?? "back") === "back" ? 1 : -1;
      const { axisX, axisY, axisZ } = base;
      return {
        ...base,
        kind: BACKING,
        size: [1 - design.heightMm * toUnit, 0, 0],
        axisX,
        axisY,
        axisZ: [-back * axisZ[0], -back * axisZ[1], -back * axisZ[2]],
      };
    }
    // size: radius of a grain, of the ball that holds them, edge of the cubes with one grain each; extra: seed.
    case "speckle": {
      const ball = (design.diameterMm * toUnit) / 2;
      const cell = ball * Math.cbrt((4 / 3) * (Math.PI / design.count));
      const grain = Math.min((design.grainMm * toUnit) / 2, cell / 2);
      return { ...base, kind: SPECKLE, size: [grain, ball, cell], extra: design.seed ?? 1 };
    }
    // size: radius of disc or ball, thrice for a ball; extra: 1 where the back has a picture of its own.
    case "picture": {
      const r = (design.diameterMm * toUnit) / 2;
      const own = { extra: design.back === undefined ? 0 : 1, faces: facesOf(design, rasters) };
      return design.shape === "disc"
        ? { ...base, ...own, kind: PICTURE_DISC, size: [r, r, 0] }
        : { ...base, ...own, kind: PICTURE_CORE, size: [r, r, r] };
    }
  }
}

/** Where a ray meets a design: distance, outward normal, colour there, and which grain of a speckle. */
export interface DesignHit {
  readonly t: number;
  readonly n: Vec3;
  readonly rgb: Rgb;
  readonly grain: number;
}

const toLocal = (s: SceneDesign, p: Vec3): Vec3 => {
  const q: Vec3 = [p[0] - s.centre[0], p[1] - s.centre[1], p[2] - s.centre[2]];
  return [dot(q, s.axisX), dot(q, s.axisY), dot(q, s.axisZ)];
};
const turnToLocal = (s: SceneDesign, d: Vec3): Vec3 => [dot(d, s.axisX), dot(d, s.axisY), dot(d, s.axisZ)];
const turnToWorld = (s: SceneDesign, v: Vec3): Vec3 => [
  v[0] * s.axisX[0] + v[1] * s.axisY[0] + v[2] * s.axisZ[0],
  v[0] * s.axisX[1] + v[1] * s.axisY[1] + v[2] * s.axisZ[1],
  v[0] * s.axisX[2] + v[1] * s.axisY[2] + v[2] * s.axisZ[2],
];

/** Both distances at which a ray crosses a ball or ellipsoid with half axes `size` (local ray), or null. */
function crossEllipsoid(size: Vec3, o: Vec3, d: Vec3): readonly [number, number] | null {
  const p: Vec3 = [o[0] / size[0], o[1] / size[1], o[2] / size[2]];
  const v: Vec3 = [d[0] / size[0], d[1] / size[1], d[2] / size[2]];
  const a = dot(v, v);
  const b = dot(p, v);
  const disc = b * b - a * (dot(p, p) - 1);
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  return [(-b - root) / a, (-b + root) / a];
}

/** Length of the part of a ray, within 0 .. tMax, that runs through a tinted core. */
export function lengthWithin(s: SceneDesign, o: Vec3, d: Vec3, tMax: number): number {
  const t = crossEllipsoid(s.size, toLocal(s, o), turnToLocal(s, d));
  return t ? Math.max(0, Math.min(tMax, t[1]) - Math.max(0, t[0])) : 0;
}

/** True when p lies within a ball or ellipsoid design. */
export function isWithin(s: SceneDesign, p: Vec3): boolean {
  const q = toLocal(s, p);
  return (q[0] / s.size[0]) ** 2 + (q[1] / s.size[1]) ** 2 + (q[2] / s.size[2]) ** 2 < 1;
}

/** Distance from inside a bubble to its wall. */
export function bubbleExit(s: SceneDesign, o: Vec3, d: Vec3): number {
  const t = crossEllipsoid(s.size, toLocal(s, o), turnToLocal(s, d));
  return t ? Math.max(0, t[1]) : 0;
}

/** Outward normal of a ball design at p. */
export const bubbleNormal = (s: SceneDesign, p: Vec3): Vec3 =>
  normalize([p[0] - s.centre[0], p[1] - s.centre[1], p[2] - s.centre[2]]);

function hitEllipsoid(s: SceneDesign, o: Vec3, d: Vec3, tMax: number): DesignHit | null {
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const t = crossEllipsoid(s.size, p, v);
  if (!t || t[1] <= 0 || t[0] >= tMax) return null;
  // A facet that cuts into the design shows it right behind the glass.
  if (t[0] <= 0) return { t: 0, n: [-d[0], -d[1], -d[2]], rgb: s.rgb, grain: 0 };
  const local: Vec3 = [
    (p[0] + t[0] * v[0]) / s.size[0] ** 2,
    (p[1] + t[0] * v[1]) / s.size[1] ** 2,
    (p[2] + t[0] * v[2]) / s.size[2] ** 2,
  ];
  return { t: t[0], n: turnToWorld(s, normalize(local)), rgb: s.rgb, grain: 0 };
}

function hitBacking(s: SceneDesign, o: Vec3, d: Vec3, tMax: number): DesignHit | null {
  const n: Vec3 = [-s.axisZ[0], -s.axisZ[1], -s.axisZ[2]];
  const depth = dot(s.axisZ, o) - s.size[0];
  if (depth >= 0) return { t: 0, n: [-d[0], -d[1], -d[2]], rgb: s.rgb, grain: 0 };
  const towards = dot(s.axisZ, d);
  if (towards <= 0) return null;
  const t = -depth / towards;
  return t < tMax ? { t, n, rgb: s.rgb, grain: 0 } : null;
}

/** Number of the cube with whole coordinates x, y, z: the name of its grain. Cubes lie within -512 .. 511 of the centre. */
const cubeNumber = (x: number, y: number, z: number): number =>
  (((x & 1023) << 20) | ((y & 1023) << 10) | (z & 1023)) >>> 0;

/** Centre of a cube's grain, wholly within its cube, in the design's frame. */
function grainCentre(s: SceneDesign, x: number, y: number, z: number): Vec3 {
  const [r, , cell] = s.size;
  const h0 = hash((cubeNumber(x, y, z) + hash(s.extra)) >>> 0);
  const h1 = hash(h0);
  const h2 = hash(h1);
  const room = cell - 2 * r;
  return [
    x * cell + r + room * unitOf(h0),
    y * cell + r + room * unitOf(h1),
    z * cell + r + room * unitOf(h2),
  ];
}

/** Cubes a ray may cross before a speckle counts as missed; more than a ball of 5000 grains ever needs. */
const MOST_CUBES = 64;

/**
 * Meets the grains of a speckle: space is cut into cubes with one grain each, somewhere in its cube; those with their centre in
 * the ball are there. Walks from cube to cube (J. Amanatides and A. Woo, A Fast Voxel Traversal Algorithm, Eurographics 1987).
 */
function hitGrains(s: SceneDesign, o: Vec3, d: Vec3, tMax: number, skip: number): DesignHit | null {
  const [r, ball, cell] = s.size;
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const around = crossEllipsoid([ball + r, ball + r, ball + r], p, v);
  if (!around || around[1] <= 0) return null;
  const start = Math.max(0, around[0]);
  const end = Math.min(tMax, around[1]);
  const cube = [0, 1, 2].map((k) => Math.floor((p[k] + start * v[k]) / cell));
  // Distance along the ray at which it next leaves its cube along each axis, and between such walls.
  const wall = [0, 1, 2].map((k) =>
    v[k] === 0 ? Number.POSITIVE_INFINITY : ((cube[k] + (v[k] > 0 ? 1 : 0)) * cell - p[k]) / v[k],
  );
  for (let step = 0; step < MOST_CUBES; step++) {
    const grain = cubeNumber(cube[0], cube[1], cube[2]);
    const g = grainCentre(s, cube[0], cube[1], cube[2]);
    if (grain !== skip && dot(g, g) < ball * ball) {
      const hit = hitGrain(s, g, p, v, end);
      if (hit) return { ...hit, grain };
    }
    const k = wall[0] < wall[1] ? (wall[0] < wall[2] ? 0 : 2) : wall[1] < wall[2] ? 1 : 2;
    if (wall[k] >= end) return null;
    cube[k] += v[k] > 0 ? 1 : -1;
    wall[k] += cell / Math.abs(v[k]);
  }
  return null;
}

/** One grain (local centre g) against a local ray. */
function hitGrain(s: SceneDesign, g: Vec3, p: Vec3, v: Vec3, end: number): DesignHit | null {
  const r = s.size[0];
  const q: Vec3 = [p[0] - g[0], p[1] - g[1], p[2] - g[2]];
  const b = dot(q, v);
  const disc = b * b - (dot(q, q) - r * r);
  if (disc <= 0) return null;
  const root = Math.sqrt(disc);
  const t = Math.max(0, -b - root);
  if (-b + root <= 0 || t >= end) return null;
  const n = turnToWorld(s, normalize([q[0] + t * v[0], q[1] + t * v[1], q[2] + t * v[2]]));
  return { t, n, rgb: s.rgb, grain: 0 };
}

/** Distance to a twisted ribbon: untwist, then a box; shrunk so that it never overshoots. */
function ribbonDistance(s: SceneDesign, p: Vec3): number {
  const angle = s.extra * p[2];
  const [c, n] = [Math.cos(angle), Math.sin(angle)];
  const x = Math.abs(c * p[0] + n * p[1]) - s.size[0];
  const y = Math.abs(-n * p[0] + c * p[1]) - s.size[1];
  const z = Math.abs(p[2]) - s.size[2];
  const [ox, oy, oz] = [Math.max(x, 0), Math.max(y, 0), Math.max(z, 0)];
  const box = Math.sqrt(ox * ox + oy * oy + oz * oz) + Math.min(0, Math.max(x, y, z));
  const reach = Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]));
  return box / Math.sqrt(1 + (s.extra * reach) ** 2);
}

/** How far the clefts between petals reach in, and how steep their sides may get (per petal): shape constants of ours. */
const CLEFT = 0.4;
const CLEFT_SLOPE = 0.35;

/** Distance to a bowl of petals, open towards +z: a paraboloid sheet within a rosette outline; shrunk so that it never overshoots. */
function petalsDistance(s: SceneDesign, p: Vec3): number {
  const [radius, depth, thick] = s.size;
  const r = Math.sqrt(p[0] * p[0] + p[1] * p[1]);
  const lobe = Math.abs(Math.cos(0.5 * s.extra * Math.atan2(p[1], p[0])));
  const edge = radius * (1 - CLEFT * (1 - lobe));
  const level = depth * ((r / radius) * (r / radius) - 0.5);
  const slope = (2 * depth * Math.min(r, radius)) / (radius * radius);
  const sheet = (Math.abs(p[2] - level) - thick) / Math.sqrt(1 + slope * slope);
  const outline = (r - edge) / Math.sqrt(1 + (CLEFT_SLOPE * s.extra) ** 2);
  return Math.max(sheet, outline);
}

const sheetDistance = (s: SceneDesign, p: Vec3): number =>
  s.kind === RIBBON ? ribbonDistance(s, p) : petalsDistance(s, p);

/** A march ends this close to a sheet, and gives up after so many steps. */
const NEAR = 2e-4;
const MOST_STEPS = 160;
/** Share of the distance that one step takes; the petals' bound is only nearly one. */
const CAUTION = 0.8;

function sheetNormal(s: SceneDesign, p: Vec3): Vec3 {
  const e = NEAR;
  return normalize([
    sheetDistance(s, [p[0] + e, p[1], p[2]]) - sheetDistance(s, [p[0] - e, p[1], p[2]]),
    sheetDistance(s, [p[0], p[1] + e, p[2]]) - sheetDistance(s, [p[0], p[1] - e, p[2]]),
    sheetDistance(s, [p[0], p[1], p[2] + e]) - sheetDistance(s, [p[0], p[1], p[2] - e]),
  ]);
}

/** A ribbon shows its second colour on its far side, petals fade to theirs towards the tips. */
function sheetColour(s: SceneDesign, p: Vec3): Rgb {
  if (s.kind === RIBBON) {
    const angle = s.extra * p[2];
    return -Math.sin(angle) * p[0] + Math.cos(angle) * p[1] >= 0 ? s.rgb : s.rgb2;
  }
  const t = Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]) / s.size[0]);
  return [0, 1, 2].map((c) => s.rgb[c] + (s.rgb2[c] - s.rgb[c]) * t) as unknown as Rgb;
}

/** Radius of a ball about the centre that holds the whole sheet. */
const sheetReach = (s: SceneDesign): number =>
  s.kind === RIBBON
    ? Math.sqrt(s.size[0] ** 2 + s.size[1] ** 2 + s.size[2] ** 2)
    : Math.sqrt(s.size[0] ** 2 + (0.5 * s.size[1] + s.size[2]) ** 2);

/** Marches to a ribbon or to petals. A ray that starts on the sheet first has to get clear of it. */
function hitSheet(s: SceneDesign, o: Vec3, d: Vec3, tMax: number, leaving: boolean): DesignHit | null {
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const reach = sheetReach(s) + NEAR;
  const around = crossEllipsoid([reach, reach, reach], p, v);
  if (!around || around[1] <= 0) return null;
  const end = Math.min(tMax, around[1]);
  let t = Math.max(0, around[0]);
  let clear = !leaving;
  for (let step = 0; step < MOST_STEPS && t < end; step++) {
    const q: Vec3 = [p[0] + t * v[0], p[1] + t * v[1], p[2] + t * v[2]];
    const distance = sheetDistance(s, q);
    if (clear && distance < NEAR)
      return { t, n: turnToWorld(s, sheetNormal(s, q)), rgb: sheetColour(s, q), grain: 0 };
    clear ||= distance > 2 * NEAR;
    t += Math.max(NEAR, CAUTION * distance);
  }
  return null;
}

/** Without chances a place of a picture is met when more than this of it is there. */
const MIDDLE = 0.5;

/**
 * A picture's colour at x, y of its own frame, or null when chance lets the ray pass (alpha is the chance to be met) or
 * nothing is there.
 */
function pictureAt(s: SceneDesign, x: number, y: number, onBack: boolean, random: Random | null): Rgb | null {
  if (!s.faces) return null;
  const own = onBack && s.faces.back !== "through";
  const raster = own ? (s.faces.back as Raster | null) : s.faces.front;
  if (!raster) return null;
  const across = (own ? -x : x) / s.size[0];
  const { rgb, alpha } = lookUp(
    raster,
    (0.5 + 0.5 * across) * raster.width,
    (0.5 - (0.5 * y) / s.size[0]) * raster.height,
  );
  if (alpha <= 0) return null;
  return alpha >= 1 || (random ? nextRandom(random) : MIDDLE) < alpha ? rgb : null;
}

/** A round sheet across its axis: seen from +z it shows its front. */
function hitPictureDisc(
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  random: Random | null,
): DesignHit | null {
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const t = -p[2] / v[2];
  if (!(t >= 0 && t < tMax)) return null;
  const x = p[0] + t * v[0];
  const y = p[1] + t * v[1];
  if (x * x + y * y > s.size[0] * s.size[0]) return null;
  const onBack = v[2] > 0;
  const rgb = pictureAt(s, x, y, onBack, random);
  return rgb && { t, n: turnToWorld(s, [0, 0, onBack ? -1 : 1]), rgb, grain: 0 };
}

/**
 * A ball painted along its axis, z > 0 with the front's picture. Where nothing is painted one looks in, onto the far side's
 * back. From its own wall only the far side is ahead; a facet that cuts into it shows it right behind the glass.
 */
function hitPictureCore(
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  leaving: boolean,
  random: Random | null,
): DesignHit | null {
  const p = toLocal(s, o);
  const v = turnToLocal(s, d);
  const t = crossEllipsoid(s.size, p, v);
  if (!t || t[1] <= 0) return null;
  const crossings = leaving ? (t[0] + t[1] > LEAST_CHORD ? [t[0] + t[1]] : []) : [Math.max(0, t[0]), t[1]];
  for (const at of crossings) {
    if (at >= tMax) return null;
    const q: Vec3 = [p[0] + at * v[0], p[1] + at * v[1], p[2] + at * v[2]];
    const rgb = pictureAt(s, q[0], q[1], q[2] < 0, random);
    if (!rgb) continue;
    const isCut = at === 0;
    return { t: at, n: isCut ? [-d[0], -d[1], -d[2]] : turnToWorld(s, normalize(q)), rgb, grain: 0 };
  }
  return null;
}
/** From a ball's wall into it, shorter ways are the start itself. */
const LEAST_CHORD = 1e-9;

/**
 * Where a ray first meets a design within 0 <= t < tMax; null when it misses. Tinted cores have no surface.
 * @param from the grain it just left (0 for anything but speckles), or -1 when it comes from elsewhere
 * @param random decides whether a half-transparent place of a picture is met; null = it is when more than half of it is there
 */
export function hitDesign(
  s: SceneDesign,
  o: Vec3,
  d: Vec3,
  tMax: number,
  from: number,
  random: Random | null = null,
): DesignHit | null {
  switch (s.kind) {
    case CORE:
    case BUBBLE:
      return from >= 0 ? null : hitEllipsoid(s, o, d, tMax);
    case BACKING:
      return from >= 0 ? null : hitBacking(s, o, d, tMax);
    case SPECKLE:
      return hitGrains(s, o, d, tMax, from);
    case RIBBON:
    case PETALS:
      return hitSheet(s, o, d, tMax, from >= 0);
    case PICTURE_DISC:
      return from >= 0 ? null : hitPictureDisc(s, o, d, tMax, random);
    case PICTURE_CORE:
      return hitPictureCore(s, o, d, tMax, from >= 0, random);
    default:
      return null;
  }
}
