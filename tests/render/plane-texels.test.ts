import { expect, it } from "vitest";
import type { Plane } from "../../src/core/geometry/plane.ts";
import { fieldAt } from "../../src/core/measure/caps.ts";
import { planeTexels, ROW_TEXELS } from "../../src/render/plane-texels.ts";
import { solved } from "../../src/state/derived.ts";
import { EXAMPLES } from "../../src/ui/examples.ts";
import { chance, randomDirection } from "../core/optics/helpers.ts";

const four = (planes: readonly Plane[]): Float64Array =>
  Float64Array.from(planes.flatMap(({ n, h }) => [...n, h]));

it.each(EXAMPLES.map((plan) => [plan.name, plan] as const))(
  "lists for any place of the ball the planes of %s that cut it away",
  (_, plan) => {
    const { planes } = solved(plan);
    const texels = planeTexels(four(planes));
    const random = chance(11);
    let cut = 0;
    for (let i = 0; i < 2000; i++) {
      const d = randomDirection(random);
      const [from, to] = texels.subarray(4 * fieldAt(...d));
      const listed = Array.from({ length: to - from }, (_, k) =>
        texels.subarray(4 * (from + k), 4 * (from + k) + 4),
      );
      for (const { n, h } of planes) {
        if (n[0] * d[0] + n[1] * d[1] + n[2] * d[2] <= h) continue;
        cut++;
        const own = [...n, h].map(Math.fround);
        expect(listed.some((plane) => own.every((v, k) => v === plane[k]))).toBe(true);
      }
    }
    expect(cut).toBeGreaterThan(0);
  },
);

it("fills whole rows, a power of two of them, with or without planes", () => {
  for (const planes of [[], solved(EXAMPLES[0]).planes]) {
    const rows = planeTexels(four(planes)).length / (4 * ROW_TEXELS);
    expect(Number.isInteger(Math.log2(rows))).toBe(true);
  }
});
