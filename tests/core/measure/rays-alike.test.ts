/** Rays that a look doesn't follow, because those beside them went the same way, against all rays followed one by one. */
import { describe, expect, it } from "vitest";
import { Looks, lookRoom, measureLook, rayBodyOf } from "../../../src/core/measure/look-measures.ts";
import { ALL_PARTS, ALL_PLACES, GRID, LEFT_PLACES } from "../../../src/core/measure/places.ts";
import {
  BACK,
  emptyEnds,
  emptyMarks,
  INSIDE,
  type RayBody,
  StraightRays,
  THROUGH,
} from "../../../src/core/measure/straight-rays.ts";
import { leaningViewer, type Viewer } from "../../../src/core/measure/viewer.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { planOf } from "../../plans/generator.ts";

const PLANS = 200;
/** A ball of a size and at a place of its own for two plans of three, none for the third. */
function insideOf(seed: number, radiusMm: number): readonly InsideDesign[] {
  if (seed % 3 === 0) return [];
  const at = (k: number) => 0.15 * radiusMm * Math.sin(k * seed);
  const diameterMm = radiusMm * (0.2 + 0.1 * (seed % 7));
  return [{ kind: "core", diameterMm, atMm: [at(1), at(2), at(3)], rgb: [1, 0, 0] }];
}
function bodyOf(seed: number): RayBody {
  const plan = planOf(seed);
  const inside = insideOf(seed, plan.piece.diameterMm / 2);
  return rayBodyOf(solvePlan({ ...plan, piece: { ...plan.piece, inside } }));
}
const leanOf = (seed: number): number => ((seed * 7) % 41) - 20;

/** Whether a direction is within 8 degrees of one of twelve lamps, each by itself. */
function isLitByHand({ right, up, view }: Viewer, direction: Float64Array): boolean {
  const golden = (1 + Math.sqrt(5)) / 2;
  const own = [right, up, view].map((axis) => axis.reduce((sum, a, c) => sum + a * direction[c], 0));
  return [0, 1, 2].some((k) =>
    [-1, 1].some((s) =>
      [-golden, golden].some((g) => {
        const cosine = (s * own[(k + 1) % 3] + g * own[(k + 2) % 3]) / Math.hypot(1, golden);
        return (Math.acos(Math.min(1, cosine)) * 180) / Math.PI <= 8;
      }),
    ),
  );
}

/** The planes of a path; of those that coincide the first. */
function metBy({ planes, planeCount }: RayBody, path: number): string {
  const met: number[] = [];
  for (let rest = path; rest > 0; rest = Math.floor(rest / (planeCount + 1))) {
    const own = (rest % (planeCount + 1)) - 1;
    const isOwn = (k: number) =>
      [0, 1, 2, 3].every((c) => Math.abs(planes[4 * k + c] - planes[4 * own + c]) < 1e-9);
    met.push(own < 0 ? own : Array.from({ length: planeCount }, (_, k) => k).findIndex(isOwn));
  }
  return path < 0 ? "skin" : met.join(" ");
}

describe("the places of the grid", () => {
  it.each([
    ["all", ALL_PLACES, GRID],
    ["the left half", LEFT_PLACES, GRID / 2],
  ])("are those within the ball's outline, each once, %s of them", (_, { order, ends, at }, columns) => {
    const within = Array.from({ length: GRID * GRID }, (__, k) => k).filter((k) => {
      const [x, y] = [(2 * (k % GRID) + 1) / GRID - 1, (2 * Math.floor(k / GRID) + 1) / GRID - 1];
      return k % GRID < columns && x * x + y * y < 1;
    });
    expect([...order].sort((a, b) => a - b)).toEqual(within);
    expect(ends).toHaveLength(ALL_PARTS + 1);
    expect([ends[0], ends[ALL_PARTS]]).toEqual([0, order.length]);
    const off = Array.from(order, (k, r) => {
      const [x, y, z] = at.subarray(3 * r, 3 * r + 3);
      const [i, j] = [k % GRID, Math.floor(k / GRID)];
      return Math.hypot(x - (2 * i + 1) / GRID + 1, y - (2 * j + 1) / GRID + 1, x * x + y * y + z * z - 1);
    });
    expect(Math.max(...off)).toBeLessThan(1e-12);
  });

  it("come evenly: the first of 25 parts lie five steps from each other, the first five parts more than two", () => {
    const { order, ends } = ALL_PLACES;
    for (const [parts, least] of [
      [1, 5],
      [5, Math.sqrt(5)],
    ]) {
      const first = [...order.subarray(0, ends[parts])].map((k) => [k % GRID, Math.floor(k / GRID)]);
      expect(first.length / order.length).toBeCloseTo(parts / ALL_PARTS, 2);
      const nearest = (a: number): number => {
        let best = GRID;
        for (let b = 0; b < first.length; b++)
          if (b !== a)
            best = Math.min(best, Math.hypot(first[b][0] - first[a][0], first[b][1] - first[a][1]));
        return best;
      };
      const all = first.map((_, a) => nearest(a));
      expect(Math.min(...all)).toBeCloseTo(least, 12);
      expect(Math.max(...all)).toBeCloseTo(least, 12);
    }
  });
});

