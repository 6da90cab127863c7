/** The kernel in WebAssembly against the rays followed one by one, bit by bit; and what is done where there is no WebAssembly. */
import { describe, expect, it, vi } from "vitest";
import { kernelFor, type RayKernel } from "../../../src/core/measure/kernel/kernel.ts";
import { MADE_FROM } from "../../../src/core/measure/kernel/module.ts";
import { Looks, lookRoom, measureLook, rayBodyOf } from "../../../src/core/measure/look-measures.ts";
import { isItself, SIDEWAYS } from "../../../src/core/measure/mirrors.ts";
import { ALL_PARTS, ALL_PLACES, LEFT_PLACES, type Places } from "../../../src/core/measure/places.ts";
import {
  BACK,
  emptyMarks,
  INSIDE,
  NEITHER,
  type RayBody,
  type RayMarks,
  StraightRays,
  THROUGH,
} from "../../../src/core/measure/straight-rays.ts";
import { leaningViewer } from "../../../src/core/measure/viewer.ts";
import type { InsideDesign } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { digest } from "../../kernel.mjs";
import { planOf } from "../../plans/generator.ts";

const kernel = kernelFor(2) as RayKernel;
const MOST_PLANES = 255;
const LEANS = [-20, -7, 0, 13];
const [NO_BALL, A_BALL]: (readonly InsideDesign[])[] = [
  [],
  [{ kind: "core", diameterMm: 6, atMm: [1, -0.5, 2], rgb: [1, 0, 0] }],
];
const bubble: InsideDesign = { kind: "bubble", diameterMm: 5, atMm: [0, 0, -3] };

function madeBody(seed: number, inside: readonly InsideDesign[]): RayBody {
  const plan = planOf(seed);
  return rayBodyOf(solvePlan({ ...plan, piece: { ...plan.piece, inside } }));
}

/** Planes at these distances with normals along these directions, in glass of n_d 1.5. */
function cutAlong(...planes: readonly (readonly [x: number, y: number, z: number, h: number])[]): RayBody {
  const unit = planes.map(([x, y, z, h]) => [x, y, z].map((a) => a / Math.hypot(x, y, z)).concat(h));
  return { planeCount: planes.length, planes: Float64Array.from(unit.flat()), nd: 1.5, designs: [] };
}
/** Rays on the picture's diagonals come in by two planes at once. */
const PYRAMID = cutAlong([1, 0, 2, 0.4], [-1, 0, 2, 0.4], [0, 1, 2, 0.4], [0, -1, 2, 0.4], [0, 0, -1, 0.6]);

/** What differs of one look, sent in two goes, between the kernel and rays one by one; and what became of the rays. */
function differing(
  body: RayBody,
  lean: number,
  places: Places,
): { readonly wrong: string; counts: Uint32Array } {
  const rays = new StraightRays(body);
  const looker = kernel.looker(rays);
  if (!looker) throw new Error("the kernel does not take this body");
  const [own, plain] = [kernel.marks[0], emptyMarks()];
  const middle = places.ends[7];
  for (const [from, to] of [
    [0, middle],
    [middle, places.order.length],
  ]) {
    looker.lookOn(leaningViewer(lean), own, places, from, to);
    new StraightRays(body).lookOn(leaningViewer(lean), plain, places, from, to);
  }
  const told = ({ fates, lit, paths, entries, clearances }: RayMarks, r: number) =>
    // of a ray that skin is in nothing more is ever asked
    paths[r] < 0 ? [fates[r], lit[r], -1] : [fates[r], lit[r], paths[r], entries[r], clearances[r]];
  const wrong = Array.from(places.order, (_, r) => [told(own, r), told(plain, r)])
    .filter(([a, b]) => a.some((value, k) => !Object.is(value, b[k])))
    .map(([a, b], n) => `${n}: ${a} for ${b}`);
  return { wrong: [...wrong.slice(0, 3), own.counts.join()].join("; "), counts: plain.counts };
}

function expectAlike(name: string, body: RayBody, leans: readonly number[] = LEANS): number[] {
  const sums = [0, 0, 0, 0, 0];
  for (const lean of leans) {
    for (const places of isItself(body, SIDEWAYS) ? [ALL_PLACES, LEFT_PLACES] : [ALL_PLACES]) {
      const { wrong, counts } = differing(body, lean, places);
      expect(`${name} at ${lean}: ${wrong}`).toBe(`${name} at ${lean}: ${counts.join()}`);
      counts.forEach((count, fate) => {
        sums[fate] += count;
      });
    }
  }
  return sums;
}

