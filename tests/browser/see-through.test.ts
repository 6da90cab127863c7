/** What the shader lets through to the page behind, and its lens, are held to the twin: traced in Node, the same scenes and views. */
import { describe, expect, it } from "vitest";
import { cameraFrom, type Lens } from "../../src/core/optics/camera.ts";
import { renderRows } from "../../src/core/optics/picture.ts";
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG } from "../../src/render/view.ts";
import { LOOK_SCENES } from "./look-scenes.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

const SIZE = 24;
const SAMPLES = 128;
/** Parts across and down, and how far their means may be apart: noise of both. */
const [PARTS, NEAR] = [4, 0.035];

const opened = sharedThing(
  async () => {
    const open = await openPage("tests/browser/look-page.html");
    await open.page.waitForFunction("'traceScene' in window");
    return open;
  },
  ({ close }) => close(),
  ({ errors }) => expect(errors).toEqual([]),
);

/** Means of each of four numbers over PARTS x PARTS parts. `isUp`: rows begin at the bottom. */
function parts(rgba: ArrayLike<number>, isUp: boolean): number[] {
  const edge = SIZE / PARTS;
  const means = new Array<number>(4 * PARTS * PARTS).fill(0);
  for (let i = 0; i < rgba.length; i++) {
    const pixel = Math.floor(i / 4);
    const row = Math.floor(pixel / SIZE);
    const y = isUp ? SIZE - 1 - row : row;
    means[4 * (Math.floor(y / edge) * PARTS + Math.floor((pixel % SIZE) / edge)) + (i % 4)] +=
      rgba[i] / edge ** 2;
  }
  return means;
}

const sceneNamed = (name: string): number => LOOK_SCENES.findIndex((scene) => scene.name === name);

async function ofShader(k: number, how: { behind: string; lens?: Lens }): Promise<number[]> {
  const wish = { size: SIZE, of: SIZE, seed: 5, samples: SAMPLES, own: false, ...how };
  const rgba = await opened().page.evaluate<number[]>(`traceScene(${k}, ${JSON.stringify(wish)})`);
  // the twin holds each pixel's alpha, which noise takes beyond, within 0 .. 1
  return parts(
    rgba.map((v, i) => (i % 4 === 3 ? Math.max(0, Math.min(1, v)) : v)),
    true,
  );
}

function ofTwin(k: number, transparent: boolean, lens?: Lens): number[] {
  const { make, from, up, hasDispersion } = LOOK_SCENES[k];
  const pinhole = cameraFrom(...from, DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, up);
  const settings = {
    size: SIZE,
    samples: SAMPLES,
    seed: 6,
    dispersion: hasDispersion,
    bounces: null,
    transparent: true,
  };
  const camera = lens ? { ...pinhole, lens } : pinhole;
  const rows = renderRows(make(), camera, { ...settings, transparent }, 0, SIZE, { lost: 0, meetings: 0 });
  if (transparent) return parts(rows, false);
  return parts(
    Array.from({ length: 4 * SIZE * SIZE }, (_, i) => (i % 4 === 3 ? 1 : rows[3 * (i >> 2) + (i % 4)])),
    false,
  );
}

function expectSame(ours: readonly number[], theirs: readonly number[]): void {
  ours.forEach((value, i) => {
    const level = i % 4 === 3 ? 1 : 1 + theirs[i];
    expect(Math.abs(value - theirs[i]) / level, `number ${i % 4} of part ${i >> 2}`).toBeLessThan(NEAR);
  });
}

const LENS: Lens = { radius: 1, focus: 6 };

describe("the page behind, seen through the glass", () => {
  it.each(["faceted by a window", "opaque core off centre", "on its back on a linen table by a window"])(
    "shows as much as the twin says: %s",
    async (name) => {
      const k = sceneNamed(name);
      const theirs = ofTwin(k, true);
      // in the middle the glass is neither away nor a wall
      const alphas = theirs.filter((_, i) => i % 4 === 3);
      expect(Math.max(...alphas) - Math.min(...alphas)).toBeGreaterThan(4 * NEAR);
      expectSame(await ofShader(k, { behind: "nothing" }), theirs);
    },
  );
});

describe("a lens", () => {
  it("blurs what the twin's blurs, as far", async () => {
    const k = sceneNamed("on its back on a linen table by a window");
    const theirs = ofTwin(k, false, LENS);
    expectSame(await ofShader(k, { behind: "light", lens: LENS }), theirs);
    const sharp = ofTwin(k, false);
    expect(Math.max(...sharp.map((v, i) => Math.abs(v - theirs[i])))).toBeGreaterThan(2 * NEAR);
  });
});
