/** Grit tables, damage depth and Preston's relation against published values. */
import { describe, expect, it } from "vitest";
import { DAMAGE_GRAINS, DEFAULT_STAGES, damageUm } from "../../src/core/bench/stages/default-stages.ts";
import { GRIT_TABLES, grainOfGrit, gritsOf, sizesOfNumber } from "../../src/core/bench/stages/grits.ts";
import { capVolume, strokesFor } from "../../src/core/bench/stages/strokes.ts";
import { BONDS } from "../../src/core/plan/bonds.ts";
import { DAMAGE, GRITS, PRESTON } from "./bench-values.ts";

describe("grit scales", () => {
  it.each(GRITS)("agree with the published table: $scale ($source; $status)", ({ scale, um }) => {
    for (const [grit, size] of Object.entries(um)) expect(grainOfGrit(scale, Number(grit))).toBe(size);
  });

  it("get finer with the number on every scale, and name their source", () => {
    for (const { sizes, source } of GRIT_TABLES) {
      const ums = sizes.map(([, um]) => um);
      expect(ums).toEqual([...ums].sort((a, b) => b - a));
      expect(source.length).toBeGreaterThan(5);
    }
  });

  it("mean different sizes by one number: 600 is 9.3 to 25.8 um", () => {
    const sizes = sizesOfNumber(600).map((s) => s.um);
    expect(Math.min(...sizes)).toBe(9.3);
    expect(Math.max(...sizes)).toBe(25.8);
    expect(grainOfGrit("mesh", 600)).toBeNull();
    expect(gritsOf("jis")).toContain(1200);
  });
});

describe("damage depth", () => {
  it(`lies within the published 2 to 3 grains (${DAMAGE.source})`, () => {
    expect(DAMAGE_GRAINS).toBeGreaterThanOrEqual(DAMAGE.grains[0]);
    expect(DAMAGE_GRAINS).toBeLessThanOrEqual(DAMAGE.grains[1]);
    expect(damageUm({ id: "x", name: "x", grainUm: 40 })).toBe(100);
    expect(damageUm({ id: "x", name: "x", grainUm: 40, damageUm: 60 })).toBe(60);
  });

  it("follows how the grains are held, unless its depth is stated", () => {
    const stage = { id: "x", name: "x", grainUm: 40 };
    expect((["loose", "bonded", "pad"] as const).map((bond) => damageUm({ ...stage, bond }))).toEqual([
      100, 40, 20,
    ]);
    expect(damageUm({ ...stage, bond: "bonded", damageUm: 7 })).toBe(7);
  });

  // Lambropoulos (2000), From abrasive size to subsurface damage in grinding: 0.3 L^0.68 to 2 L^0.85 um; from memory.
  it.each([15, 45, 90])("lies within the published bounds for bonded grains of %i um", (um) => {
    expect(BONDS.bonded.damageGrains * um).toBeGreaterThan(0.3 * um ** 0.68);
    expect(BONDS.bonded.damageGrains * um).toBeLessThan(2 * um ** 0.85);
  });

  it("is taken off by default stages that halve or more at each step", () => {
    const grains = DEFAULT_STAGES.map((s) => s.grainUm);
    for (const [i, grain] of grains.slice(1).entries()) expect(grain / grains[i]).toBeLessThanOrEqual(0.5);
  });
});

describe(`Preston's relation (${PRESTON.source})`, () => {
  it("gives the textbook rate, and so constant volume a stroke at constant force", () => {
    const { pPa, vMs, kPerPa, nmPerSecond } = PRESTON.example;
    expect(kPerPa * pPa * vMs * 1e9).toBeCloseTo(nmPerSecond, 9);
    // Integrated by steps on a ball: dh/dt = k (F / A) v with A growing as the facet grows.
    const [force, radiusMm] = [5, 15];
    const ratePerSecond = kPerPa * force * vMs * 1e9;
    let [depth, seconds] = [1e-4, 0];
    const step = 2e-5;
    while (depth < 0.5) {
      const middle = depth + step / 2;
      const area = Math.PI * (2 * radiusMm * middle - middle * middle);
      seconds += (step * area) / ratePerSecond;
      depth += step;
    }
    const width = 2 * Math.sqrt(2 * radiusMm * depth - depth * depth);
    const removal = {
      mm3PerStroke: ratePerSecond,
      atRadiusMm: null,
      spread: null,
      tests: 1,
      wear: null,
      discStrokes: 0,
      isGuess: false,
    };
    expect(strokesFor(capVolume(radiusMm, width), removal, null) / seconds).toBeCloseTo(1, 4);
  });
});
