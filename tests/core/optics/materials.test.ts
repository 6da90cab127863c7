import { describe, expect, it } from "vitest";
import {
  MATERIALS,
  type MaterialName,
  plainMaterial,
  reflectanceAt,
} from "../../../src/core/optics/materials.ts";
import { nextRandom } from "../../../src/core/optics/random.ts";
import { chance } from "./helpers.ts";

const NAMES = Object.keys(MATERIALS) as MaterialName[];

describe("a table's material", () => {
  it.each(NAMES)("reflects what it says in the mean over a table, and nowhere more than all: %s", (name) => {
    const material = MATERIALS[name];
    const random = chance(3);
    const count = 60_000;
    let [sum, most, least] = [0, 0, 1];
    for (let k = 0; k < count; k++) {
      const at = () => 4000 * (nextRandom(random) - 0.5);
      const rgb = reflectanceAt(material, at(), at());
      sum += rgb[0] / count;
      most = Math.max(most, ...rgb);
      least = Math.min(least, ...rgb);
    }
    expect(Math.abs(sum / material.rgb[0] - 1)).toBeLessThan(0.01);
    expect(most).toBeLessThan(1);
    expect(least).toBeGreaterThan(0);
  });

  it("has a pattern unless it is plain", () => {
    const seen = (material: Parameters<typeof reflectanceAt>[0]) =>
      new Set(Array.from({ length: 20 }, (_, k) => reflectanceAt(material, 0.37 * k, 0.21 * k)[1])).size;
    for (const name of NAMES) expect(seen(MATERIALS[name])).toBeGreaterThan(10);
    expect(seen(plainMaterial([0.3, 0.4, 0.5]))).toBe(1);
  });
});
