/** The shader is held to its TypeScript twin: the same scenes in a real browser, against pictures the twin has made. */
import { describe, expect, it } from "vitest";
import { BODIES } from "../../src/core/inside/bodies.ts";
import { ROUGHNESS } from "../../src/core/optics/finish.ts";
import type { Light } from "../../src/core/optics/lights.ts";
import { DEFAULT_OPTIONS, packScene } from "../../src/render/pack-scene.ts";
import { LIMIT_DEFINES } from "../../src/render/shader-limits.ts";
import {
  CONVERGED_OF,
  keptConverged,
  keptPictures,
  rowsFromTop,
  REFERENCE_SIZE as SIZE,
  twinPicture,
} from "./look-references.ts";
import { ALL_SCENES, FACETED, FURNACES, LOOK_SCENES, NOISY, SHADES } from "./look-scenes.ts";
import { keptGains, placesOnMap } from "./plain-chance.ts";
import {
  ALL_SEEN,
  BLURRED,
  keptSeen,
  SEEN_SIZE,
  type Seen,
  SHARP,
  sceneNumber,
  seenParts,
  THROUGH,
  twinParts,
} from "./seen-through.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

/** Relative difference, of the whole, of its parts and of its pixels, that counts as the same picture. */
const SAME = 0.01;
/** Noise that could hide structure of this size, relative. */
const HIDES = 0.03;
/**
 * Pixels across and down of what the shader traces, run by run, each with a seed of its own, as many runs as it takes: no more
 * once noise could hide only what is well below `SAME` of the whole and `HIDES` of its parts. The light map of a scene on a table
 * costs as much for a small picture as for a large one. One run gives two pictures, its halves, whose noise is independent; with so
 * many samples each has one ray a pixel.
 */
const GATHERED = [144, 192, 240] as const;
const GATHERED_ON_TABLE = [192, 192] as const;
const SAMPLES = 8;
const [WHOLE_QUIET, PARTS_QUIET] = [SAME / 3, HIDES / 2] as const;
/** Parts across and down. */
const PARTS = 6;
/** The twin's samples a pixel where what was kept of it is looked at anew. */
const SEEN_AGAIN = 128;

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

const shaderPicture = async (scene: number, seed: number, samples: number): Promise<Picture> =>
  rowsFromTop(
    await opened().page.evaluate<number[]>(
      `traceScene(${scene}, { size: ${SIZE}, of: ${SIZE}, seed: ${seed}, samples: ${samples} })`,
    ),
  );

/** Both halves of a picture so many pixels wide, brought to the size of what was kept. */
async function shaderHalves(scene: number, seed: number, size: number): Promise<readonly [Picture, Picture]> {
  const wish = { size, of: size, into: SIZE, seed, samples: SAMPLES };
  const [first, second] = await opened().page.evaluate<number[][]>(
    `traceHalves(${scene}, ${JSON.stringify(wish)})`,
  );
  return [rowsFromTop(first), rowsFromTop(second)];
}

/** The mean of two pictures, of so many rays each. */
const gathered = (before: Picture, had: number, more: Picture, rays: number): Picture =>
  before.map((v, i) => (had * v + rays * more[i]) / (had + rays));

