import { describe, expect, it } from "vitest";
import { seeded } from "../../../src/core/bench/chances/chance.ts";
import { capsOf, fieldAt } from "../../../src/core/measure/caps.ts";

/** Directions all over the ball, and those that lie on the borders of fields: axes, diagonals, the plane between the halves. */
function directions(random: () => number): number[][] {
  const round = Array.from({ length: 4000 }, () => [0, 1, 2].map(() => 2 * random() - 1));
  const level = Array.from({ length: 200 }, () => [2 * random() - 1, 2 * random() - 1, 0]);
  const neat = [-1, 0, 1].flatMap((x) => [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((z) => [x, y, z])));
  return [...round, ...level, ...neat]
    .filter((d) => Math.hypot(...d) > 0.01)
    .map((d) => d.map((c) => c / Math.hypot(...d)));
}

describe("the planes listed for a field of the ball", () => {
  it("hold every plane that cuts away a place of it, from a hair's depth to past the middle", () => {
    const random = seeded(7);
    const normals = directions(random).slice(0, 60);
    const planes = Float64Array.from(
      [...normals, [0, 0, 1], [0, 0, -1], [1, 0, 0]].flatMap((n, i) => [
        ...n,
        [0.999999, 0.95, 0.6, 0.1, -0.4][i % 5],
      ]),
    );
    const { first, planes: listed } = capsOf(planes, planes.length / 4);
    let asked = 0;
    const left: string[] = [];
    for (const [x, y, z] of directions(random)) {
      const field = fieldAt(x, y, z);
      const own = new Set(listed.subarray(first[field], first[field + 1]));
      for (let i = 0; i < planes.length / 4; i++) {
        const [nx, ny, nz, h] = planes.subarray(4 * i, 4 * i + 4);
        if (nx * x + ny * y + nz * z <= h) continue;
        asked++;
        if (!own.has(i)) left.push(`plane ${i} at ${x}, ${y}, ${z}`);
      }
    }
    expect(left).toEqual([]);
    expect(asked).toBeGreaterThan(10_000);
  });

  it("leave out most planes that are far away", () => {
    const random = seeded(3);
    const planes = Float64Array.from(
      directions(random)
        .slice(0, 50)
        .flatMap((n) => [...n, 0.9]),
    );
    const { first } = capsOf(planes, 50);
    const fields = directions(random).map(([x, y, z]) => fieldAt(x, y, z));
    const mean = fields.reduce((sum, field) => sum + first[field + 1] - first[field], 0) / fields.length;
    expect(mean).toBeLessThan(50 / 4);
  });
});
