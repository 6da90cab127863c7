/**
 * Coloured glass melted into clear glass of the same index: no surface to meet, but a density 0 .. 1 that falls off at the edge.
 * Light is absorbed on its way through, as in any coloured glass, and a little of it is scattered. Here stand the shapes: how dense
 * a place is, which of two colours it has, and how far one may go before that changes. Twin: shaders/media.glsl.
 */
import type { Vec3 } from "../geometry/vec.ts";
import {
  type DesignHit,
  type Hit,
  longer,
  MELTED_PETALS,
  MELTED_RIBBON,
  PUSH,
  pushOf,
  type SceneDesign,
  SWIRL,
  TWIST,
  toLocal,
  turnToLocal,
} from "./scene-design.ts";

type MediumNumber = typeof TWIST | typeof MELTED_RIBBON | typeof MELTED_PETALS | typeof SWIRL;

/** A place of a medium, in its own frame. */
interface MediumPoint {
  /** Within the shape's own bounds of slope no more than the distance to where the density begins or ends; negative within. */
  readonly distance: number;
  readonly density: number;
  /** 0 the first colour, 1 the second. */
  readonly mix: number;
}
type Shape = (s: SceneDesign, p: Vec3) => MediumPoint;

const clamp = (x: number, low: number, high: number): number => Math.max(low, Math.min(high, x));
/** Hermite between 0 and 1, flat beyond. */
function eased(x: number): number {
  const t = clamp(x, 0, 1);
  return t * t * (3 - 2 * t);
}
/** Density at a signed distance, falling off over `over` within the edge; thin parts keep a dense middle. */
const melted = (distance: number, over: number, half: number): number =>
  eased(-distance / Math.min(over, 0.9 * half));

/** Waves of irregularity along the longer half of a shape; how far they push it, as a share of that; the slope they add. */
const WAVES = 4;
const SLOPE = 1.5 * WAVES * PUSH;

/** A place before the hand shook: the shape is exact there. */
function unshaken(s: SceneDesign, p: Vec3): Vec3 {
  const [, irregular, , , , , a, b, c] = s.more;
  if (irregular === 0) return p;
  const k = WAVES / longer(s);
  const push = irregular * PUSH * longer(s);
  return [
    p[0] + push * (Math.sin(k * p[1] + a) + 0.5 * Math.sin(1.9 * k * p[2] + b)),
    p[1] + push * (Math.sin(k * p[2] + b) + 0.5 * Math.sin(1.9 * k * p[0] + c)),
    p[2] + push * (Math.sin(k * p[0] + c) + 0.5 * Math.sin(1.9 * k * p[1] + a)),
  ];
}

/** Distance between two places at distances a and b from the axis, by the angle between them. */
const chord = (a: number, b: number, angle: number): number =>
  Math.sqrt((a - b) ** 2 + 4 * a * b * Math.sin(angle / 2) ** 2);

/** Strands wound about an axis, and fine threads over them: turned back by the twist, each is a disc of the ring. */
const twist: Shape = (s, at) => {
  const [over, irregular, rate, strands, taper, veil, , b, c] = s.more;
  const p = unshaken(s, at);
  const [radius, half, thick] = s.size;
  const along = clamp(p[2] / half, -1, 1);
  const turn = rate * p[2] + 0.5 * irregular * Math.sin(2.5 * along + c);
  const narrow = 1 - 0.5 * taper * (1 - along);
  const r = Math.sqrt(p[0] * p[0] + p[1] * p[1]);
  const angle = Math.atan2(p[1], p[0]) - turn;
  const sector = (2 * Math.PI) / strands;
  const nearest = Math.round(angle / sector);
  const own = 0.5 * thick * narrow * (1 + 0.35 * irregular * Math.sin(sector * nearest + 2 * along + b));
  const from = angle - nearest * sector;
  const ring = (radius - 0.5 * thick) * narrow;
  const strand = chord(r, ring, from) - own;
  const end = Math.abs(p[2]) - half;
  let distance = strand;
  let density = melted(strand, over, own);
  let mix = 0;
  if (veil > 0) {
    const step = (2 * Math.PI) / veil;
    const off = angle / step - 0.5;
    const fine = VEIL * thick * narrow;
    const outer = radius * narrow;
    const away = (off - Math.round(off)) * step;
    const thread = chord(r, outer, away) - fine;
    const dense = melted(thread, over, fine);
    distance = Math.min(distance, thread);
    if (dense > density) {
      density = dense;
      mix = 1;
    }
  }
  const reach = Math.min(r, radius);
  const slope = Math.sqrt(1 + (rate * reach) ** 2) + (taper * radius) / half + irregular * SLOPE;
  return {
    distance: Math.max(distance / slope, end),
    density: density * melted(end, 3 * over, half),
    mix,
  };
};
/** Half the thickness of a veil's thread, in strands. */
const VEIL = 0.2;