describe("the shader against its twin", () => {
  it.each(LOOK_SCENES.map((scene, k) => [scene.name, k] as const))("sees the same: %s", async (_, k) => {
    const kept = keptPictures(LOOK_SCENES[k]);
    const theirs = [Array.from(kept[0]), Array.from(kept[1])] as const;
    const level = mean(middle(...theirs));
    const nothing: Picture = theirs[0].map(() => 0);
    let [ours, had]: [readonly [Picture, Picture], number] = [[nothing, nothing], 0];
    let byPart: Shared = { square: 0, error: Number.POSITIVE_INFINITY };
    let chance = Number.POSITIVE_INFINITY;
    const sizes = LOOK_SCENES[k].make().tabletop ? GATHERED_ON_TABLE : GATHERED;
    for (const [turn, size] of sizes.entries()) {
      if (chance < WHOLE_QUIET && byPart.error < PARTS_QUIET ** 2) break;
      const more = await shaderHalves(k, 11 + turn, size);
      ours = [gathered(ours[0], had, more[0], size ** 2), gathered(ours[1], had, more[1], size ** 2)];
      had += size ** 2;
      const ofParts = [parts(ours[0]), parts(ours[1])] as const;
      byPart = structure(ofParts, [parts(theirs[0]), parts(theirs[1])], level);
      // standard error of the whole, by what the halves of its parts differ by
      chance = Math.sqrt(mean(minus(...ofParts).map((v) => v ** 2))) / (2 * PARTS * level);
    }
    const whole = Math.abs(mean(middle(...ours)) - level) / level;
    expect(whole, "mean relative difference").toBeLessThan(SAME);
    // What the two share must not stand out from the noise that is left, and that must be too small to hide anything.
    expect(byPart.error, "noise of the parts").toBeLessThan(HIDES ** 2);
    expect(byPart.square - 2 * byPart.error, "structure in the parts").toBeLessThan(SAME ** 2);
    const byPixel = structure(ours, theirs, level);
    expect(byPixel.square - 3 * byPixel.error, "structure in the pixels").toBeLessThan(SAME ** 2);
  });

  /** Both halves of what a scene's light map has gathered, and the means of 6 x 6 blocks of its picture. */
  const tracedMap = (scene: number, size: number, samples: number) =>
    opened().page.evaluate<{ spread: number[]; halves: number[][]; picture: number[] }>(
      `traceMap(${scene}, { size: ${size}, of: ${size}, into: ${PARTS}, seed: 11, samples: ${samples} })`,
    );
  type Traced = Awaited<ReturnType<typeof tracedMap>>;

  const RINGS = [0, 0.25, 0.5, 1, 1.5, 2, 3, 4];

  /** Mean of a light map, three colours, in rings of texels between these radii about under the centre; and of what it should be. */
  function mapRings({ spread, halves: [first, second] }: Traced, law: (r: number) => number) {
    const side = Math.sqrt(first.length / 4);
    const along = (k: number) => spread[1] * Math.sinh(spread[0] * ((2 * (k + 0.5)) / side - 1));
    const far = Array.from({ length: side * side }, (_, k) =>
      Math.hypot(along(k % side), along(Math.floor(k / side))),
    );
    return RINGS.slice(1).map((to, ring) => {
      const inside = far.flatMap((r, k) => (r >= RINGS[ring] && r < to ? [k] : []));
      const rgb = [0, 1, 2].map((c) => mean(inside.map((k) => (first[4 * k + c] + second[4 * k + c]) / 2)));
      return { rgb, law: mean(inside.map((k) => law(far[k]))) };
    });
  }

  // Weak paths end by chance, so only means are 1.
  it.each(FURNACES.map(({ name }, k) => [name, k] as const))(
    "gives even light back as it came, from clear glass and what is white, and changes none of it on a table's map: %s",
    async (_, k) => {
      const isOnTable = FURNACES[k].make().tabletop !== null;
      const traced = await tracedMap(LOOK_SCENES.length + k, isOnTable ? 96 : 36, SAMPLES);
      const blocks = traced.picture.filter((_, i) => i % 4 !== 3);
      expect(Math.abs(mean(blocks) - 1)).toBeLessThan(SAME / 2);
      for (const block of blocks) expect(Math.abs(block - 1)).toBeLessThan(5 * SAME);
      expect(traced.halves).toHaveLength(isOnTable ? 2 : 0);
      if (!isOnTable) return;
      for (const { rgb } of mapRings(traced, () => 0))
        for (const c of rgb) expect(Math.abs(c)).toBeLessThan(SAME);
    },
  );

  it("shades a table by a black ball as the closed form has it: its projected solid angle over pi", async () => {
    // Nusselt's projection: sin^2 of the ball's half angle times the cosine to its middle
    const shade = (r: number) => -((r ** 2 + 1) ** -1.5);
    const traced = await tracedMap(LOOK_SCENES.length + FURNACES.length, PARTS, 16);
    for (const { rgb, law } of mapRings(traced, shade)) for (const c of rgb) expect(c).toBeCloseTo(law, 2);
  });

  it("gathers on its map, place by place, what plain chance finds there: in shade, in light gathered by glass, at the rim", async () => {
    const traced = await tracedMap(LOOK_SCENES.length + FURNACES.length + 1, PARTS, 160);
    const [first, second] = traced.halves;
    const kept = keptGains();
    const seen = { darker: 0, brighter: 0 };
    for (const [i, { words, texels, bare }] of placesOnMap().entries()) {
      const theirs = kept[i];
      const ours = mean(texels.map((texel) => (first[4 * texel + 1] + second[4 * texel + 1]) / 2));
      // what is there cancels in what two halves differ by: only chance is left
      const chance = texels.map((texel) => (first[4 * texel + 1] - second[4 * texel + 1]) / 2);
      const noise = Math.hypot(theirs.error, Math.sqrt(mean(chance.map((v) => v * v)) / chance.length));
      expect(Math.abs(ours - theirs.gain), `${words}: ${ours}, ${theirs.gain}`).toBeLessThan(
        4 * noise + 0.01 * bare,
      );
      expect(noise, `${words}: ${theirs.error} of the noise is the twin's`).toBeLessThan(0.06 * bare);
      if (theirs.gain < -0.15 * bare) seen.darker++;
      if (theirs.gain > 0.1 * bare) seen.brighter++;
    }
    expect(seen.darker).toBeGreaterThan(1);
    expect(seen.brighter).toBeGreaterThan(0);
  });

  it("sketches each colour with the index that it sees on average, by the same rays", async () => {
    const { coloured, plain } = await opened().page.evaluate<{ coloured: number[]; plain: number[][] }>(
      `sketchColours(${ALL_SCENES.indexOf(FACETED)})`,
    );
    // of the three, green's has the coverage too
    const expected = coloured.map((_, at) => plain[at % 4 === 3 ? 1 : at % 4][at]);
    expect(coloured).toEqual(expected);
    const apart = coloured.filter((value, at) => Math.abs(value - plain[1][at]) > 1e-3).length;
    expect(apart).toBeGreaterThan(50);
  });

  it("finds structure where there is some", async () => {
    const other = await shaderPicture(1, 11, 8);
    const kept = keptPictures(LOOK_SCENES[2]);
    const theirs = [Array.from(kept[0]), Array.from(kept[1])] as const;
    const { square, error } = structure([other, other], theirs, mean(other));
    expect(square - 3 * error).toBeGreaterThan(SAME ** 2);
  });

  it.each(NOISY)(
    "shows it smoothed, much nearer to the converged picture than what it has gathered: $name",
    async (scene) => {
      const converged = Array.from(keptConverged(scene));
      const squeezed = (picture: Picture) => picture.map((v) => Math.log1p(Math.max(0, v)));
      const error = (picture: Picture) =>
        Math.sqrt(mean(minus(squeezed(picture), squeezed(converged)).map((v) => v ** 2)));
      for (const [samples, share, amiss] of [
        [8, 0.6, 0.03],
        [64, 0.7, SAME],
      ]) {
        const wish = { size: SIZE, of: CONVERGED_OF, seed: 11, samples };
        const both = await opened().page.evaluate<Record<"gathered" | "shown", number[]>>(
          `showScene(${ALL_SCENES.indexOf(scene)}, ${JSON.stringify(wish)})`,
        );
        const [gathered, shown] = [rowsFromTop(both.gathered), rowsFromTop(both.shown)];
        expect(error(shown) / error(gathered), `${samples} samples`).toBeLessThan(share);
        expect(Math.abs(mean(shown) / mean(gathered) - 1), "light lost or made").toBeLessThan(amiss);
      }
    },
  );
});

