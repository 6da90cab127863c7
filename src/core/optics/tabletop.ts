/**
 * An endless matt table under the piece: where it is met, how it scatters, and how lights of ours stand over it. Light comes
 * from above it only. Unit-sphere lengths, the piece's own axes.
 */
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "../geometry/vec.ts";
import { cellAt, eachCell, type Guide, guided, makeGuide } from "./guide.ts";
import { isNear, type Light, lightRadiance } from "./lights.ts";
import { type Material, reflectanceAt } from "./materials.ts";
import { type Emitter, emittersOf, thrownBackOf } from "./near-light.ts";
import { type Random, scatterPair } from "./random.ts";
import { luminance, type Rgb } from "./spectrum.ts";
import { withSweep } from "./sweep.ts";

export interface Tabletop {
  /** Unit normal, and how high the table lies along it: up.p = height. */
  readonly up: Vec3;
  readonly height: number;
  /** Whether the piece lies on a ring that stands there, see `ring.ts`. */
  readonly hasRing: boolean;
  readonly material: Material;
  /** Millimetres in a unit: patterns have a size of their own. */
  readonly radiusMm: number;
  /** Unit directions along the table; with `up` a right-handed frame. */
  readonly across: Vec3;
  readonly along: Vec3;
  /** Null under a light that is the same all around. */
  readonly guide: Guide | null;
  /**
   * What a white table throws back under the piece's middle where nothing stands on it: the light's mean by the cosine, linear sRGB.
   * `bareAt` has it for any place.
   */
  readonly bare: Rgb;
  /** The part of `bare` that is the same everywhere, and what sends the rest. */
  readonly bareFar: Rgb;
  readonly emitters: readonly Emitter[];
  /** How far from under the centre the piece changes that noticeably, at most, along `across` or `along`. */
  readonly reach: number;
}

/** What a table is, wherever a piece comes to lie on it. */
export interface Table {
  readonly material: Material;
  readonly radiusMm: number;
}

/** Normals closer to +-z than this leave the front no direction along the table. */
const UPRIGHT = 1e-9;

/**
 * Directions of a table: up, and along it towards where the piece's front looks; towards +x where the front looks up or down.
 */
export function tableFrame(up: Vec3): Pick<Tabletop, "up" | "across" | "along"> {
  const level = Math.hypot(up[0], up[1]) < UPRIGHT ? ([1, 0, 0] as const) : ([0, 0, 1] as const);
  const along = normalize(addScaled(level, up, -dot(level, up)));
  return { up, across: cross(up, along), along };
}

/**
 * A light of ours turned so that its up is the table's, and its front that of the piece along the table; where it has a sweep,
 * the table rises into it. A picture's stays.
 * @param rgb reflectance of the table
 */
export function lightOver(light: Light, up: Vec3, rgb: Rgb): Light {
  if (light.kind !== "setting") return light;
  const { across, along } = tableFrame(up);
  return { ...light, setting: withSweep(light.setting, rgb), axes: { right: across, up, front: along } };
}

/** Directions a cell is asked for across and down: enough that a picture's brightest pixel is not passed over. */
const askedIn = (light: Light): number =>
  light.kind === "picture" ? Math.min(16, Math.max(4, Math.ceil(light.picture.width / 128))) : 4;

type LightOnTable = Pick<Tabletop, "guide" | "bareFar" | "reach">;
/** A setting over a table is always the same to it: asked once. What is near by counts from the piece's middle, in millimetres. */
interface Known {
  readonly turnRad: number;
  readonly unitMm: number | undefined;
  readonly height: number;
  readonly asked: LightOnTable;
}
const known = new WeakMap<object, Known>();

/** @param light as it stands over the table, see `lightOver` */
export function makeTabletop(
  up: Vec3,
  height: number,
  { material, radiusMm }: Table,
  light: Light,
  hasRing = false,
): Tabletop {
  const frame = tableFrame(up);
  const emitters = emittersOf(light);
  const on = lightOnTable(frame, height, light, emitters);
  const bare = sum(on.bareFar, thrownBackOf(emitters, up, scale(up, height)));
  return { ...frame, height, hasRing, material, radiusMm, ...on, bare, emitters };
}

const sum = (a: Rgb, b: Rgb): Rgb => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

/** What a white table throws back at q where nothing stands on it, linear sRGB. */
export const bareAt = (
  { bareFar, emitters, up }: Pick<Tabletop, "bareFar" | "emitters" | "up">,
  q: Vec3,
): Rgb => (emitters.length > 0 ? sum(bareFar, thrownBackOf(emitters, up, q)) : bareFar);

type Frame = ReturnType<typeof tableFrame>;

function lightOnTable(
  frame: Frame,
  height: number,
  light: Light,
  emitters: readonly Emitter[],
): LightOnTable {
  if (light.kind === "uniform")
    return { guide: null, bareFar: [1, 1, 1], reach: reachUnder(frame, light, () => 1) };
  if (light.kind === "picture") return askLight(frame, height, light, emitters);
  const { setting, turnRad, unitMm } = light;
  const last = known.get(setting);
  if (
    last &&
    last.turnRad === turnRad &&
    last.unitMm === unitMm &&
    (emitters.length === 0 || last.height === height)
  )
    return last.asked;
  const asked = askLight(frame, height, light, emitters);
  known.set(setting, { turnRad, unitMm, height, asked });
  return asked;
}

/** The light without what is near by. */
const farOf = (light: Light): Light =>
  light.kind === "setting" && isNear(light.setting)
    ? { ...light, setting: { ...light.setting, panels: light.setting.panels.filter((p) => !p.distanceMm) } }
    : light;