/** A band twisted about its axis, in cross-section an ellipse: thin at its edges. One colour on each side. */
const ribbon: Shape = (s, at) => {
  const [over, irregular, rate, , , , a, b, c] = s.more;
  const p = unshaken(s, at);
  const [width, half, thick] = s.size;
  const along = clamp(p[2] / half, -1, 1);
  const turn = rate * p[2] + 0.4 * irregular * Math.sin(2.5 * along + c);
  const [co, si] = [Math.cos(turn), Math.sin(turn)];
  const x = co * p[0] + si * p[1];
  const y = -si * p[0] + co * p[1];
  const wide = width * (1 + 0.2 * irregular * Math.sin(3 * along + a));
  const high = 0.5 * thick * (1 + 0.4 * irregular * Math.sin(4 * along + b));
  const near = Math.sqrt((x / wide) ** 2 + (y / high) ** 2);
  const grow = Math.sqrt((x / (wide * wide)) ** 2 + (y / (high * high)) ** 2);
  // a bound of an ellipse's distance by its own growth
  const across = near < 1e-6 ? -high : (near * (near - 1)) / grow;
  const end = Math.abs(p[2]) - half;
  const slope =
    Math.sqrt(1 + (rate * Math.min(1, Math.sqrt(p[0] * p[0] + p[1] * p[1]))) ** 2) + irregular * SLOPE;
  return {
    distance: Math.max(across / slope, end),
    density: melted(across, over, high) * melted(end, 3 * over, half),
    mix: eased(0.5 - (2 * y) / high),
  };
};

/** How far the clefts between melted petals reach in, and how steep their sides may get (per petal). */
const CLEFT = 0.5;
const CLEFT_SLOPE = 0.45;

/** A bowl of petals, thinner towards the rim, each with a vein along its middle. */
const petals: Shape = (s, at) => {
  const [over, irregular, number, vein, depth, , a, b] = s.more;
  const p = unshaken(s, at);
  const [radius, , thick] = s.size;
  const r = Math.sqrt(p[0] * p[0] + p[1] * p[1]);
  const angle = Math.atan2(p[1], p[0]);
  const sector = (2 * Math.PI) / number;
  const nearest = Math.round(angle / sector);
  const from = angle - nearest * sector;
  const lobe = Math.abs(Math.cos((Math.PI * from) / sector));
  // the ring closes: the first and the last petal of a half turn are one
  const own = Math.cos((2 * Math.PI * nearest) / number + a) + Math.sin((4 * Math.PI * nearest) / number + b);
  const edge = radius * (1 - 0.1 * irregular * (1 + 0.5 * own)) * (1 - CLEFT * (1 - lobe));
  const share = Math.min(1, r / edge);
  const high = 0.5 * thick * (1 - 0.65 * share * share);
  const level = depth * ((r / radius) ** 2 - 0.5);
  const steep = (2 * depth * Math.min(r, radius)) / (radius * radius);
  const sheet = (Math.abs(p[2] - level) - high) / Math.sqrt(1 + steep * steep);
  const outline = r - edge;
  const line = vein * VEIN * radius * (1 - 0.8 * share);
  const onVein = vein > 0 ? 1 - eased((Math.abs(from) * r) / Math.max(line, 1e-6) - 0.5) : 0;
  const slope = Math.sqrt(1 + (CLEFT_SLOPE * number) ** 2);
  const shaken = 1 + irregular * SLOPE;
  return {
    distance: Math.max(sheet, outline / slope) / shaken,
    density: melted(sheet, over, high) * melted(outline, 2 * over, radius),
    mix: Math.max(share * share * (1 - vein), onVein),
  };
};
/** Half the width of a full vein at the heart, in radii. */
const VEIN = 0.14;

/** Arms wound from the middle out and up in a funnel, open towards +z; they narrow and thin towards their ends. */
const swirl: Shape = (s, at) => {
  const [over, irregular, arms, wind, depth, , a] = s.more;
  const p = unshaken(s, at);
  const [radius, , thick] = s.size;
  const r = Math.sqrt(p[0] * p[0] + p[1] * p[1]);
  const share = Math.min(1, r / radius);
  const angle = Math.atan2(p[1], p[0]) - wind * (1 - share) - 0.4 * irregular * Math.sin(5 * share + a);
  const sector = (2 * Math.PI) / arms;
  const from = angle - Math.round(angle / sector) * sector;
  const wide = 0.3 * sector * r * (1 - 0.7 * share) + 0.5 * thick;
  const high = 0.5 * thick * (1 - 0.6 * share);
  const level = depth * (share - 0.5);
  const sheet = (Math.abs(p[2] - level) - high) / Math.sqrt(1 + (depth / radius) ** 2);
  const side = Math.abs(from) * r - wide;
  const outline = r - radius;
  const slope = Math.sqrt(1 + (Math.abs(wind) * share + 2 * irregular) ** 2) + 1;
  return {
    distance: Math.max(sheet, side / slope, outline) / (1 + irregular * SLOPE),
    density: melted(sheet, over, high) * melted(side, over, wide) * melted(outline, 3 * over, radius),
    mix: share * share,
  };
};