describe("rays that are not followed", () => {
  it("meet what they would have met and end as they would have, for 200 made plans", () => {
    const [together, singly] = [emptyMarks(), emptyMarks()];
    const ends = emptyEnds();
    const { order } = ALL_PLACES;
    const told = { left: 0, inside: 0, lit: 0 };
    for (let seed = 700; seed < 700 + PLANS; seed++) {
      const body = bodyOf(seed);
      const viewer = leaningViewer(leanOf(seed));
      new StraightRays(body).lookOn(viewer, together, ALL_PLACES, 0, order.length);
      const each = new StraightRays(body);
      Reflect.set(each, "isKnown", () => false);
      each.lookOn(viewer, singly, ALL_PLACES, 0, order.length);
      each.look(viewer, ends);
      const away = order.findIndex((k, r) => {
        const fate = ends.fates[k];
        const isLit = (fate === BACK || fate === THROUGH) && isLitByHand(viewer, ends.ends.subarray(3 * k));
        return (
          [together, singly].some(({ fates, lit }) => fates[r] !== fate || lit[r] !== (isLit ? 1 : 0)) ||
          (together.paths[r] !== singly.paths[r] &&
            metBy(body, together.paths[r]) !== metBy(body, singly.paths[r]))
        );
      });
      expect(`${seed}: ${away} ${together.counts}`).toBe(`${seed}: -1 ${ends.counts}`);
      told.left += ends.counts[BACK] + ends.counts[THROUGH];
      told.inside += ends.counts[INSIDE];
      told.lit += together.lit.reduce((sum, lit) => sum + lit, 0);
    }
    expect(told.left).toBeGreaterThan(500_000);
    expect(told.inside).toBeGreaterThan(50_000);
    expect(told.lit).toBeGreaterThan(50_000);
  });

  it("are fewer than one of three where facets are flat and large", () => {
    const slab: RayBody = {
      planeCount: 2,
      planes: Float64Array.from([0, 0, 1, 0.3, 0, 0, -1, 0.3]),
      nd: 1.5,
      designs: [],
    };
    const rays = new StraightRays(slab);
    let followed = 0;
    const follow = Reflect.get(rays, "follow") as (...all: number[]) => number;
    Reflect.set(rays, "follow", (...all: number[]) => {
      followed++;
      return follow.apply(rays, all);
    });
    rays.lookOn(leaningViewer(3), emptyMarks(), ALL_PLACES, 0, ALL_PLACES.order.length);
    expect(followed).toBeLessThan(ALL_PLACES.order.length / 3);
  });
});

describe("looks that are broken off and gone on with", () => {
  it("come to what all rays at once come to, and few rays near it, for 8 made plans in one room", () => {
    const room = lookRoom();
    let off = 0;
    for (let seed = 700; seed < 708; seed++) {
      const body = bodyOf(seed);
      const looks = new Looks(body, true, room);
      const few = looks.upTo(1);
      looks.upTo(4);
      const { images, ...all } = measureLook(body);
      expect(images).toBeGreaterThanOrEqual(0);
      expect(looks.upTo(ALL_PARTS)).toEqual(all);
      expect(Math.abs(few.back - all.back)).toBeLessThan(0.06);
      off += Math.abs(few.inside - all.inside) / 8;
    }
    expect(off).toBeLessThan(0.01);
  });
});
