import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import type { Solid, SolidFacet } from "../../../src/core/geometry/solid-types.ts";
import {
  addScaled,
  cross,
  distance,
  dot,
  length,
  scale,
  sub,
  type Vec3,
} from "../../../src/core/geometry/vec.ts";
import { awkwardPlanes, direction, planesWithin, planeWithin, SEED } from "./mesh-support.ts";

const runs = (numRuns: number) => ({ seed: SEED, numRuns });
const BALL = (4 * Math.PI) / 3;
const ordinary = planesWithin(0.25, 1, 40);

/** Rodrigues: v turned by `angle` about unit axis k. */
const turn = (v: Vec3, k: Vec3, angle: number): Vec3 =>
  addScaled(
    addScaled(scale(v, Math.cos(angle)), cross(k, v), Math.sin(angle)),
    k,
    dot(k, v) * (1 - Math.cos(angle)),
  );

/** Measures that no rotation, mirror or order of cuts may change, facet by facet in the order of `original`. */
function expectAlike(a: Solid, b: Solid, at: (i: number) => number = (i) => i): void {
  expect(b.volume).toBeCloseTo(a.volume, 10);
  expect(b.facetArea).toBeCloseTo(a.facetArea, 10);
  expect(b.skinArea).toBeCloseTo(a.skinArea, 10);
  expect([b.edges.length, b.vertices.length, b.patches.length]).toEqual([
    a.edges.length,
    a.vertices.length,
    a.patches.length,
  ]);
  a.facets.forEach((facet, i) => {
    expect(b.facets[at(i)].area).toBeCloseTo(facet.area, 10);
    expect(b.facets[at(i)].perimeter).toBeCloseTo(facet.perimeter, 8);
    expect(b.facets[at(i)].swallowed).toBe(facet.swallowed);
  });
}

const numbersOf = (value: unknown): number[] => {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersOf) : [];
};

/** Solid angle of a facet seen from the centre: 1 - h / |x| summed along its outline by angle about the foot of its normal. */
function solidAngle({ plane: { n, h }, frame, outline }: SolidFacet): number {
  const STEPS = 400;
  const flat = (p: Vec3): [number, number] => {
    const d = sub(p, scale(n, h));
    return [dot(d, frame.across), dot(d, frame.meridian)];
  };
  const sees = (x: number, y: number): number => 1 - h / Math.sqrt(h * h + x * x + y * y);
  return outline.reduce((sum, piece) => {
    const [x0, y0] = flat(piece.from);
    if (piece.kind === "arc") return sum + (piece.length / Math.hypot(x0, y0)) * (1 - h);
    // Simpson's rule along the straight edge, whose angle grows by (x dy - y dx) / (x^2 + y^2)
    const [x1, y1] = flat(piece.to);
    const twice = x0 * y1 - x1 * y0;
    let edge = 0;
    for (let i = 0; i <= STEPS; i++) {
      const [x, y] = [x0 + ((x1 - x0) * i) / STEPS, y0 + ((y1 - y0) * i) / STEPS];
      const weight = i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2;
      const r2 = x * x + y * y;
      edge += r2 === 0 ? 0 : (weight * sees(x, y) * twice) / r2;
    }
    return sum + edge / (3 * STEPS);
  }, 0);
}

/** Connected parts, vertices and edges of the drawing that all outlines make on the solid. */
function drawingOf(solid: Solid): { parts: number; vertices: number; edges: number } {
  const parent = new Map<string, string>();
  const root = (key: string): string => {
    const up = parent.get(key) ?? key;
    if (up === key) return key;
    const top = root(up);
    parent.set(key, top);
    return top;
  };
  let halves = 0;
  let edges = 0;
  for (const facet of solid.facets)
    for (const { from, to, kind } of facet.outline) {
      const [a, b] = [from.join(), to.join()];
      for (const key of [a, b]) if (!parent.has(key)) parent.set(key, key);
      parent.set(root(a), root(b));
      // a line is found in the outlines of both its facets, an arc in one
      if (kind === "line") halves++;
      else edges++;
    }
  const keys = [...parent.keys()];
  return {
    parts: new Set(keys.map(root)).size,
    vertices: keys.length,
    edges: edges + halves / 2,
  };
}

