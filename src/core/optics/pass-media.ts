/**
 * Light on its way through coloured glass that is melted into the piece: what is absorbed by Beer-Lambert, and where it is
 * scattered. The density along the ray is summed up by trapezia, so that one chance decides where it scatters (regular tracking).
 */
import type { Vec3 } from "../geometry/vec.ts";
import { walkMedia } from "../inside/media.ts";
import type { SceneDesign } from "../inside/scene-design.ts";
import { absorptionOfTint } from "./casing.ts";
import { nextRandom, type Random } from "./random.ts";
import type { Rgb } from "./spectrum.ts";

/** Mean scatterings of a ray straight through the thickness of what is milky all through. */
const MILKY_DEPTH = 8;

/**
 * Absorption beside one scattering length that makes deep scattering glass look like `colour` (0 .. 1): the inverse of H. C. van de
 * Hulst's albedo of a half space, A = (1 - s)(1 - 0.139 s) / (1 + 1.17 s), s = sqrt(1 - albedo) (Multiple Light Scattering, 1980;
 * quoted from memory).
 */
export function absorptionBesideScattering(colour: number): number {
  const a = Math.max(DARKEST, Math.min(1, colour));
  const b = 1.139 + 1.17 * a;
  const s = (2 * (1 - a)) / (b + Math.sqrt(b * b - 4 * 0.139 * (1 - a)));
  const albedo = 1 - s * s;
  return (1 - albedo) / Math.max(DARKEST, albedo);
}
const DARKEST = 1e-3;

/** Scattering per unit length where a medium is dense. `extra`: how milky it is, `size[2]` its thickness. */
const scatteringOf = ({ extra, size }: SceneDesign): number => (MILKY_DEPTH * extra * extra) / size[2];

/** Absorption per unit length of a colour: clear coloured glass shows it through its thickness, milky glass in its depth. */
const absorptionIn = (s: SceneDesign, colour: number): number =>
  (1 - s.extra) * absorptionOfTint(colour, s.size[2]) + scatteringOf(s) * absorptionBesideScattering(colour);

/** How far a ray gets, whether it was scattered there, and the share of each of three numbers that is left. */
export interface Passage {
  readonly t: number;
  readonly scattered: boolean;
  readonly left: readonly [number, number, number];
}

/**
 * @param depth scatterings after which it scatters: -ln of a chance
 * @param first 0 .. 1, where the walk begins
 * @param toPath what a linear sRGB colour means to the path
 */
export function passMediaBy(
  media: readonly SceneDesign[],
  o: Vec3,
  d: Vec3,
  tMax: number,
  depth: number,
  first: number,
  toPath: (rgb: Rgb) => Rgb,
): Passage {
  const taking = media.map((s) => ({
    scatters: scatteringOf(s),
    colours: [s.rgb, s.rgb2].map((rgb) => toPath(rgb).map((c) => absorptionIn(s, c))),
  }));
  const absorbed: [number, number, number] = [0, 0, 0];
  let before = [0, 0, 0, 0];
  let met = 0;
  let t = tMax;
  let scattered = false;
  walkMedia(media, o, d, tMax, first, (at, stretch, places) => {
    const here = [0, 0, 0, 0];
    places.forEach(({ density, mix }, i) => {
      if (density <= 0) return;
      const { scatters, colours } = taking[i];
      here[3] += density * scatters;
      for (let c = 0; c < 3; c++)
        here[c] += density * (colours[0][c] + mix * (colours[1][c] - colours[0][c]));
    });
    const more = 0.5 * stretch * (before[3] + here[3]);
    const share = met + more >= depth && more > 0 ? (depth - met) / more : 1;
    for (let c = 0; c < 3; c++) absorbed[c] += share * 0.5 * stretch * (before[c] + here[c]);
    scattered = met + more >= depth && more > 0;
    if (scattered) t = at - (1 - share) * stretch;
    met += more;
    before = here;
    return scattered;
  });
  return { t, scattered, left: [Math.exp(-absorbed[0]), Math.exp(-absorbed[1]), Math.exp(-absorbed[2])] };
}

/** The same by chance. */
export function passMedia(
  media: readonly SceneDesign[],
  o: Vec3,
  d: Vec3,
  tMax: number,
  random: Random,
  toPath: (rgb: Rgb) => Rgb,
): Passage {
  const depth = -Math.log(Math.max(1e-7, 1 - nextRandom(random)));
  return passMediaBy(media, o, d, tMax, depth, nextRandom(random), toPath);
}