/** How far the means of parts may be apart where the page is seen through or a lens blurs: noise of both. */
const NEAR = 0.035;
/**
 * Pixels that the shader traces there for each of the twin's, across and down: a light map costs as much for a small picture, and
 * each sample of the picture asks for more of it.
 */
const FINER = 4;

async function seenByShader(seen: Seen): Promise<number[]> {
  const size = FINER * SEEN_SIZE;
  const { behind, lens } = seen;
  const wish = { size, of: size, into: SEEN_SIZE, seed: 5, samples: SAMPLES, behind, lens };
  const halves = await opened().page.evaluate<number[][]>(
    `traceHalves(${sceneNumber(seen)}, ${JSON.stringify(wish)})`,
  );
  // rows begin at the bottom there
  const row = 4 * SEEN_SIZE;
  const rgba = halves[0].map((_, i) => {
    const at = row * (SEEN_SIZE - 1 - Math.floor(i / row)) + (i % row);
    const v = (halves[0][at] + halves[1][at]) / 2;
    // the twin holds each pixel's alpha, which noise takes beyond, within 0 .. 1
    return i % 4 === 3 ? Math.max(0, Math.min(1, v)) : v;
  });
  return seenParts(rgba);
}

function expectSame(ours: readonly number[], theirs: readonly number[]): void {
  ours.forEach((value, i) => {
    const level = i % 4 === 3 ? 1 : 1 + theirs[i];
    expect(Math.abs(value - theirs[i]) / level, `number ${i % 4} of part ${i >> 2}`).toBeLessThan(NEAR);
  });
}

