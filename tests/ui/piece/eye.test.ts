/** How the view comes from one place to another, and that it does so at once for a person who wants no motion. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { FIRST_EXAMPLE } from "../../../src/ui/first-example.ts";
import { HOME, LOOKS } from "../../../src/ui/piece/camera.ts";
import { createEye } from "../../../src/ui/piece/eye.ts";
import { createStudio } from "../../../src/ui/studio.ts";

const studio = createStudio({ plan: FIRST_EXAMPLE });
const eye = createEye(studio);
let frames: FrameRequestCallback[];
const system = { matches: false };
/** Shows one frame at a time of milliseconds. @returns how many were waiting */
function frameAt(ms: number): number {
  const waiting = frames.splice(0);
  for (const show of waiting) show(ms);
  return waiting.length;
}

beforeEach(() => {
  frames = [];
  system.matches = false;
  vi.stubGlobal("requestAnimationFrame", (show: FrameRequestCallback) => frames.push(show));
  vi.stubGlobal("window", { matchMedia: () => system });
  studio.getState().prefer({ motion: "system" });
  eye.setView(HOME);
});
afterEach(() => vi.unstubAllGlobals());

describe("the view", () => {
  it("glides where motion is welcome, and arrives", () => {
    eye.lookFrom("back");
    frameAt(0);
    frameAt(60);
    const between = eye.getState().view.elevationDeg;
    expect(between).not.toBe(HOME.elevationDeg);
    expect(between).not.toBe(LOOKS.back.elevationDeg);
    for (let ms = 120; frameAt(ms) > 0; ms += 60);
    expect(eye.getState().view).toEqual(LOOKS.back);
  });

  it.each(["the system", "the settings"])("is there at once where %s asks for no motion", (who) => {
    if (who === "the system") system.matches = true;
    else studio.getState().prefer({ motion: "reduced" });
    eye.openingTurn();
    expect(frames).toHaveLength(0);
    eye.glideTo(LOOKS.side);
    expect(frames).toHaveLength(0);
    expect(eye.getState().view).toEqual(LOOKS.side);
  });

  it("turns once all round when the page opens, never again, and stops when the hand takes hold", () => {
    eye.openingTurn();
    frameAt(0);
    frameAt(3000);
    const turned = eye.getState().view;
    expect(turned.azimuthDeg).toBeLessThan(HOME.azimuthDeg - 30);
    eye.setView(turned);
    frameAt(4000);
    expect(eye.getState().view).toBe(turned);
    eye.openingTurn();
    expect(frames).toHaveLength(0);
  });
});
