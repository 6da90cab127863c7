import { describe, expect, it } from "vitest";
import { LIGHT_SETTINGS } from "../../src/core/optics/light-settings.ts";
import type { Light } from "../../src/core/optics/lights.ts";
import { MATERIALS } from "../../src/core/optics/materials.ts";
import { makeScene, putOnTable, type Scene } from "../../src/core/optics/scene.ts";
import { Accumulator } from "../../src/render/accumulator.ts";
import { areaAt, blindStepsAt, LightMap, mapPassesDue } from "../../src/render/light-map.ts";
import { DEFAULT_OPTIONS, packScene } from "../../src/render/pack-scene.ts";
import {
  COLOURED_SKETCHES,
  halfOfPass,
  samplesOfHalves,
  sketchOfHalves,
  soFar,
} from "../../src/render/pass.ts";
import { anyContext } from "./any-context.ts";

const lit = (turnRad: number): Light => ({
  kind: "setting",
  setting: LIGHT_SETTINGS["north-window"],
  turnRad,
});

const onPaper = (h = 0.9, turnRad = 0, hasRing = false): Scene => {
  const planes = [{ n: [1, 0, 0] as const, h }];
  const scene = makeScene({
    piece: { diameterMm: 30, glass: "borosilicate" },
    planes,
    light: lit(turnRad),
  });
  return putOnTable(scene, [0, 0, 1], -1, { material: MATERIALS.paper, radiusMm: 15 }, hasRing);
};

describe("a light map", () => {
  const pixels = 400 * 400;
  const mapOf = (scene: Scene, others: readonly LightMap[], change = {}) =>
    LightMap.make(
      anyContext(),
      packScene(scene, { ...DEFAULT_OPTIONS, ...change }),
      pixels,
      others,
      "card",
      1,
    );
  const first = mapOf(onPaper(), []);

  it("goes on for the same piece in the same light, whatever is seen past it", () => {
    expect(mapOf(onPaper(), [first], { behind: "light" })).toBe(first);
  });

  it.each([
    ["another facet", onPaper(0.89), {}],
    ["another light", onPaper(0.9, 0.1), {}],
    ["a ring", onPaper(0.9, 0, true), {}],
    ["longer paths", onPaper(), { maxMeetings: 64 }],
  ])("begins anew for %s", (_, scene, change) => {
    expect(mapOf(scene, [first], change)).not.toBe(first);
  });

  it.each(["card", "software"] as const)(
    "is ahead of its picture, and then costs one pass a pass: %s",
    (by) => {
      let now = 0;
      for (let passes = 0; passes < 100; passes++) {
        for (let due = mapPassesDue(now, passes, by); due > 0; due--) now++;
        expect(now).toBeGreaterThan(passes);
        expect(now).toBeLessThanOrEqual(passes + 33);
      }
      expect(now).toBeLessThanOrEqual(133);
      // another eye: what is there is enough
      expect(mapPassesDue(now, 0, by)).toBe(0);
      expect(mapPassesDue(now, 90, by)).toBe(0);
    },
  );

  it("has all of its sketch before a coloured one begins, and stays for as long: its colours are read from one map", () => {
    const map = mapOf(onPaper(), []);
    const picture = new Accumulator(anyContext(), 4, 4);
    const gained = (): number => {
      const before = map.sums.passes;
      for (let due = map.due(picture); due > 0; due--) map.sums.endPass();
      return map.sums.passes - before;
    };
    // while an eye moves it gains a pass a picture as ever
    picture.restart(COLOURED_SKETCHES);
    expect(gained()).toBe(1);
    picture.restart(COLOURED_SKETCHES, true);
    const each = Array.from({ length: COLOURED_SKETCHES }, () => {
      const now = gained();
      picture.endPass();
      return now;
    });
    expect(each).toEqual([7, 0, 0, 0, 0, 0]);
    expect(gained()).toBeGreaterThan(0);
  });

  it("goes on while an eye moves, whose pictures never get far, until it shows something", () => {
    let now = 0;
    for (let frame = 0; frame < 40; frame++) now += mapPassesDue(now, 0, "card");
    expect(now).toBe(17);
  });

  it.each([0, 1, 8])(
    "has halves of which neither is read for the other (passes of a sketch: %i)",
    (sketches) => {
      for (let passes = sketches === 1 ? 6 : 2; passes < 60; passes++)
        for (const half of [0, 1] as const) expect(soFar(half, passes, sketches)[0]).toBe(half);
      // with nothing yet, nothing is read
      expect(soFar(0, 0, sketches)[1]).toBe(0);
    },
  );

  it.each([
    [1, [9, 17, 25, 33]],
    [8, [2, 4, 8, 16, 24, 32, 40]],
    [0, [2, 4, 8, 16, 24, 32, 40]],
  ])(
    "is never read as it is: its first pass is smoothed blindly, and from then on as soon as both halves have as much (passes of a sketch: %i)",
    (sketches, equalAt) => {
      const at: number[] = [];
      for (let passes = 1; passes <= 40; passes++) {
        const blind = blindStepsAt(passes, at.at(-1) ?? 0, sketches);
        if (blind === null) continue;
        at.push(passes);
        expect(blind).toBe(passes === 1 ? 3 : passes < 17 ? 1 : 0);
        if (passes === 1) continue;
        const [first, second] = (passes > sketches ? samplesOfHalves : sketchOfHalves)(passes, sketches);
        expect(first).toBe(second);
      }
      expect(at).toEqual([1, ...equalAt]);
    },
  );

  it("is smoothed more rarely the more it holds, each time with an eighth more at least", () => {
    const at = [1];
    for (let passes = 2; passes <= 1025; passes++)
      if (blindStepsAt(passes, at[at.length - 1], 1) !== null) at.push(passes);
    expect(at.slice(-3).every((passes, k) => k === 0 || passes >= 1.125 * at[at.length - 4 + k])).toBe(true);
    for (let k = 1; k < at.length; k++)
      expect(at[k] - at[k - 1]).toBeLessThanOrEqual(Math.max(8, at[k - 1] / 8 + 8));
    expect(at.length).toBeLessThan(32);
  });

  it.each([0, 1, 8])(
    "gains close to the piece each pass and beyond it fewer, both halves as many (passes of a sketch: %i)",
    (sketches) => {
      const side = 356;
      let texels = 0;
      const beyond: [number, number] = [0, 0];
      for (let passes = 0; passes < sketches + 128; passes++) {
        const { x, y, width, height } = areaAt(passes, sketches, side);
        texels += width * height;
        // a square round the middle
        expect([2 * x + width, y, height]).toEqual([side, x, width]);
        if (passes < 16) expect(width).toBe(side);
        if (passes >= sketches && width === side) beyond[halfOfPass(passes, sketches)]++;
        const [first, second] = samplesOfHalves(passes + 1, sketches);
        if (first === second) expect(beyond[0]).toBe(beyond[1]);
      }
      expect(beyond[0] / 64).toBeGreaterThan(0.15);
      expect(beyond[0] / 64).toBeLessThan(0.3);
      // whole rays
      if (sketches > 0) expect(beyond[0] % 4).toBe(0);
      expect(texels / ((sketches + 128) * side ** 2)).toBeLessThan(0.65);
    },
  );

  it("is smoothed by its halves before a picture's first ray has all its wavelengths", () => {
    for (const by of ["card", "software"] as const) expect(mapPassesDue(0, 4, by)).toBeGreaterThanOrEqual(9);
  });
});

