import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CutMesh, meshArea, meshVolume } from "../../../src/core/geometry/mesh.ts";
import { checkClosed, checkVolume } from "../../../src/core/geometry/mesh-check.ts";
import { meshOf } from "../../../src/core/geometry/mesh-cut.ts";
import { segmentsFor, spherePoints } from "../../../src/core/geometry/mesh-points.ts";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { SKIN } from "../../../src/core/geometry/solid-types.ts";
import { dot, length, normalize, type Vec3 } from "../../../src/core/geometry/vec.ts";
import {
  awkwardPlanes,
  eulerNumber,
  loadManifold,
  openEdges,
  planesWithin,
  SEED,
  toManifold,
} from "./mesh-support.ts";

const cutMesh = (planes: readonly Plane[], segments = 64): CutMesh => meshOf(cutBall(planes), segments);
const at = (mesh: CutMesh, v: number): Vec3 => [
  mesh.positions[3 * v],
  mesh.positions[3 * v + 1],
  mesh.positions[3 * v + 2],
];
const planesOf = (mesh: CutMesh): number[] => [...new Set(mesh.facets.map((f) => f.plane))];
const along = (n: Vec3, h: number): Plane => ({ n, h });
const X: Vec3 = [1, 0, 0];
const Z: Vec3 = [0, 0, 1];

/** A ring of equal facets at one elevation. */
function ringOf(count: number, elevationDeg: number, h: number): Plane[] {
  const e = (elevationDeg * Math.PI) / 180;
  return Array.from({ length: count }, (_, k) => {
    const t = (2 * Math.PI * k) / count;
    return along([Math.cos(e) * Math.cos(t), Math.cos(e) * Math.sin(t), Math.sin(e)], h);
  });
}

function expectSound(mesh: CutMesh): void {
  expect(openEdges(mesh.triangles)).toEqual([]);
  expect(eulerNumber(mesh.triangles)).toBe(2);
  expect(mesh.positions.every(Number.isFinite)).toBe(true);
}

describe("the sphere's points", () => {
  it("are as many as an octahedron with parted edges has, each once and on the sphere", () => {
    const points = spherePoints(32);
    expect(points).toHaveLength(3 * (4 * 8 * 8 + 2));
    const seen = new Set<string>();
    for (let i = 0; i < points.length; i += 3) {
      expect(Math.hypot(points[i], points[i + 1], points[i + 2])).toBeCloseTo(1, 14);
      seen.add([0, 1, 2].map((k) => points[i + k].toFixed(6)).join());
    }
    expect(seen.size).toBe(points.length / 3);
  });

  it("make a ball that stands off the true one by less than the chord error it was asked for", () => {
    for (const chordError of [0.01, 0.001, 0.0003]) {
      const { positions, triangles } = cutMesh([], segmentsFor(chordError));
      let worst = 0;
      for (let i = 0; i < triangles.length; i += 3) {
        const middle = [0, 1, 2].map(
          (k) => [0, 1, 2].reduce((sum, j) => sum + positions[3 * triangles[i + j] + k], 0) / 3,
        );
        worst = Math.max(worst, 1 - Math.hypot(...middle));
      }
      expect(worst).toBeLessThan(chordError);
      expect(worst).toBeGreaterThan(chordError / 3);
    }
  });
});

