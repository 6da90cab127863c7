import { describe, expect, it } from "vitest";
import { cameraFrom } from "../../../src/core/optics/camera.ts";
import { lostLight } from "../../../src/core/optics/lost-light.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { clearPiece, type randomPlanes, tieredPlanes } from "./helpers.ts";

const camera = cameraFrom(20, 60, 10, 14);
const sceneOf = (planes: ReturnType<typeof randomPlanes>) =>
  makeScene({ piece: clearPiece(), planes, light: { kind: "uniform" } });

describe("the light that a cap leaves out", () => {
  it("is all that enters when paths may only enter", () => {
    // 1 - Fresnel, between head-on (0.964) and the rim's average.
    const lost = lostLight(sceneOf([]), camera, 1);
    expect(lost).toBeGreaterThan(0.85);
    expect(lost).toBeLessThan(0.965);
  });

  it("shrinks as the cap rises", () => {
    const scene = sceneOf(tieredPlanes(8));
    const lost = [1, 2, 4, 8, 32, 256].map((cap) => lostLight(scene, camera, cap));
    for (let k = 1; k < lost.length; k++) expect(lost[k]).toBeLessThanOrEqual(lost[k - 1]);
    expect(lost[5]).toBeLessThan(0.05);
  });

  it("is nothing in a ball that all light leaves soon, and where no path meets the piece", () => {
    expect(lostLight(sceneOf([]), camera, 256)).toBeLessThan(1e-6);
    expect(lostLight(sceneOf([]), { ...camera, forward: [1, 0, 0] }, 256)).toBe(0);
  });
});