function askLight(frame: Frame, height: number, light: Light, emitters: readonly Emitter[]): LightOnTable {
  const asked = askedIn(light);
  const under = scale(frame.up, height);
  const far = farOf(light);
  const bare: [number, number, number] = [0, 0, 0];
  const brightness: number[][] = [];
  let cells = 0;
  eachCell((row, column) => {
    const mean: [number, number, number] = [0, 0, 0];
    for (let k = 0; k < asked * asked; k++) {
      const place = cellAt(row, column, ((k % asked) + 0.5) / asked, (Math.floor(k / asked) + 0.5) / asked);
      const d = directionAt(frame, ...place);
      const seen = lightRadiance(light, d, under);
      const plain = far === light ? seen : lightRadiance(far, d);
      for (let c = 0; c < 3; c++) {
        mean[c] += seen[c] / (asked * asked);
        bare[c] += plain[c] / (asked * asked);
      }
    }
    brightness[row] ??= [];
    brightness[row][column] = luminance(mean);
    cells++;
  });
  for (let c = 0; c < 3; c++) bare[c] /= cells;
  const isDark = brightness.every((row) => row.every((v) => v <= 0));
  return {
    guide: isDark ? null : makeGuide((row, column) => Math.max(0, brightness[row][column])),
    bareFar: bare,
    reach: reachUnder(frame, light, (q) => luminance(bareAt({ bareFar: bare, emitters, up: frame.up }, q))),
  };
}

/** Distances that are tried, how many ways round, and directions over the cone in which the ball stands. */
const REACHES = [3, 4, 5, 6, 8, 10, 12] as const;
const FARTHEST = 14;
const [WAYS, CONE_RINGS, CONE_SPOKES] = [32, 5, 8];
/** Where the ball stands in the way of a smaller share of what the table throws back, it no longer counts. */
const NOTICEABLE = 0.01;

/** From where on the ball stands in the way of next to none of the light; as if it stood on its full height, where it reaches farthest. */
function reachUnder(frame: Frame, light: Light, bare: (q: Vec3) => number): number {
  const counts = (r: number) => {
    for (let k = 0; k < WAYS; k++) {
      const turn = (2 * Math.PI * k) / WAYS;
      const out = addScaled(scale(frame.across, Math.cos(turn)), frame.along, Math.sin(turn));
      const q = addScaled(scale(out, r), frame.up, -1);
      if (throughBall(frame, light, q) > NOTICEABLE * bare(q)) return true;
    }
    return false;
  };
  return REACHES.find((r) => !counts(r)) ?? FARTHEST;
}

/** Light that would come to a white table at q from the directions in which the ball stands. */
function throughBall({ up }: Frame, light: Light, q: Vec3): number {
  const distance = Math.hypot(...q);
  const middle = normalize(scale(q, -1));
  const beside = normalize(cross(middle, up));
  const above = cross(beside, middle);
  const wide = 1 - Math.sqrt(1 - 1 / distance ** 2);
  let received = 0;
  for (let k = 0; k < CONE_RINGS * CONE_SPOKES; k++) {
    const ahead = 1 - (wide * (Math.floor(k / CONE_SPOKES) + 0.5)) / CONE_RINGS;
    const [aside, phi] = [Math.sqrt(1 - ahead ** 2), (2 * Math.PI * ((k % CONE_SPOKES) + 0.5)) / CONE_SPOKES];
    const d = addScaled(
      addScaled(scale(middle, ahead), beside, aside * Math.cos(phi)),
      above,
      aside * Math.sin(phi),
    );
    received += Math.max(0, dot(d, up)) * luminance(lightRadiance(light, d, q));
  }
  return (2 * wide * received) / (CONE_RINGS * CONE_SPOKES);
}

/** Upward direction for a point of the square in which the cosine is even; see `guide.ts`. */
function directionAt(
  { up, across, along }: Pick<Tabletop, "up" | "across" | "along">,
  x: number,
  y: number,
): Vec3 {
  const phi = 2 * Math.PI * y;
  const r = Math.sqrt(x);
  const level = Math.sqrt(1 - x);
  const [a, b] = [r * Math.cos(phi), r * Math.sin(phi)];
  return [
    a * across[0] + b * along[0] + level * up[0],
    a * across[1] + b * along[1] + level * up[1],
    a * across[2] + b * along[2] + level * up[2],
  ];
}

/** True for a way from above the table that meets it. */
export const goesDown = (tabletop: Tabletop, d: Vec3): boolean => dot(tabletop.up, d) < 0;

/** Where a way down from p meets the table. */
export function pointOnTable(tabletop: Tabletop, p: Vec3, d: Vec3): Vec3 {
  const t = Math.max(0, (tabletop.height - dot(tabletop.up, p)) / dot(tabletop.up, d));
  const q = addScaled(p, d, t);
  return addScaled(q, tabletop.up, tabletop.height - dot(tabletop.up, q));
}

/** Reflectance where the table is met. */
export const tableReflectance = ({ material, radiusMm, across, along }: Tabletop, q: Vec3): Rgb =>
  reflectanceAt(material, radiusMm * dot(across, q), radiusMm * dot(along, q));

/** A direction up from the table by Lambert's cosine times the guide's density, and the factor that makes up for the latter. */
export function scatterOnTable(
  tabletop: Tabletop,
  random: Random,
): { readonly d: Vec3; readonly factor: number } {
  const [u, v] = scatterPair(random);
  if (!tabletop.guide) return { d: directionAt(tabletop, u, v), factor: 1 };
  const [x, y, density] = guided(tabletop.guide, u, v);
  return { d: directionAt(tabletop, x, y), factor: 1 / density };
}