describe("how far a map reaches", () => {
  const reachIn = (light: Light): number => {
    const scene = makeScene({ piece: { diameterMm: 30, glass: "borosilicate" }, planes: [], light });
    const table = { material: MATERIALS.paper, radiusMm: 15 };
    return putOnTable(scene, [0, 0, 1], -1, table).tabletop?.reach ?? 0;
  };

  it("is where a ball on the table hides a hundredth of even light: its projected solid angle is pi h / d^3", () => {
    // Nusselt's projection: sin^2 of the ball's half angle times the cosine to its middle, (1 / d^2) (1 / d) with d^2 = r^2 + 1
    const hidden = (r: number) => (r ** 2 + 1) ** -1.5;
    const reach = reachIn({ kind: "uniform" });
    expect(hidden(reach)).toBeLessThan(0.01);
    expect(hidden(reach - 1)).toBeGreaterThan(0.01);
  });

  it("is farther where the light stands low", () => {
    const lamp = LIGHT_SETTINGS["one-lamp"].panels[0];
    const dark = [0.001, 0.001, 0.001] as const;
    const turned = { towards: [0, 0.17, 0.985], right: [1, 0, 0], up: [0, 0.985, -0.17] } as const;
    const low = {
      ...LIGHT_SETTINGS["one-lamp"],
      zenith: dark,
      horizon: dark,
      panels: [{ ...lamp, ...turned }],
    };
    expect(reachIn({ kind: "setting", setting: low, turnRad: 0 })).toBeGreaterThan(5);
  });
});
