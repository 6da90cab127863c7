/** What a path carries on its way and has gathered, and when it ends. The shader does the same with the same names. */
import { dot, type Vec3 } from "../geometry/vec.ts";
import { NOWHERE } from "./body.ts";
import { indexAt } from "./glasses.ts";
import { lightRadiance } from "./lights.ts";
import { nextRandom, type Random } from "./random.ts";
import type { Scene } from "./scene.ts";
import { type Rgb, type Stratum, wavelengthIn } from "./spectrum.ts";

/** Index, absorption and colour arithmetic that one path lives by. */
export interface PathColour {
  readonly index: number;
  /** Absorption per unit length for the three numbers of the path. */
  readonly sigma: Rgb;
  /** What each layer of the glass adds to it. */
  readonly casings: readonly Rgb[];
  /** Stratum of a path at one wavelength; null for red, green, blue side by side. */
  readonly stratum: Stratum | null;
}

/** Counts what a picture must admit: energy dropped at the cap, and how many surfaces were met. */
export interface PathTally {
  lost: number;
  meetings: number;
}

/** One path's work: what it goes by, and what it has gathered. */
export interface Trace {
  readonly scene: Scene;
  readonly colour: PathColour;
  /** Surfaces it may meet, the first included; what is still under way then is lost and counted in `tally`. */
  readonly cap: number;
  readonly random: Random;
  readonly tally: PathTally;
  /** Radiance: three equal numbers at the path's wavelength, or red, green, blue without dispersion. */
  readonly sum: [number, number, number];
  /** For a picture without a background; else null. */
  readonly behind: Behind | null;
}

/** What lies behind the piece is left out of the radiance, and how much of it one would see is gathered by itself. */
export interface Behind {
  /** Unit direction of the view: light from the half-space ahead of it is behind the piece, and so is the table seen that way. */
  readonly away: Vec3;
  /** The share seen of what is behind; of a table, less the light that the piece takes from it. */
  readonly seen: [number, number, number];
}

/** Paths weaker than this are ended by chance, the survivors made up for it. Lossless paths never get so weak. */
const ROULETTE_BELOW = 1e-3;

/** Path at one wavelength of a stratum, 0 <= u < 1 within it. */
export function colourOfStratum(scene: Scene, stratum: number, u: number): PathColour {
  const s = scene.strata[stratum];
  const alike = (v: number): Rgb => [v, v, v];
  return {
    index: indexAt(scene.dispersion, wavelengthIn(s, u)),
    sigma: alike(scene.sigma[stratum]),
    casings: scene.casings.map(({ sigma }) => alike(sigma[stratum])),
    stratum: s,
  };
}

/** Path without dispersion: n_d for all light, red, green and blue independent. */
export const colourOfChannels = (scene: Scene): PathColour => ({
  index: scene.nd,
  sigma: scene.sigmaRgb,
  casings: scene.casings.map(({ sigmaRgb }) => sigmaRgb),
  stratum: null,
});

/** What a linear sRGB colour means to a path. */
export function colourFor(rgb: Rgb, colour: PathColour): Rgb {
  if (!colour.stratum) return rgb;
  const { basis } = colour.stratum;
  const v = rgb[0] * basis[0] + rgb[1] * basis[1] + rgb[2] * basis[2];
  return [v, v, v];
}

/** Where a path stands inside the piece. Designs are told apart by position, grains of a speckle by their own. */
export interface Walker {
  p: Vec3;
  d: Vec3;
  /** Surface of the body just left, and the design and grain just left; NOWHERE for none. */
  surface: number;
  design: number;
  grain: number;
  /** Position of the bubble it is in, NOWHERE in glass. */
  bubble: number;
  /** Weight of the path. */
  weight: [number, number, number];
  /** Surfaces met so far. */
  meetings: number;
  /** On its way down to the table instead of in the piece. */
  isOutside: boolean;
  /** It came by the table: now chance takes one way everywhere, and all light that it finds is light on the table. */
  isFromTable: boolean;
}

export const walker = (p: Vec3, d: Vec3, isFromTable: boolean): Walker => ({
  p,
  d,
  surface: NOWHERE,
  design: NOWHERE,
  grain: 0,
  bubble: NOWHERE,
  weight: [1, 1, 1],
  meetings: 0,
  isOutside: true,
  isFromTable,
});

export const weaken = (w: Walker, r: number, g: number, b: number): void => {
  w.weight[0] *= r;
  w.weight[1] *= g;
  w.weight[2] *= b;
};

/** Remembers what the path stands on. */
export const leave = (w: Walker, surface: number, design: number, grain: number): void => {
  w.surface = surface;
  w.design = design;
  w.grain = grain;
};

export const moveTo = (w: Walker, t: number): void => {
  w.p = [w.p[0] + t * w.d[0], w.p[1] + t * w.d[1], w.p[2] + t * w.d[2]];
};

export const strongest = (w: Walker): number => Math.max(w.weight[0], w.weight[1], w.weight[2]);

/** Adds light from direction d, seen with a share of the walker's weight. */
export function gather(trace: Trace, w: Walker, d: Vec3, share: number): void {
  const { scene, colour, behind, sum } = trace;
  if (behind && !w.isFromTable && dot(d, behind.away) > 0) {
    for (let c = 0; c < 3; c++) behind.seen[c] += share * w.weight[c];
    return;
  }
  const light = colourFor(lightRadiance(scene.light, d, w.p), colour);
  sum[0] += share * w.weight[0] * light[0];
  sum[1] += share * w.weight[1] * light[1];
  sum[2] += share * w.weight[2] * light[2];
}

/** Ends weak paths by chance without bias; true when it ended. */
export function roulette(w: Walker, random: Random): boolean {
  const strength = strongest(w);
  if (strength >= ROULETTE_BELOW) return false;
  const survive = strength / ROULETTE_BELOW;
  if (nextRandom(random) >= survive) return true;
  weaken(w, 1 / survive, 1 / survive, 1 / survive);
  return false;
}

export const lose = ({ tally }: Trace, { weight }: Walker): void => {
  tally.lost += (weight[0] + weight[1] + weight[2]) / 3;
};
