import { describe, expect, it } from "vitest";
import { addScaled, cross, dot, normalize, scale, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { bodyNormal, enterBody, pointOnBody, SKIN } from "../../../src/core/optics/body.ts";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { roundedNormal } from "../../../src/core/optics/edges.ts";
import { renderRows } from "../../../src/core/optics/picture.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { chance, clearPiece, randomDirection, tieredPlanes } from "./helpers.ts";

const RADIUS = 0.02;
const made = (planes: Parameters<typeof makeScene>[0]["planes"], edgeMm = 15 * RADIUS) =>
  makeScene({
    piece: { ...clearPiece(), diameterMm: 30 },
    planes,
    edgeMm,
    light: { kind: "uniform" },
  });

const THETA = (50 * Math.PI) / 180;
const A = { n: [0, 0, 1] as Vec3, h: 0.7 };
const B = { n: [Math.sin(THETA), 0, Math.cos(THETA)] as Vec3, h: 0.7 };
/** Straight onto the edge. */
const AT = scale(normalize(addScaled(A.n, B.n, 1)), -1);
/** Where both faces are. */
const EDGE: Vec3 = [0.7 * Math.tan(THETA / 2), 0.1, 0.7];

const angleBetween = (a: Vec3, b: Vec3) => Math.atan2(Math.hypot(...cross(a, b)), dot(a, b));

describe("edges that polishing has rounded", () => {
  const body = made([A, B]);
  /** On the first face, so far from the edge. */
  const normalAt = (beside: number) => roundedNormal(body, 0, addScaled(EDGE, [-1, 0, 0], beside), A.n, AT);

  it("turn the normal from where a cylinder would touch the face to halfway on the edge, evenly from both sides", () => {
    // a cylinder between two planes touches them r tan(theta / 2) from where they meet
    const width = RADIUS * Math.tan(THETA / 2);
    expect(angleBetween(normalAt(1.001 * width), A.n)).toBe(0);
    expect(angleBetween(normalAt(0.98 * width), A.n)).toBeGreaterThan(0.002);
    expect(angleBetween(normalAt(0), A.n)).toBeCloseTo(THETA / 2, 9);
    let last = THETA / 2 + 1e-9;
    for (let k = 0; k <= 20; k++) {
      const turned = angleBetween(normalAt((k / 20) * width), A.n);
      expect(turned).toBeLessThanOrEqual(last);
      last = turned;
    }
    expect(angleBetween(roundedNormal(body, 1, EDGE, B.n, AT), normalAt(0))).toBeLessThan(1e-9);
  });

  it("do so between a face and the skin too", () => {
    const rim: Vec3 = [-Math.sqrt(1 - 0.49), 0, 0.7];
    const down: Vec3 = normalize([0.5, 0, -1]);
    const onFace = roundedNormal(body, 0, rim, A.n, down);
    const onSkin = roundedNormal(body, SKIN, rim, rim, down);
    expect(angleBetween(onFace, onSkin)).toBeLessThan(1e-9);
    expect(angleBetween(onFace, A.n)).toBeCloseTo(angleBetween(rim, A.n) / 2, 9);
  });

  it("are sharp where nothing is asked for", () => {
    expect(roundedNormal(made([A, B], 0), 0, EDGE, A.n, AT)).toBe(A.n);
  });

  it("never turn a ray away from where it is or through the face", () => {
    const cut = made([...tieredPlanes(9)], 6);
    const random = chance(5);
    let [turned, wrong] = [0, 0];
    for (let k = 0; k < 20_000; k++) {
      const o = scale(randomDirection(random), 3);
      const d = normalize(addScaled(scale(o, -1), randomDirection(random), nextRandom(random)));
      const hit = enterBody(cut, o, d);
      if (!hit) continue;
      const p = pointOnBody(cut, o, d, hit.t, hit.surface);
      const n = bodyNormal(cut, hit.surface, p);
      const round = roundedNormal(cut, hit.surface, p, n, d);
      const mirrored = addScaled(d, round, -2 * dot(d, round));
      if (!(dot(round, d) < 0 && dot(mirrored, n) > 0 && Math.abs(dot(round, round) - 1) < 1e-9)) wrong++;
      if (dot(round, n) < 0.9999) turned++;
    }
    expect(wrong).toBe(0);
    expect(turned).toBeGreaterThan(1000);
  });

  it("lose and make no light: clear glass in even light is 1 in every pixel", () => {
    const scene = made([...tieredPlanes(9)], 3);
    const settings = { size: 16, samples: 8, seed: 3, dispersion: true, bounces: null };
    const tally = { lost: 0, meetings: 0 };
    const rows = renderRows(scene, cameraFrom(20, 40, 10, 14, [0, 1, 0]), settings, 0, 16, tally);
    for (let i = 0; i < rows.length; i++) expect(rows[i]).toBeCloseTo(1, 6);
  });
});