describe("the exact solid", () => {
  it("does not depend on the order of the cuts", () => {
    fc.assert(
      fc.property(ordinary, fc.infiniteStream(fc.nat(1_000_000)), (planes, chance) => {
        // of coincident planes the earlier keeps the face: there order has a meaning
        const names = planes.map(({ n, h }) => [...n, h].map((x) => x.toFixed(9)).join());
        fc.pre(new Set(names).size === planes.length);
        const order = planes.map((_, i) => ({ i, key: chance.next().value })).sort((a, b) => a.key - b.key);
        const shuffled = order.map(({ i }) => planes[i]);
        const place = new Map(order.map(({ i }, now) => [i, now]));
        expectAlike(cutBall(planes), cutBall(shuffled), (i) => place.get(i) ?? -1);
      }),
      runs(60),
    );
  });

  it("does not change when the piece is turned", () => {
    fc.assert(
      fc.property(
        ordinary,
        direction,
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        (planes, axis, angle) => {
          const turned = planes.map(({ n, h }): Plane => ({ n: turn(n, axis, angle), h }));
          expectAlike(cutBall(planes), cutBall(turned));
        },
      ),
      runs(60),
    );
  });

  it("does not change when the piece is mirrored", () => {
    fc.assert(
      fc.property(ordinary, (planes) => {
        const mirrored = planes.map(({ n, h }): Plane => ({ n: [n[0], n[1], -n[2]], h }));
        const [a, b] = [cutBall(planes), cutBall(mirrored)];
        expectAlike(a, b);
        // mirrored in the level plane, across stays across and meridian turns over: extents stay
        a.facets.forEach((facet, i) => {
          expect(b.facets[i].width).toBeCloseTo(facet.width, 9);
          expect(b.facets[i].height).toBeCloseTo(facet.height, 9);
        });
      }),
      runs(60),
    );
  });

  it("loses volume, never gains it, as a facet is cut deeper", () => {
    fc.assert(
      fc.property(
        ordinary,
        planeWithin(-0.9, 1),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (planes, plane, deeper) => {
          const before = cutBall([...planes, plane]);
          const after = cutBall([...planes, { n: plane.n, h: plane.h - deeper }]);
          expect(after.volume).toBeLessThanOrEqual(before.volume + 1e-12);
          expect(before.volume).toBeLessThanOrEqual(cutBall(planes).volume + 1e-12);
        },
      ),
      runs(100),
    );
  });

  it("changes in volume by the facet's area as the facet is cut deeper", () => {
    fc.assert(
      fc.property(ordinary, planeWithin(0.3, 0.95), (planes, plane) => {
        const step = 1e-5;
        const volume = (h: number) => cutBall([...planes, { n: plane.n, h }]).volume;
        const slope = (volume(plane.h + step) - volume(plane.h - step)) / (2 * step);
        expect(slope).toBeCloseTo(cutBall([...planes, plane]).facets[planes.length].area, 4);
      }),
      runs(60),
    );
  });

  it("is closed: vertices - edges + facets + skin patches = 1 + parts of the drawing (Euler)", () => {
    fc.assert(
      fc.property(planesWithin(0.25, 1, 60), (planes) => {
        const solid = cutBall(planes);
        fc.pre(!solid.vanished);
        const { parts, vertices, edges } = drawingOf(solid);
        const faces = solid.facets.filter((f) => !f.swallowed).length + solid.patches.length;
        if (parts > 0) expect(vertices - edges + faces).toBe(1 + parts);
      }),
      runs(150),
    );
  });

  it("covers the whole sphere of directions: facets seen from the centre and skin make 4 pi (Gauss-Bonnet)", () => {
    fc.assert(
      fc.property(planesWithin(0.2, 1, 40), (planes) => {
        const solid = cutBall(planes);
        const seen = solid.facets.reduce((sum, facet) => sum + solidAngle(facet), 0);
        expect(seen + solid.skinArea).toBeCloseTo(4 * Math.PI, 6);
        expect(solid.patches.reduce((sum, p) => sum + p.area, 0)).toBeCloseTo(solid.skinArea, 10);
      }),
      runs(100),
    );
  });

  it("gives two facets the same edge from both sides, and every outline a closed ring in its plane and in the ball", () => {
    fc.assert(
      fc.property(planesWithin(0.1, 1, 50), (planes) => {
        const { facets, edges } = cutBall(planes);
        let lines = 0;
        facets.forEach((facet, i) => {
          facet.outline.forEach((piece, k) => {
            const next = facet.outline[(k + 1) % facet.outline.length];
            expect(piece.to).toEqual(next.from);
            expect(dot(piece.from, facet.plane.n)).toBeCloseTo(facet.plane.h, 8);
            expect(length(piece.from)).toBeLessThan(1 + 1e-9);
            if (piece.kind === "arc") return;
            lines++;
            const back = facets[piece.with].outline.find((other) => other.with === i);
            expect(back?.from).toEqual(piece.to);
            expect(back?.to).toEqual(piece.from);
          });
        });
        expect(edges).toHaveLength(lines / 2);
      }),
      runs(100),
    );
  });

  it("keeps every vertex inside all other planes", () => {
    fc.assert(
      fc.property(planesWithin(0.1, 1, 50), (planes) => {
        for (const { at, facets } of cutBall(planes).vertices)
          planes.forEach(({ n, h }, k) => {
            expect(dot(n, at)).toBeLessThan(h + 1e-9);
            if (facets.includes(k)) expect(dot(n, at)).toBeCloseTo(h, 8);
          });
      }),
      runs(60),
    );
  });

  it("has no NaN and nothing below zero or above the ball, for any planes at all", () => {
    fc.assert(
      fc.property(awkwardPlanes, (planes) => {
        const solid = cutBall(planes);
        expect(numbersOf(solid).every(Number.isFinite)).toBe(true);
        expect(solid.volume).toBeGreaterThanOrEqual(0);
        expect(solid.volume).toBeLessThanOrEqual(BALL + 1e-12);
        expect(solid.skinArea).toBeGreaterThanOrEqual(-1e-12);
        expect(solid.skinArea).toBeLessThanOrEqual(4 * Math.PI + 1e-9);
        if (solid.vanished) expect(solid.volume).toBe(0);
        for (const facet of solid.facets) {
          if (!facet.swallowed) continue;
          expect([facet.area, facet.perimeter, facet.width, facet.height]).toEqual([0, 0, 0, 0]);
          expect(facet.outline).toEqual([]);
        }
      }),
      runs(400),
    );
  });

  it("puts its centre of mass where the mirrored pieces balance", () => {
    fc.assert(
      fc.property(ordinary, (planes) => {
        const { centroid, volume } = cutBall(planes);
        fc.pre(volume > 1e-6);
        const opposite = cutBall(planes.map(({ n, h }): Plane => ({ n: scale(n, -1), h })));
        expect(distance(opposite.centroid, scale(centroid, -1))).toBeLessThan(1e-9);
        for (const { n, h } of planes) expect(dot(n, centroid)).toBeLessThan(h);
      }),
      runs(60),
    );
  });
});

