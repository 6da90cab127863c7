/**
 * By how much more a white table throws back at places round a piece, followed by the twin on plain chance: kept as numbers, since it
 * takes long. A place is a square of texels of the light map.
 */
import { readFileSync } from "node:fs";
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "../../src/core/geometry/vec.ts";
import { enterTouchingBody } from "../../src/core/optics/body.ts";
import { lightRadiance } from "../../src/core/optics/lights.ts";
import { nextRandom, type Random } from "../../src/core/optics/random.ts";
import type { Scene } from "../../src/core/optics/scene.ts";
import { bareAt, type Tabletop } from "../../src/core/optics/tabletop.ts";
import { SAFETY_CAP, tracePath } from "../../src/core/optics/tracer.ts";
import { colourOfChannels, type Trace } from "../../src/core/optics/walker.ts";
import { mapSide } from "../../src/render/light-map.ts";
import { DEFAULT_OPTIONS, packScene } from "../../src/render/pack-scene.ts";
import { SHADES } from "./look-scenes.ts";

/** Of the lists of scenes, the one that is looked at. */
export const PLAIN_SCENE = SHADES[1];
/** Chances at each place of what is kept. */
export const PLAIN_COUNT = 200_000;
/** Texels each way that are taken together. */
const ACROSS = 7;
/** How far out the places lie, and how many there are of each. */
const [FAR, WAYS] = [[0.25, 0.6, 1, 1.4, 2.1], 4];

export interface PlainGain {
  /** Green. */
  readonly gain: number;
  /** Its standard error. */
  readonly error: number;
}

export interface MapPlace {
  readonly words: string;
  /** Texels of the map. */
  readonly texels: readonly number[];
  /** What the bare table throws back in the middle, green. */
  readonly bare: number;
  readonly gain: (count: number, seed: number) => PlainGain;
}

const pointAt = ({ across, along, up, height }: Tabletop, x: number, y: number): Vec3 =>
  addScaled(addScaled(scale(across, x), along, y), up, height);

/** Over places that two chances choose: all that changes comes from the cone in which the ball stands, where directions are even. */
function plainGain(
  scene: Scene,
  tabletop: Tabletop,
  placeOf: (u: number, v: number) => Vec3,
  count: number,
  seed: number,
) {
  const colour = colourOfChannels(scene);
  const random: Random = { state: seed, sample: 0, scramble: 0, even: false };
  let [sum, squares] = [0, 0];
  for (let k = 0; k < count; k++) {
    const q = placeOf(nextRandom(random), nextRandom(random));
    const middle = normalize(scale(q, -1));
    const wide = 1 - Math.sqrt(Math.max(0, 1 - 1 / dot(q, q)));
    const z = 1 - wide * nextRandom(random);
    const beside = normalize(cross(middle, Math.abs(middle[0]) < 0.5 ? [1, 0, 0] : [0, 0, 1]));
    const turn = 2 * Math.PI * nextRandom(random);
    const aside = addScaled(scale(beside, Math.cos(turn)), cross(middle, beside), Math.sin(turn));
    const d = addScaled(scale(middle, z), aside, Math.sqrt(1 - z * z));
    const level = dot(d, tabletop.up);
    const entry = level > 0 ? enterTouchingBody(scene, q, d) : null;
    if (!entry) continue;
    const trace: Trace = {
      scene,
      colour,
      cap: SAFETY_CAP,
      random,
      tally: { lost: 0, meetings: 0 },
      sum: [0, 0, 0],
      behind: null,
    };
    tracePath(trace, q, d, entry, true);
    // the cosine over pi, for each chance of 1 / (2 pi wide)
    const gain = 2 * wide * level * (trace.sum[1] - lightRadiance(scene.light, d, q)[1]);
    sum += gain;
    squares += gain * gain;
  }
  const gain = sum / count;
  return { gain, error: Math.sqrt((squares / count - gain * gain) / count) };
}

/** The places, from near to far. */
export function placesOnMap(): readonly MapPlace[] {
  const scene = PLAIN_SCENE.make();
  const { tabletop } = scene;
  if (!tabletop) throw new Error("no table");
  const spread = packScene(scene, DEFAULT_OPTIONS).uniforms.mapSpread.value as ArrayLike<number>;
  const side = mapSide(1);
  const along = (place: number) => spread[1] * Math.sinh(spread[0] * ((2 * place) / side - 1));
  const placeOf = (x: number) => Math.floor((side / 2) * (1 + Math.asinh(x / spread[1]) / spread[0]));
  return FAR.flatMap((r, i) =>
    Array.from({ length: WAYS }, (_, way) => {
      const turn = 0.4 * i + (Math.PI * way) / 2;
      const [x, y] = [r * Math.cos(turn), r * Math.sin(turn)].map((v) => placeOf(v) - Math.floor(ACROSS / 2));
      const texels = Array.from(
        { length: ACROSS ** 2 },
        (_, n) => (y + Math.floor(n / ACROSS)) * side + x + (n % ACROSS),
      );
      // as texels are: wider apart towards the rim
      const within = (u: number, v: number) =>
        pointAt(tabletop, along(x + ACROSS * u), along(y + ACROSS * v));
      return {
        words: `${r} out, way ${way}`,
        texels,
        bare: bareAt(tabletop, within(0.5, 0.5))[1],
        gain: (count: number, seed: number) => plainGain(scene, tabletop, within, count, seed),
      };
    }),
  );
}

export const plainFile = new URL("../fixtures/look/plain-chance.json", import.meta.url);

/** What was kept, place by place. */
export const keptGains = (): readonly PlainGain[] => JSON.parse(readFileSync(plainFile, "utf8"));
