/** The shader is held to its TypeScript twin: the same scenes in a real browser, against pictures the twin has made. */
import { describe, expect, it } from "vitest";
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "../../src/core/geometry/vec.ts";
import { enterTouchingBody } from "../../src/core/optics/body.ts";
import { lightRadiance } from "../../src/core/optics/lights.ts";
import { nextRandom, type Random } from "../../src/core/optics/random.ts";
import type { Scene } from "../../src/core/optics/scene.ts";
import { bareAt, type Tabletop } from "../../src/core/optics/tabletop.ts";
import { colourOfChannels, SAFETY_CAP, type Trace, tracePath } from "../../src/core/optics/tracer.ts";
import {
  CONVERGED_OF,
  CONVERGED_SCENES,
  keptConverged,
  keptPictures,
  rowsFromTop,
  REFERENCE_SIZE as SIZE,
  twinPicture,
} from "./look-references.ts";
import { FURNACES, LOOK_SCENES, SHADES } from "./look-scenes.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

/** Relative difference, of the whole, of its parts and of its pixels, that counts as the same picture. */
const SAME = 0.01;
/** Noise that could hide structure of this size, relative. */
const HIDES = 0.03;
/**
 * Samples a pixel of each of the shader's two runs, gathered in parts with seeds of their own, as many parts as it takes: no more
 * once noise could hide only what is well below `HIDES`. A scene with 1,000 facets is quiet at 32, one under spots never is.
 */
const GATHERED = [
  { samples: 32, seeds: [11, 12] },
  { samples: 32, seeds: [13, 14] },
  { samples: 64, seeds: [15, 16] },
] as const;
const QUIET = 0.012;
/** Parts across and down. */
const PARTS = 6;

const mean = (values: Iterable<number>): number => {
  let [sum, count] = [0, 0];
  for (const value of values) {
    sum += value;
    count++;
  }
  return sum / count;
};
type Picture = readonly number[];
const middle = (a: Picture, b: Picture): Picture => a.map((v, i) => (v + b[i]) / 2);
const minus = (a: Picture, b: Picture): Picture => a.map((v, i) => v - b[i]);

/** Means over PARTS x PARTS parts of a picture, three channels each. */
function parts(picture: Picture): Picture {
  const edge = SIZE / PARTS;
  const sums = new Array<number>(3 * PARTS * PARTS).fill(0);
  picture.forEach((value, i) => {
    const pixel = Math.floor(i / 3);
    const [x, y] = [pixel % SIZE, Math.floor(pixel / SIZE)];
    sums[3 * (Math.floor(y / edge) * PARTS + Math.floor(x / edge)) + (i % 3)] += value / edge ** 2;
  });
  return sums;
}

/** A mean square, and its standard error. */
interface Shared {
  readonly square: number;
  readonly error: number;
}

/**
 * Mean square of what two pictures differ by beyond chance, relative to `level`. Each comes twice, from different seeds: the
 * product of two independent differences has the square of what they share for its mean, and noise averages out.
 */
function structure(
  ours: readonly [Picture, Picture],
  theirs: readonly [Picture, Picture],
  level: number,
): Shared {
  const [first, second] = [minus(ours[0], theirs[0]), minus(ours[1], theirs[1])];
  const products = first.map((v, i) => (v * second[i]) / level ** 2);
  const square = mean(products);
  const spread = Math.sqrt(mean(products.map((p) => (p - square) ** 2)));
  return { square, error: spread / Math.sqrt(products.length) };
}

const opened = sharedThing(
  async () => {
    const open = await openPage("tests/browser/look-page.html");
    await open.page.waitForFunction("'traceScene' in window");
    return open;
  },
  ({ close }) => close(),
  ({ errors }) => expect(errors).toEqual([]),
);

const shaderPicture = async (scene: number, seed: number, samples: number, own = false): Promise<Picture> =>
  rowsFromTop(
    await opened().page.evaluate<number[]>(
      `traceScene(${scene}, { size: ${SIZE}, of: ${SIZE}, seed: ${seed}, samples: ${samples}, own: ${own} })`,
    ),
  );

/** The mean of two pictures, each of so many samples. */
const gathered = (before: Picture, had: number, more: Picture, samples: number): Picture =>
  before.map((v, i) => (had * v + samples * more[i]) / (had + samples));

const pointAt = ({ across, along, up, height }: Tabletop, x: number, y: number): Vec3 =>
  addScaled(addScaled(scale(across, x), along, y), up, height);