describe("the page behind, seen through the glass", () => {
  it.each(THROUGH.map((seen) => [seen.scene, seen] as const))(
    "shows as much as the twin says: %s",
    async (_, seen) => {
      const theirs = keptSeen(seen);
      // in the middle the glass is neither away nor a wall
      const alphas = theirs.filter((_, i) => i % 4 === 3);
      expect(Math.max(...alphas) - Math.min(...alphas)).toBeGreaterThan(4 * NEAR);
      expectSame(await seenByShader(seen), theirs);
    },
  );
});

describe("a lens", () => {
  it("blurs what the twin's blurs, as far", async () => {
    const theirs = keptSeen(BLURRED);
    expectSame(await seenByShader(BLURRED), theirs);
    expect(Math.max(...keptSeen(SHARP).map((v, i) => Math.abs(v - theirs[i])))).toBeGreaterThan(2 * NEAR);
  });
});

/** So that the compiler asks for a new kind. */
const LIGHT_KINDS = { uniform: true, setting: true, picture: true } satisfies Record<Light["kind"], true>;

describe("the shared scenes", () => {
  it("have between them each finish, dispersion and none", () => {
    const finishes = LOOK_SCENES.flatMap(({ make }) => [...make().roughness]);
    expect(finishes).toEqual(expect.arrayContaining(Object.values(ROUGHNESS)));
    expect(new Set(LOOK_SCENES.map(({ hasDispersion }) => hasDispersion)).size).toBe(2);
  });

  it("have, with those whose answer is known otherwise, each body and light, and each switch of the shader both ways", () => {
    const scenes = [...LOOK_SCENES, ...FURNACES, ...SHADES].map(({ make }) => make());
    const bodies = new Set<number>(scenes.flatMap(({ designs }) => designs.map(({ kind }) => kind)));
    expect([...bodies].sort((a, b) => a - b)).toEqual(Object.keys(BODIES).map(Number));
    expect(new Set(scenes.map(({ light }) => light.kind))).toEqual(new Set(Object.keys(LIGHT_KINDS)));
    const defines = scenes.map((scene) => packScene(scene, DEFAULT_OPTIONS).defines);
    for (const name of Object.keys(defines[0]).filter((name) => !(name in LIMIT_DEFINES)))
      expect(new Set(defines.map((each) => each[name])).size, name).toBeGreaterThan(1);
    // smooth, rough and dry, rough and wet
    expect(new Set(defines.map(({ ROUGH }) => ROUGH)).size).toBe(3);
  });
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

  it.each(ALL_SEEN.map((seen) => [`${seen.scene}, ${seen.behind}`, seen] as const))(
    "are what the twin sees without the page behind, and through a lens: %s",
    (_, seen) => {
      expectSame(twinParts(seen, SEEN_AGAIN, 7), keptSeen(seen));
    },
  );

  it("and what plain chance has found on a table is what it finds", () => {
    for (const [i, { words, gain, bare }] of placesOnMap().entries()) {
      const [kept, now] = [keptGains()[i], gain(12_000, 99 + i)];
      expect(Math.abs(now.gain - kept.gain), words).toBeLessThan(
        4 * Math.hypot(now.error, kept.error) + 0.01 * bare,
      );
    }
  });
});