describe("the kernel of straight rays", () => {
  it("comes to the same bits as rays one by one, for 240 made plans with and without a ball inside", () => {
    const sums = [0, 0, 0, 0, 0];
    let taken = 0;
    let mirrored = 0;
    for (let seed = 3000; seed < 3240; seed++) {
      const inside = [NO_BALL, A_BALL, [bubble]][seed % 3];
      const body = madeBody(seed, inside);
      if (body.planeCount > MOST_PLANES) continue;
      taken++;
      if (isItself(body, SIDEWAYS)) mirrored++;
      const all = expectAlike(`plan ${seed}`, body, [LEANS[seed % LEANS.length]]);
      all.forEach((count, fate) => {
        sums[fate] += count;
      });
    }
    expect(taken).toBeGreaterThan(220);
    // of which the left half is looked at as well
    expect(mirrored).toBeGreaterThan(20);
    for (const fate of [BACK, THROUGH, INSIDE]) expect(sums[fate], `fate ${fate}`).toBeGreaterThan(50_000);
  });

  it.each<[string, RayBody]>([
    ["of a marble without a facet", cutAlong()],
    ["where two planes are met at once", PYRAMID],
    ["where planes coincide", cutAlong([0, 0, 1, 0.5], [0, 0, 1, 0.5], [1, 0, 1, 0.7], [1, 0, 1, 0.7])],
    ["of a thin slab", cutAlong([0, 0, 1, 0.01], [0, 0, -1, 0.01])],
    ["of a piece that is off the ball's centre", cutAlong([0, 0, 1, -0.2], [1, 0, 0.1, 0.5])],
    [
      "with all that can be asked for in one field",
      cutAlong(...Array.from({ length: MOST_PLANES }, nearTop)),
    ],
  ])("comes to the same bits %s", (name, body) => {
    expectAlike(name, body);
  });

  it("comes to the same bits where light stays in for longer than it is followed", () => {
    const dense = { ...cutAlong([1, 1, 1, 0.5], [-1, 1, 1, 0.6], [0, 0, -1, 0.5], [1, -1, 0, 0.7]), nd: 4 };
    expect(expectAlike("dense glass", dense)[NEITHER]).toBeGreaterThan(100);
  });

  it("takes no body with more planes than it has room for, nor one with more inside than a ball", () => {
    const many = cutAlong(...Array.from({ length: MOST_PLANES + 1 }, nearTop));
    expect(kernel.looker(new StraightRays(many))).toBeNull();
    const two = madeBody(3000, [...A_BALL, bubble]);
    expect(kernel.looker(new StraightRays(two))).toBeNull();
    const { images, ...all } = measureLook(two);
    expect(images).toBeGreaterThanOrEqual(0);
    expect(new Looks(two, true, lookRoom()).upTo(ALL_PARTS)).toEqual(all);
  });

  it("goes on with a body after another one was looked at in the same room", () => {
    const room = lookRoom();
    const [a, b] = [madeBody(3001, A_BALL), madeBody(3002, NO_BALL)];
    const looks = new Looks(a, false, room);
    looks.upTo(3);
    // marks that no lean of the first uses, the same tables
    kernelOf(room)
      .looker(new StraightRays(b))
      ?.lookOn(leaningViewer(5), room.marks[room.marks.length - 1], ALL_PLACES, 0, 99);
    const { images, sparkle, ...all } = measureLook(a);
    expect([images, sparkle].every((value) => value >= 0)).toBe(true);
    expect(looks.upTo(ALL_PARTS)).toEqual(all);
  });

  it("is what its source says: `npm run kernel` makes it anew after each change", () => {
    expect(MADE_FROM).toBe(digest());
  });
});

/** Planes that all cut the top away, each tilted its own way. */
const nearTop = (_: unknown, k: number) =>
  [0.2 * Math.sin(k), 0.2 * Math.cos(2 * k), 1, 0.9 + 0.0001 * k] as const;

function kernelOf({ kernel: own }: ReturnType<typeof lookRoom>): RayKernel {
  if (!own) throw new Error("no kernel");
  return own;
}

describe("where WebAssembly is not to be had", () => {
  /** All of WebAssembly but its compiler. */
  const refusing = (error: Error) => {
    const names = Object.getOwnPropertyNames(WebAssembly);
    const all = Object.fromEntries(names.map((name) => [name, Reflect.get(WebAssembly, name)]));
    function refuse(): never {
      throw error;
    }
    return { ...all, Module: refuse };
  };

  it.each<[string, () => unknown]>([
    ["there is none", () => undefined],
    ["a policy forbids it", () => refusing(new WebAssembly.CompileError("refused by policy"))],
    ["a policy forbids it in WebKit's words", () => refusing(new EvalError("refused by policy"))],
    ["memory is short", () => refusing(new RangeError("out of memory"))],
  ])("rays are followed one by one and come to the same: %s", (_, stub) => {
    const body = madeBody(3004, A_BALL);
    const expected = new Looks(body, true, lookRoom()).upTo(ALL_PARTS);
    vi.stubGlobal("WebAssembly", stub());
    const room = lookRoom();
    expect(room.kernel).toBeNull();
    expect(new Looks(body, true, room).upTo(ALL_PARTS)).toEqual(expected);
  });

  it("an error of another kind is none of these and is told", () => {
    vi.stubGlobal("WebAssembly", refusing(new TypeError("broken")));
    expect(lookRoom).toThrow("broken");
  });
});