describe("designed answers of the exact solid", () => {
  const Z: Vec3 = [0, 0, 1];

  it("swallows a plane that misses or only touches", () => {
    for (const h of [1, 1.2, 5]) {
      const solid = cutBall([{ n: Z, h }]);
      expect(solid.facets[0].swallowed).toBe(true);
      expect(solid.volume).toBeCloseTo(BALL, 14);
    }
  });

  it("gives coincident planes to the earlier one", () => {
    const solid = cutBall([
      { n: Z, h: 0.5 },
      { n: Z, h: 0.5 },
    ]);
    expect(solid.facets.map((f) => [f.swallowed, f.duplicateOf])).toEqual([
      [false, -1],
      [true, 0],
    ]);
  });

  it("halves the ball by a plane through the centre", () => {
    const solid = cutBall([{ n: [0.6, 0, 0.8], h: 0 }]);
    expect(solid.volume).toBeCloseTo(BALL / 2, 14);
    expect(solid.skinArea).toBeCloseTo(2 * Math.PI, 13);
    expect(solid.facets[0].area).toBeCloseTo(Math.PI, 14);
  });

  it("vanishes between planes that exclude each other", () => {
    const solid = cutBall([
      { n: Z, h: -0.1 },
      { n: [0, 0, -1], h: 0 },
    ]);
    expect(solid.vanished).toBe(true);
    expect([solid.volume, solid.facetArea, solid.skinArea]).toEqual([0, 0, 0]);
  });

  it("leaves a slab of skin between opposite planes, as Archimedes has it", () => {
    const solid = cutBall([
      { n: Z, h: 0.3 },
      { n: [0, 0, -1], h: 0.4 },
    ]);
    expect(solid.skinArea).toBeCloseTo(2 * Math.PI * 0.7, 13);
    expect(solid.patches).toHaveLength(1);
    expect(solid.patches[0].loops).toHaveLength(2);
  });
});