/** A scene on a table, and by how much more a white table throws back where it stands, followed by the twin on plain chance. */
function onTableOf({ make }: { readonly make: () => Scene }) {
  const scene = make();
  const { tabletop } = scene;
  if (!tabletop) throw new Error("no table");
  const colour = colourOfChannels(scene);
  const count = 48_000;
  /** Green, over places that two chances choose: all that changes comes from the cone in which the ball stands, where directions are even. */
  function plainGain(placeOf: (u: number, v: number) => Vec3, seed: number) {
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
      const level = dot(d, (tabletop as Tabletop).up);
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
  return { tabletop, plainGain };
}

describe("the shader against its twin", () => {
  it.each(LOOK_SCENES.map((scene, k) => [scene.name, k] as const))("sees the same: %s", async (_, k) => {
    const kept = keptPictures(LOOK_SCENES[k]);
    const theirs = [Array.from(kept[0]), Array.from(kept[1])] as const;
    const level = mean(middle(...theirs));
    const nothing: Picture = theirs[0].map(() => 0);
    let [ours, had]: [readonly [Picture, Picture], number] = [[nothing, nothing], 0];
    let byPart: Shared = { square: 0, error: Number.POSITIVE_INFINITY };
    for (const { samples, seeds } of GATHERED) {
      if (byPart.error < QUIET ** 2) break;
      const more = [
        await shaderPicture(k, seeds[0], samples),
        await shaderPicture(k, seeds[1], samples),
      ] as const;
      ours = [gathered(ours[0], had, more[0], samples), gathered(ours[1], had, more[1], samples)];
      had += samples;
      byPart = structure([parts(ours[0]), parts(ours[1])], [parts(theirs[0]), parts(theirs[1])], level);
    }
    const whole = Math.abs(mean(middle(...ours)) - level) / level;
    expect(whole, "mean relative difference").toBeLessThan(SAME);
    // What the two share must not stand out from the noise that is left, and that must be too small to hide anything.
    expect(byPart.error, "noise of the parts").toBeLessThan(HIDES ** 2);
    expect(byPart.square - 2 * byPart.error, "structure in the parts").toBeLessThan(SAME ** 2);
    const byPixel = structure(ours, theirs, level);
    expect(byPixel.square - 3 * byPixel.error, "structure in the pixels").toBeLessThan(SAME ** 2);
  });

  it("sees the same with the program made for a piece's own number of facets", async () => {
    const [any, own] = [await shaderPicture(1, 11, 8), await shaderPicture(1, 11, 8, true)];
    const level = mean(any);
    // The same chances: only roundings at edges may send a path another way.
    expect(Math.abs(mean(own) - level) / level).toBeLessThan(SAME / 10);
    expect(mean(minus(own, any).map(Math.abs)) / level).toBeLessThan(SAME);
  });

  // Weak paths end by chance, so only means are 1.
  it.each(FURNACES.map(({ name }, k) => [name, LOOK_SCENES.length + k] as const))(
    "gives even light back as it came, from clear glass and what is white: %s",
    async (_, k) => {
      const picture = await shaderPicture(k, 11, 32);
      expect(Math.abs(mean(picture) - 1)).toBeLessThan(SAME / 2);
      for (const part of parts(picture)) expect(Math.abs(part - 1)).toBeLessThan(5 * SAME);
    },
  );

  /**
   * Mean of what the light map has gathered, three colours, in rings of texels between these radii about under the centre; and of
   * what it should be.
   */
  async function mapRings(scene: number, borders: readonly number[], law: (r: number) => number) {
    const wish = { size: 1, of: 1, seed: 11, samples: 64, own: false };
    const { spread, rgba } = await opened().page.evaluate<{ spread: number[]; rgba: number[] }>(
      `traceMap(${scene}, ${JSON.stringify(wish)})`,
    );
    const side = Math.sqrt(rgba.length / 4);
    const along = (k: number) => spread[1] * Math.sinh(spread[0] * ((2 * (k + 0.5)) / side - 1));
    const far = Array.from({ length: side * side }, (_, k) =>
      Math.hypot(along(k % side), along(Math.floor(k / side))),
    );
    return borders.slice(1).map((to, ring) => {
      const inside = far.flatMap((r, k) => (r >= borders[ring] && r < to ? [k] : []));
      const rgb = [0, 1, 2].map((c) => mean(inside.map((k) => rgba[4 * k + c])));
      return { rgb, law: mean(inside.map((k) => law(far[k]))) };
    });
  }

  const RINGS = [0, 0.25, 0.5, 1, 1.5, 2, 3, 4];

  it("shades a table by a black ball as the closed form has it: its projected solid angle over pi", async () => {
    // Nusselt's projection: sin^2 of the ball's half angle times the cosine to its middle
    const shade = (r: number) => -((r ** 2 + 1) ** -1.5);
    const rings = await mapRings(LOOK_SCENES.length + FURNACES.length, RINGS, shade);
    for (const { rgb, law } of rings) for (const c of rgb) expect(c).toBeCloseTo(law, 2);
  });

  it.each([1, 2])(
    "changes nothing on a white table in even light, anywhere on its map: furnace %i",
    async (k) => {
      for (const { rgb } of await mapRings(LOOK_SCENES.length + k, RINGS, () => 0))
        for (const c of rgb) expect(Math.abs(c)).toBeLessThan(SAME);
    },
  );

  /** Texels each way that are taken together. */
  const ACROSS = 7;

  it("gathers on its map, place by place, what plain chance finds there: in shade, in light gathered by glass, at the rim", async () => {
    const k = LOOK_SCENES.length + FURNACES.length + 1;
    const { tabletop, plainGain } = onTableOf(SHADES[1]);
    const gathered = (seed: number) =>
      opened().page.evaluate<{ spread: number[]; rgba: number[] }>(
        `traceMap(${k}, { size: 1, of: 1, seed: ${seed}, samples: 64, own: false })`,
      );
    const { spread, rgba } = await gathered(11);
    const again = (await gathered(12)).rgba;
    const side = Math.sqrt(rgba.length / 4);
    const along = (place: number) => spread[1] * Math.sinh(spread[0] * ((2 * place) / side - 1));
    const placeOf = (x: number) => Math.floor((side / 2) * (1 + Math.asinh(x / spread[1]) / spread[0]));
    const seen = { darker: 0, brighter: 0 };
    for (const [i, r] of [0.25, 0.6, 1, 1.4, 2.1].entries())
      for (let way = 0; way < 4; way++) {
        const turn = 0.4 * i + (Math.PI * way) / 2;
        const [x, y] = [r * Math.cos(turn), r * Math.sin(turn)].map(
          (v) => placeOf(v) - Math.floor(ACROSS / 2),
        );
        const texels = Array.from(
          { length: ACROSS ** 2 },
          (_, n) => (y + Math.floor(n / ACROSS)) * side + x + (n % ACROSS),
        );
        const ours = mean(texels.map((texel) => (rgba[4 * texel + 1] + again[4 * texel + 1]) / 2));
        // what is there cancels in what two maps differ by: only chance is left
        const chance = texels.map((texel) => (rgba[4 * texel + 1] - again[4 * texel + 1]) / 2);
        // as texels are: wider apart towards the rim
        const within = (u: number, v: number) =>
          pointAt(tabletop, along(x + ACROSS * u), along(y + ACROSS * v));
        const theirs = plainGain(within, 1 + 20 * i + way);
        const bare = bareAt(tabletop, within(0.5, 0.5))[1];
        const off = ours - theirs.gain;
        const noise = Math.hypot(theirs.error, Math.sqrt(mean(chance.map((v) => v * v)) / chance.length));
        expect(Math.abs(off), `${r} out, way ${way}: ${ours}, ${theirs.gain}`).toBeLessThan(
          4 * noise + 0.01 * bare,
        );
        expect(noise, `${r} out, way ${way}: ${theirs.error} of the noise is the twin's`).toBeLessThan(
          0.06 * bare,
        );
        if (theirs.gain < -0.15 * bare) seen.darker++;
        if (theirs.gain > 0.1 * bare) seen.brighter++;
      }
    expect(seen.darker).toBeGreaterThan(1);
    expect(seen.brighter).toBeGreaterThan(0);
  });

  it("finds structure where there is some", async () => {
    const other = await shaderPicture(1, 11, 8);
    const kept = keptPictures(LOOK_SCENES[2]);
    const theirs = [Array.from(kept[0]), Array.from(kept[1])] as const;
    const { square, error } = structure([other, other], theirs, mean(other));
    expect(square - 3 * error).toBeGreaterThan(SAME ** 2);
  });

  it.each(CONVERGED_SCENES)(
    "shows it smoothed, much nearer to the converged picture than what it has gathered: scene %i",
    async (k) => {
      const part = async (call: string, seed: number, samples: number) => {
        const wish = { size: SIZE, of: CONVERGED_OF, seed, samples, own: false };
        return rowsFromTop(await opened().page.evaluate<number[]>(`${call}(${k}, ${JSON.stringify(wish)})`));
      };
      const converged = Array.from(keptConverged(LOOK_SCENES[k]));
      const squeezed = (picture: Picture) => picture.map((v) => Math.log1p(Math.max(0, v)));
      const error = (picture: Picture) =>
        Math.sqrt(mean(minus(squeezed(picture), squeezed(converged)).map((v) => v ** 2)));
      for (const [samples, share, amiss] of [
        [8, 0.6, 0.03],
        [64, 0.7, SAME],
      ]) {
        const gathered = await part("traceScene", 11, samples);
        const shown = await part("showScene", 11, samples);
        expect(error(shown) / error(gathered), `${samples} samples`).toBeLessThan(share);
        expect(Math.abs(mean(shown) / mean(gathered) - 1), "light lost or made").toBeLessThan(amiss);
      }
    },
  );
});

describe("the kept pictures", () => {
  it.each(LOOK_SCENES.map((scene, k) => [scene.name, k] as const))("are what the twin sees: %s", (_, k) => {
    const scene = LOOK_SCENES[k];
    const kept = middle(
      ...(keptPictures(scene).map((picture) => Array.from(picture)) as [number[], number[]]),
    );
    const now = Array.from(twinPicture(scene, 4, 5));
    const level = mean(kept);
    expect(Math.abs(mean(now) - level) / level).toBeLessThan(2 * SAME);
  });
});
