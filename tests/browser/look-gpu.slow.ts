/** The shader is held to its TypeScript twin: the same scenes, twice each with different seeds, in a real browser. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { cameraFrom } from "../../src/core/optics/camera.ts";
import { renderRows } from "../../src/core/optics/picture.ts";
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG } from "../../src/render/view.ts";
import { LOOK_SCENES, type LookScene } from "./look-scenes.ts";
import { type OpenPage, openPage } from "./support.ts";

const SIZE = 96;
const BLOCKS = 8;
/** Relative difference, of the whole and of its parts, that counts as the same picture. */
const SAME = 0.01;

/** Means over BLOCKS x BLOCKS parts of the picture for red, green and blue; `value` takes column, row from the bottom, channel. */
function blockMeans(value: (x: number, y: number, channel: number) => number): number[] {
  const edge = SIZE / BLOCKS;
  const means = new Array<number>(3 * BLOCKS * BLOCKS).fill(0);
  for (let y = 0; y < SIZE; y++)
    for (let x = 0; x < SIZE; x++)
      for (let channel = 0; channel < 3; channel++) {
        const block = Math.floor(y / edge) * BLOCKS + Math.floor(x / edge);
        means[3 * block + channel] += value(x, y, channel) / edge ** 2;
      }
  return means;
}

function twinBlocks(scene: LookScene, seed: number): number[] {
  const camera = cameraFrom(scene.from[0], scene.from[1], DEFAULT_DISTANCE, DEFAULT_FIELD_DEG);
  const { twinSamples: samples, hasDispersion: dispersion } = scene;
  const settings = { size: SIZE, samples, seed, dispersion, bounces: null };
  const rgb = renderRows(scene.make(), camera, settings, 0, SIZE, { lost: 0, meetings: 0 });
  return blockMeans((x, y, channel) => rgb[3 * ((SIZE - 1 - y) * SIZE + x) + channel]);
}

async function shaderBlocks(page: OpenPage, k: number, seed: number): Promise<number[]> {
  const { rgba } = await page.page.evaluate<{ rgba: number[] }>(`traceScene(${k}, ${SIZE}, ${seed})`);
  return blockMeans((x, y, channel) => rgba[4 * (y * SIZE + x) + channel]);
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
const middle = (a: readonly number[], b: readonly number[]): number[] => a.map((v, i) => (v + b[i]) / 2);
/** Mean square of what chance leaves in the middle of two independent runs. */
const noise = (a: readonly number[], b: readonly number[]): number =>
  mean(a.map((v, i) => ((v - b[i]) / 2) ** 2));

let opened: OpenPage;
beforeAll(async () => {
  opened = await openPage("tests/browser/look-page.html");
  await opened.page.waitForFunction("'traceScene' in window");
});
afterAll(() => opened.close());

describe("the shader against its twin", () => {
  it.each(LOOK_SCENES.map((scene, k) => [scene.name, k] as const))("sees the same: %s", async (_, k) => {
    const shader = [await shaderBlocks(opened, k, 11), await shaderBlocks(opened, k, 12)] as const;
    const twin = [twinBlocks(LOOK_SCENES[k], 21), twinBlocks(LOOK_SCENES[k], 22)] as const;
    const [ours, theirs] = [middle(...shader), middle(...twin)];
    const level = mean(theirs);
    expect(Math.abs(mean(ours) - level) / level).toBeLessThan(SAME);

    // What the parts differ by beyond the noise of both is structure.
    const difference = mean(ours.map((v, i) => (v - theirs[i]) ** 2));
    const structure = Math.sqrt(Math.max(0, difference - noise(...shader) - noise(...twin)));
    expect(structure / level).toBeLessThan(SAME);
  });

  it("reports no errors of its own", () => {
    expect(opened.errors).toEqual([]);
  });
});