describe("the mesh of a cut ball", () => {
  it("is the whole ball when no plane cuts it", () => {
    const whole = cutMesh([]);
    expectSound(whole);
    expect(whole.facets).toEqual([]);
    for (const h of [1, 1 + 1e-15, 1.5])
      expect(cutMesh([along([0.6, 0, 0.8], h)]).triangles).toEqual(whole.triangles);
  });

  it("is nothing when the planes leave nothing", () => {
    for (const planes of [[along(Z, -1)], [along(Z, -2)], [along(Z, -0.1), along([0, 0, -1], -0.1)]]) {
      const mesh = cutMesh(planes);
      expect(mesh.vanished).toBe(true);
      expect(mesh.triangles).toHaveLength(0);
    }
  });

  it("gives coincident planes to the earlier one", () => {
    const plane = along([0.6, 0, 0.8], 0.7);
    expect(planesOf(cutMesh([plane, along(X, 0.9), plane, along(plane.n, 0.7 + 5e-12)]))).toEqual([0, 1]);
  });

  it("shows a facet far smaller than the mesh as a true circle", () => {
    for (const n of [Z, [0.6, 0.48, 0.64], [1, 1, 0]] as const) {
      const h = 1 - 1e-6;
      const mesh = cutMesh([along(normalize(n), h)], 16);
      expect(mesh.facets).toHaveLength(1);
      expect(mesh.facets[0].ring.length).toBeGreaterThanOrEqual(24);
      // a polygon of 24 in the circle has 98.9 % of its area
      expect(meshArea(mesh, 0)).toBeGreaterThan(0.985 * Math.PI * (1 - h * h));
      expectSound(mesh);
    }
  });

  it("is closed for caps larger than a half, halves, and a ball of which nearly nothing is left", () => {
    for (const h of [0, -0.5, -0.99, -1 + 1e-6]) expectSound(cutMesh([along([0.6, 0.48, 0.64], h)], 16));
  });

  it("has one vertex where two circles touch in a point, whichever way their chords fall", () => {
    for (const turn of [0, 0.1, 1]) {
      const n: Vec3 = [Math.cos(turn), Math.sin(turn), 0];
      const m: Vec3 = [-Math.sin(turn), Math.cos(turn), 0];
      const planes = [along(n, Math.SQRT1_2), along(m, Math.SQRT1_2)];
      expectSound(cutMesh(planes, 32));
      // at 30 each circle gets 26 chords, so that both have a point where they touch
      const mesh = cutMesh(planes, 30);
      expectSound(mesh);
      const shared = mesh.facets[0].ring.filter((v) => mesh.facets[1].ring.includes(v));
      expect(shared).toHaveLength(1);
    }
  });

  it("keeps skin that is far narrower than its edges", () => {
    // rings that nearly touch at the equator, and a band of skin of a millionth between two caps
    for (const gap of [1e-3, 1e-6, 1e-9]) {
      const planes = [along(Z, gap), along([0, 0, -1], gap)];
      const mesh = cutMesh(planes, 32);
      expectSound(mesh);
      expect(Math.abs(meshArea(mesh, SKIN) - 4 * Math.PI * gap)).toBeLessThan(0.01);
    }
  });

  it("keeps every facet flat, in one piece, and every border with the skin on its true circle", () => {
    fc.assert(
      fc.property(planesWithin(0.3, 1, 30), (planes) => {
        const mesh = cutMesh(planes);
        mesh.triangles.forEach((v, i) => {
          if (mesh.trianglePlanes[Math.floor(i / 3)] === SKIN) expect(length(at(mesh, v))).toBeCloseTo(1, 11);
        });
        for (const { plane, ring } of mesh.facets) {
          for (const v of ring) expect(dot(at(mesh, v), planes[plane].n)).toBeCloseTo(planes[plane].h, 10);
          const own = mesh.trianglePlanes.filter((p) => p === plane);
          expect(own).toHaveLength(ring.length - 2);
        }
      }),
      { seed: SEED, numRuns: 30 },
    );
  });

  it("is closed and finite for any planes at all that can be reckoned", () => {
    fc.assert(
      fc.property(awkwardPlanes, (planes) => {
        const mesh = cutMesh(planes, 32);
        if (!mesh.vanished) expectSound(mesh);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe("the mesh beside the exact solid", () => {
  const tiers: readonly (readonly [string, readonly Plane[]])[] = [
    ["one cap", [along(Z, 0.8)]],
    ["three that meet", [along(Z, 0.6), along(X, 0.6), along([0, 1, 0], 0.6)]],
    ["twelve about the waist that overlap", ringOf(12, 0, 0.95)],
    ["two rings and a table", [...ringOf(10, 20, 0.96), ...ringOf(10, 50, 0.93), along(Z, 0.9)]],
  ];

  it.each(tiers)("is off by the square of its edge, in volume and in area: %s", (_, planes) => {
    const solid = cutBall(planes);
    const off = [48, 96, 192].map((segments) => {
      const mesh = cutMesh(planes, segments);
      return [
        Math.abs(meshVolume(mesh) - solid.volume),
        Math.abs(meshArea(mesh) - solid.facetArea - solid.skinArea),
      ];
    });
    for (const k of [0, 1]) {
      const orders = [Math.log2(off[0][k] / off[1][k]), Math.log2(off[1][k] / off[2][k])];
      for (const order of orders) expect(order).toBeGreaterThan(1.6);
      expect(off[2][k]).toBeLessThan(4e-3);
    }
  });

  it("has the same facets, and each with the same area to the mesh's own error", () => {
    fc.assert(
      fc.property(planesWithin(0.6, 1, 30), (planes) => {
        const solid = cutBall(planes);
        const mesh = cutMesh(planes);
        solid.facets.forEach((facet, i) => {
          expect(Math.abs(meshArea(mesh, i) - facet.area)).toBeLessThan(1e-2);
          // a facet wider than a hair is never missing
          if (facet.area > 1e-4) expect(meshArea(mesh, i)).toBeGreaterThan(0);
          if (facet.swallowed) expect(meshArea(mesh, i)).toBe(0);
        });
      }),
      { seed: SEED, numRuns: 40 },
    );
  });
});

describe("the mesh beside manifold-3d", () => {
  it("is accepted as a closed manifold of genus 0 with the volume it states", async () => {
    const api = await loadManifold();
    fc.assert(
      fc.property(planesWithin(0.5, 1, 40), (planes) => {
        const mesh = cutMesh(planes);
        const theirs = toManifold(api, mesh);
        expect(theirs.status()).toBe("NoError");
        expect(theirs.genus()).toBe(0);
        expect(theirs.volume()).toBeCloseTo(meshVolume(mesh), 5);
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});

describe("the check of a model", () => {
  const { triangles } = cutMesh([along(Z, 0.5)], 16);
  it("lets a sound mesh pass", () => {
    expect(() => checkClosed({ triangles })).not.toThrow();
    expect(() => checkVolume(4.1, 4.2, 0.2)).not.toThrow();
  });

  it("refuses one with a triangle missing, doubled or turned round, two bodies, a pinch and a wrong volume", () => {
    const turned = triangles.slice();
    [turned[0], turned[1]] = [turned[1], turned[0]];
    const other = triangles.map((v) => v + 10_000);
    const pinched = other.map((v) => (v === other[0] ? triangles[0] : v));
    for (const [broken, fault] of [
      [triangles.slice(3), /^open$/],
      [Uint32Array.from([...triangles, ...triangles.slice(0, 3)]), /^open$/],
      [turned, /^open$/],
      [Uint32Array.from([...triangles, ...other]), /^not-one-surface$/],
      [Uint32Array.from([...triangles, ...pinched]), /^not-one-surface$/],
      [new Uint32Array(), /^not-one-surface$/],
    ] as const)
      expect(() => checkClosed({ triangles: broken })).toThrow(fault);
    for (const volume of [-4.2, 4.7 * 4.2, Number.NaN])
      expect(() => checkVolume(volume, 4.2, 0.01)).toThrow(/^volume$/);
  });
});
