import { describe, expect, it } from "vitest";
import { addScaled, dot, normalize, scale, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { plainMaterial } from "../../../src/core/optics/materials.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { RESTS } from "../../../src/core/optics/rest.ts";
import { hitRing, meetsRing, RING, RING_RGB } from "../../../src/core/optics/ring.ts";
import { makeScene, putOnTable, type Scene } from "../../../src/core/optics/scene.ts";
import type { Tabletop } from "../../../src/core/optics/tabletop.ts";
import { chance, clearPiece, randomDirection, tieredPlanes } from "./helpers.ts";

const FLAT = { n: [0, -1, 0] as Vec3, h: 0.7 };

function onRing(
  down: Vec3,
  planes: Parameters<typeof makeScene>[0]["planes"] = [],
): Scene & { tabletop: Tabletop } {
  const scene = makeScene({ piece: clearPiece(1.5), planes, light: { kind: "uniform" } });
  const floor = planes.includes(FLAT) ? -FLAT.h : -1;
  const made = putOnTable(
    scene,
    scale(down, -1),
    floor,
    { material: plainMaterial([1, 1, 1]), radiusMm: 15 },
    true,
  );
  if (!made.tabletop) throw new Error("no tabletop");
  return { ...made, tabletop: made.tabletop };
}

/** Whether p is in the tube, by its definition. */
function isInTube({ up, height }: Tabletop, p: Vec3): boolean {
  const along = dot(up, p);
  const r = Math.sqrt(Math.max(0, dot(p, p) - along * along));
  return along > height && along < height + RING.high && r > RING.inner && r < RING.outer;
}

/** Depth to which p lies within the body; negative outside. */
function depthOf({ planes, planeCount }: Scene, p: Vec3): number {
  let depth = 1 - Math.sqrt(dot(p, p));
  for (let i = 0; i < planeCount; i++) {
    const n: Vec3 = [planes[4 * i], planes[4 * i + 1], planes[4 * i + 2]];
    depth = Math.min(depth, planes[4 * i + 3] - dot(n, p));
  }
  return depth;
}

describe("a ring that the piece lies on", () => {
  it("holds a ball where its rim's circle goes round it", () => {
    const { tabletop } = onRing([0, -1, 0]);
    // Pythagoras: the inner rim lies sqrt(1 - r^2) below the centre
    expect(-(tabletop.height + RING.high)).toBeCloseTo(Math.sqrt(1 - RING.inner ** 2), 12);
  });

  it("holds a flat that is wider than itself on its rim, and lets a narrower one hang in its hole", () => {
    const { tabletop } = onRing(FLAT.n, [FLAT]);
    expect(-(tabletop.height + RING.high)).toBeCloseTo(FLAT.h, 12);
    const narrow = { n: FLAT.n, h: 0.97 };
    const other = onRing(FLAT.n, [narrow]).tabletop;
    expect(-(other.height + RING.high)).toBeCloseTo(Math.sqrt(1 - RING.inner ** 2), 12);
  });

  it("touches a cut piece however that lies and is nowhere within it, by a grid of the tube", () => {
    const random = chance(4);
    for (let k = 0; k < 6; k++) {
      const scene = onRing(randomDirection(random), [...tieredPlanes(9)]);
      const { tabletop } = scene;
      let deepest = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < 3600; i++)
        for (const r of [RING.inner, (RING.inner + RING.outer) / 2, RING.outer]) {
          const a = (2 * Math.PI * i) / 3600;
          const rim = scale(tabletop.up, tabletop.height + RING.high);
          const beside = addScaled(
            addScaled(rim, tabletop.across, r * Math.cos(a)),
            tabletop.along,
            r * Math.sin(a),
          );
          deepest = Math.max(deepest, depthOf(scene, beside));
        }
      expect(deepest).toBeLessThan(1e-9);
      expect(deepest).toBeGreaterThan(-1e-4);
    }
  });

  it("stands in a way exactly where small steps along it come into the tube", () => {
    const random = chance(7);
    const { tabletop } = onRing(normalize([0.2, -0.9, 0.4]));
    let [met, grazes] = [0, 0];
    for (let k = 0; k < 3000; k++) {
      const middle = scale(tabletop.up, tabletop.height + RING.high * nextRandom(random));
      const p = addScaled(middle, randomDirection(random), 1.2 * nextRandom(random));
      const d = randomDirection(random);
      const tMax = 2 * nextRandom(random);
      const steps = 4000;
      let hits = 0;
      for (let i = 0; i < steps; i++)
        if (isInTube(tabletop, addScaled(p, d, (tMax * (i + 0.5)) / steps))) hits++;
      if (meetsRing(tabletop, p, d, tMax)) {
        met++;
        // a way that only just grazes it is missed by steps
        if (hits === 0) grazes++;
      } else expect(hits).toBe(0);
    }
    expect(met).toBeGreaterThan(300);
    expect(grazes).toBeLessThan(0.005 * met);
  });

  it("is met first where small steps along a way first come into it, and faces that way", () => {
    const random = chance(8);
    const { tabletop } = onRing(normalize([0.2, -0.9, 0.4]));
    const { up, height } = tabletop;
    let [met, wrong] = [0, 0];
    for (let k = 0; k < 1000; k++) {
      const middle = scale(up, height + RING.high / 2);
      const p = addScaled(middle, randomDirection(random), 1.2);
      const d = normalize(addScaled(addScaled(middle, randomDirection(random), 0.5), p, -1));
      const hit = hitRing(tabletop, p, d, 4);
      if (!hit) continue;
      met++;
      const within = (t: number) => isInTube(tabletop, addScaled(p, d, t));
      const isFirst = Array.from({ length: 400 }, (_, i) => (hit.t - 1e-6) * ((i + 0.5) / 400)).every(
        (t) => !within(t),
      );
      const q = addScaled(p, d, hit.t);
      // a hair along the normal is outside, a hair against it within
      const faces =
        !isInTube(tabletop, addScaled(q, hit.n, 1e-6)) && isInTube(tabletop, addScaled(q, hit.n, -1e-6));
      if (!(isFirst && faces && dot(hit.n, d) < 0 && Math.abs(dot(hit.n, hit.n) - 1) < 1e-9)) wrong++;
    }
    expect(met).toBeGreaterThan(100);
    // where it is met within a hair of its own border
    expect(wrong).toBeLessThan(0.01 * met);
  });

  it("throws back of even light what its wood does, hides the table behind it, and shades it, with a background and without", () => {
    const scene = onRing(RESTS.side.down);
    const bare = { ...scene, tabletop: { ...scene.tabletop, hasRing: false } };
    const camera = cameraFrom(0, 12, 10, 14, scene.tabletop.up);
    const towards = { ...camera };
    const settings = { size: 24, samples: 16, seed: 3, dispersion: false, bounces: null };
    const tally = () => ({ lost: 0, meetings: 0 });
    const rows = renderRows(scene, towards, settings, 0, 24, tally());
    const without = renderRows(bare, towards, settings, 0, 24, tally());
    const least = (values: Float32Array) => values.reduce((a, b) => Math.min(a, b), 9);
    // a white table and clear glass in even light are 1 all over, so all that is dark is the ring's: from outside its wall sees
    // that light, but for what the ring itself takes from the table before it
    expect(least(without)).toBeGreaterThan(0.999999);
    const reds = Array.from({ length: rows.length / 3 }, (_, i) => rows[3 * i]);
    const ofWall = reds.filter((red) => red < 1.1 * RING_RGB[0]);
    expect(ofWall.length).toBeGreaterThan(3);
    expect(Math.max(...ofWall)).toBeLessThan(RING_RGB[0] * (1 + 1e-9));
    expect(Math.max(...ofWall)).toBeGreaterThan(0.85 * RING_RGB[0]);
    const cutOut = renderRows(scene, towards, { ...settings, transparent: true }, 0, 24, tally());
    let dark = 0;
    for (let i = 0; i < cutOut.length; i += 4)
      if (cutOut[i + 3] > 0.999 && cutOut[i] < 1.01 * RING_RGB[0]) dark++;
    expect(dark).toBeGreaterThan(3);
  });
});