const SHAPES: Readonly<Record<MediumNumber, Shape>> = {
  [TWIST]: twist,
  [MELTED_RIBBON]: ribbon,
  [MELTED_PETALS]: petals,
  [SWIRL]: swirl,
};
const isMediumNumber = (kind: number): kind is MediumNumber => Object.hasOwn(SHAPES, kind);
const found = new WeakMap<readonly SceneDesign[], readonly SceneDesign[]>();
/** Those of a scene's designs that are melted; looked for once. */
export function mediaOf(designs: readonly SceneDesign[]): readonly SceneDesign[] {
  const media = found.get(designs) ?? designs.filter(({ kind }) => isMediumNumber(kind));
  found.set(designs, media);
  return media;
}

export const placeIn = (s: SceneDesign, p: Vec3): MediumPoint =>
  isMediumNumber(s.kind) ? SHAPES[s.kind](s, p) : NOTHING;
const NOTHING: MediumPoint = { distance: 1, density: 0, mix: 0 };

/** Both distances at which a local ray crosses the tube that holds a medium, with flat ends; null when it passes by. */
function crossTube(s: SceneDesign, o: Vec3, d: Vec3): readonly [number, number] | null {
  const room = pushOf(s);
  const radius = s.size[0] + room + 0.5 * s.size[2];
  const half = s.size[1] + room;
  const across = Math.max(d[0] * d[0] + d[1] * d[1], 1e-12);
  const b = (o[0] * d[0] + o[1] * d[1]) / across;
  const off = (o[0] - b * d[0]) ** 2 + (o[1] - b * d[1]) ** 2;
  const disc = radius * radius - off;
  if (disc <= 0) return null;
  const root = Math.sqrt(disc / across);
  const along = Math.abs(d[2]) < 1e-9 ? 1e-9 : d[2];
  const middle = -o[2] / along;
  const flat = half / Math.abs(along);
  const [enter, leave] = [Math.max(-b - root, middle - flat), Math.min(-b + root, middle + flat)];
  return enter < leave ? [enter, leave] : null;
}

/**
 * A march takes at most so many steps, whole multiples of a share of the thinnest part (so that roundings don't grow from step to
 * step), each no more than a share of the free distance.
 */
const MOST_STEPS = 160;
const FINE = 0.1;
const CAUTION = 0.8;

/**
 * Walks along a ray within 0 .. tMax from place to place of several media, until `see` has seen enough.
 * @param first share of the least step that the first one takes: chance, so that no steps show
 * @param see told the places of all media at one more distance, and how long the stretch to it was; true ends the walk
 */
export function walkMedia(
  media: readonly SceneDesign[],
  o: Vec3,
  d: Vec3,
  tMax: number,
  first: number,
  see: (t: number, stretch: number, places: readonly MediumPoint[]) => boolean,
): void {
  const rays = media.map((s) => [toLocal(s, o), turnToLocal(s, d)] as const);
  let [start, end, thinnest] = [tMax, 0, 1];
  media.forEach((s, i) => {
    const around = crossTube(s, ...rays[i]);
    if (!around) return;
    start = Math.min(start, around[0]);
    end = Math.max(end, around[1]);
    thinnest = Math.min(thinnest, s.size[2]);
  });
  start = Math.max(0, start);
  end = Math.min(tMax, end);
  const least = Math.max(FINE * thinnest, (end - start) / MOST_STEPS);
  let t = start;
  let stretch = 0;
  for (let step = 0; step <= MOST_STEPS && t <= end && start < end; step++) {
    const places = media.map((s, i) => {
      const [p, v] = rays[i];
      return placeIn(s, [p[0] + t * v[0], p[1] + t * v[1], p[2] + t * v[2]]);
    });
    if (see(t, stretch, places) || t >= end) return;
    const free = places.reduce((nearest, { distance }) => Math.min(nearest, Math.abs(distance)), 1);
    const far = least * (step === 0 ? first : Math.max(1, Math.floor((CAUTION * free) / least)));
    stretch = Math.min(far, end - t);
    t = far < end - t ? t + far : end;
  }
}

/** For straight rays a medium is there where it is half dense. Light goes through it: see `pass-media.ts`. */
export const hitMedium: Hit = (s, o, d, tMax, _from, random) => {
  if (random) return null;
  let hit: DesignHit | null = null;
  let before = 0;
  walkMedia([s], o, d, tMax, 1, (at, stretch, [{ density, mix }]) => {
    if (density < 0.5) {
      before = density;
      return false;
    }
    const t = at - (stretch * (density - 0.5)) / (density - before);
    hit = { t, n: [-d[0], -d[1], -d[2]], rgb: mix < 0.5 ? s.rgb : s.rgb2, grain: 0 };
    return true;
  });
  return hit;
};
