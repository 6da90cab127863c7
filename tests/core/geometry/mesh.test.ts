import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Blank, CutMesh } from "../../../src/core/geometry/mesh.ts";
import { blankOf, meshArea, meshVolume } from "../../../src/core/geometry/mesh.ts";
import {
  discBlank,
  dropBlank,
  eggBlank,
  segmentsFor,
  sphereBlank,
} from "../../../src/core/geometry/mesh-blanks.ts";
import { beginCut, copyCut, cutMesh, cutNext, meshOfCut } from "../../../src/core/geometry/mesh-cut.ts";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { SKIN } from "../../../src/core/geometry/solid-types.ts";
import { dot, length, type Vec3 } from "../../../src/core/geometry/vec.ts";
import {
  awkwardPlanes,
  eulerNumber,
  loadManifold,
  openEdges,
  planesWithin,
  SEED,
  toManifold,
  trimByPlanes,
} from "./mesh-support.ts";

const ball = sphereBlank(64);
const blanks: readonly (readonly [string, Blank])[] = [
  ["ball", ball],
  ["coarse ball", sphereBlank(12)],
  ["egg", eggBlank(0.8, 0.7, 1.1, 40)],
  ["disc", discBlank(1, 0.5, 40)],
  ["drop", dropBlank(0.7, 1.4, 40)],
];
const at = (mesh: CutMesh, v: number): Vec3 => [
  mesh.positions[3 * v],
  mesh.positions[3 * v + 1],
  mesh.positions[3 * v + 2],
];
const planesOf = (mesh: CutMesh): number[] => [...new Set(mesh.facets.map((f) => f.plane))];
const along = (n: Vec3, h: number): Plane => ({ n, h });
const X: Vec3 = [1, 0, 0];
const Z: Vec3 = [0, 0, 1];

describe("a blank", () => {
  it.each(blanks)("is closed, of genus 0 and as manifold-3d wants it: %s", async (_, blank) => {
    const mesh = cutMesh(blank, []);
    expect(openEdges(mesh.triangles)).toEqual([]);
    expect(eulerNumber(mesh.triangles)).toBe(2);
    expect(toManifold(await loadManifold(), mesh).volume()).toBeCloseTo(meshVolume(mesh), 5);
  });

  it("stands off the true ball by less than the chord error it was asked for", () => {
    for (const chordError of [0.01, 0.001, 0.0003]) {
      const { positions, triangles } = cutMesh(sphereBlank(segmentsFor(chordError)), []);
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

  it("comes as near the true egg, disc and drop as their closed forms say", () => {
    const fine = 240;
    const egg = (4 * Math.PI * 0.8 ** 2 * ((0.7 + 1.1) / 2)) / 3;
    // Pappus: a disc of radius 0.75 and thickness 0.5 with a half-circle rim of radius 0.25
    const rim = Math.PI * 0.25 ** 2 * Math.PI * (0.75 + (4 * 0.25) / (3 * Math.PI));
    const disc = Math.PI * 0.75 ** 2 * 0.5 + rim;
    // drop: the ball but for its cap above the touching circle, and the cone on that circle
    const level = 0.7 ** 2 / 1.4;
    const circle = Math.PI * (0.7 ** 2 - level ** 2);
    const cap = ((Math.PI * (0.7 - level) ** 2) / 3) * (2 * 0.7 + level);
    const drop = (4 * Math.PI * 0.7 ** 3) / 3 - cap + (circle * (1.4 - level)) / 3;
    expect(meshVolume(cutMesh(eggBlank(0.8, 0.7, 1.1, fine), [])) / egg).toBeCloseTo(1, 3);
    expect(meshVolume(cutMesh(discBlank(1, 0.5, fine), [])) / disc).toBeCloseTo(1, 3);
    expect(meshVolume(cutMesh(dropBlank(0.7, 1.4, fine), [])) / drop).toBeCloseTo(1, 3);
  });

  it("is refused when its surface is open or turned inside out in part", () => {
    const points = Float64Array.from([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1]);
    const faces = [
      [0, 2, 1],
      [0, 1, 3],
      [1, 2, 3],
      [0, 3, 2],
    ];
    expect(meshVolume(cutMesh(blankOf(points, points, faces), []))).toBeCloseTo(1 / 6, 12);
    expect(() => blankOf(points, points, faces.slice(0, 3))).toThrow(RangeError);
    expect(() => blankOf(points, points, [[0, 1, 2], ...faces.slice(1)])).toThrow(RangeError);
  });
});

describe("cutting a mesh", () => {
  it("cuts nothing when the plane misses the ball or only touches it", () => {
    const whole = cutMesh(ball, []);
    for (const h of [1, 1 + 1e-15, 1.5])
      expect(cutMesh(ball, [along([0.6, 0, 0.8], h)]).triangles).toEqual(whole.triangles);
  });

  it("leaves nothing when the planes leave nothing", () => {
    for (const planes of [[along(Z, -1)], [along(Z, -2)], [along(Z, -0.1), along([0, 0, -1], -0.1)]]) {
      const mesh = cutMesh(ball, planes);
      expect(mesh.vanished).toBe(true);
      expect(mesh.triangles).toHaveLength(0);
    }
  });

  it("gives coincident planes to the earlier one", () => {
    const plane = along([0.6, 0, 0.8], 0.7);
    const mesh = cutMesh(ball, [plane, along(X, 0.9), plane, along(plane.n, 0.7 + 5e-12)]);
    expect(planesOf(mesh)).toEqual([0, 1]);
  });

  it("cuts through the blank's own vertices without making new ones beside them", () => {
    // the plane z = 0 holds a whole ring of the ball's vertices
    const half = cutMesh(ball, [along(Z, 0)]);
    const ring = half.facets[0].ring;
    expect(ring).toHaveLength(64);
    expect(openEdges(half.triangles)).toEqual([]);
    expect(meshVolume(half)).toBeCloseTo(meshVolume(cutMesh(ball, [])) / 2, 12);
  });

  it("shows a facet far smaller than the mesh as a true circle", () => {
    for (const n of [Z, [0.6, 0.48, 0.64], [1, 1, 0]] as const) {
      const unit: Vec3 = [n[0] / length(n), n[1] / length(n), n[2] / length(n)];
      const h = 1 - 1e-6;
      const mesh = cutMesh(sphereBlank(16), [along(unit, h)]);
      expect(mesh.facets).toHaveLength(1);
      expect(mesh.facets[0].ring.length).toBeGreaterThanOrEqual(24);
      // a polygon of 24 in the circle has 98.9 % of its area
      expect(meshArea(mesh, 0)).toBeGreaterThan(0.985 * Math.PI * (1 - h * h));
      expect(openEdges(mesh.triangles)).toEqual([]);
    }
  });

  it("leaves a sliver of the ball even where no vertex of the blank is inside", () => {
    const mesh = cutMesh(sphereBlank(16), [along([0.6, 0.48, 0.64], -1 + 1e-6)]);
    expect(mesh.vanished).toBe(false);
    expect(openEdges(mesh.triangles)).toEqual([]);
  });

  it("keeps every facet flat and every border with the skin on its true circle", () => {
    fc.assert(
      fc.property(planesWithin(0.3, 1, 30), (planes) => {
        const mesh = cutMesh(ball, planes);
        const onSkin = new Set<number>();
        mesh.triangles.forEach((v, i) => {
          if (mesh.trianglePlanes[Math.floor(i / 3)] === SKIN) onSkin.add(v);
        });
        for (const v of onSkin) expect(length(at(mesh, v))).toBeCloseTo(1, 11);
        for (const { plane, ring } of mesh.facets)
          for (const v of ring) expect(dot(at(mesh, v), planes[plane].n)).toBeCloseTo(planes[plane].h, 10);
      }),
      { seed: SEED, numRuns: 30 },
    );
  });

  it.each(blanks)("stays closed and finite for any planes at all: %s", (_, blank) => {
    fc.assert(
      fc.property(awkwardPlanes, (planes) => {
        const mesh = cutMesh(blank, planes);
        expect(openEdges(mesh.triangles)).toEqual([]);
        expect(mesh.positions.every(Number.isFinite)).toBe(true);
        expect(mesh.skinNormals.every(Number.isFinite)).toBe(true);
        if (!mesh.vanished) expect(eulerNumber(mesh.triangles)).toBe(2);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("goes on from where it stopped, and back to any stage that was kept", () => {
    fc.assert(
      fc.property(planesWithin(0.5, 1, 20), (planes) => {
        const coarse = sphereBlank(32);
        const state = beginCut(coarse);
        const kept = planes.map((plane) => {
          const before = copyCut(state);
          cutNext(state, plane);
          return before;
        });
        expect(meshOfCut(state)).toEqual(cutMesh(coarse, planes));
        const k = Math.floor(planes.length / 2);
        expect(meshOfCut(kept[k])).toEqual(cutMesh(coarse, planes.slice(0, k)));
        for (const plane of planes.slice(k)) cutNext(kept[k], plane);
        expect(meshOfCut(kept[k])).toEqual(cutMesh(coarse, planes));
      }),
      { seed: SEED, numRuns: 10 },
    );
  });

  it("never changes the blank", () => {
    const before = ball.surface.at.slice();
    cutMesh(ball, [along(Z, 0.2), along(X, 0.3)]);
    expect(ball.surface.at).toEqual(before);
    expect(cutMesh(ball, []).facets).toEqual([]);
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
      const mesh = cutMesh(sphereBlank(segments), planes);
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
        const mesh = cutMesh(ball, planes);
        solid.facets.forEach((facet, i) => {
          expect(Math.abs(meshArea(mesh, i) - facet.area)).toBeLessThan(1e-2);
          // a facet wider than a hair is never missing
          if (facet.area > 1e-4) expect(meshArea(mesh, i)).toBeGreaterThan(0);
          if (facet.swallowed) expect(meshArea(mesh, i)).toBeLessThan(1e-6);
        });
      }),
      { seed: SEED, numRuns: 40 },
    );
  });
});

describe("the mesh beside manifold-3d", () => {
  it.each(blanks.slice(2))(
    "has its volume and area after the same cuts of the same blank: %s",
    async (_, blank) => {
      const api = await loadManifold();
      const body = toManifold(api, cutMesh(blank, []));
      fc.assert(
        fc.property(planesWithin(0.2, 0.8, 8), (planes) => {
          const mesh = cutMesh(blank, planes);
          const theirs = trimByPlanes(body, planes);
          expect(meshVolume(mesh)).toBeCloseTo(theirs.volume(), 5);
          expect(meshArea(mesh)).toBeCloseTo(theirs.surfaceArea(), 4);
        }),
        { seed: SEED, numRuns: 8 },
      );
    },
  );

  it("is accepted as a closed manifold of genus 0 with the volume it states", async () => {
    const api = await loadManifold();
    fc.assert(
      fc.property(planesWithin(0.5, 1, 40), (planes) => {
        const mesh = cutMesh(ball, planes);
        const theirs = toManifold(api, mesh);
        expect(theirs.status()).toBe("NoError");
        expect(theirs.genus()).toBe(0);
        expect(theirs.volume()).toBeCloseTo(meshVolume(mesh), 5);
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});

/** A ring of equal facets at one elevation. */
function ringOf(count: number, elevationDeg: number, h: number): Plane[] {
  const e = (elevationDeg * Math.PI) / 180;
  return Array.from({ length: count }, (_, k) => {
    const t = (2 * Math.PI * k) / count;
    return along([Math.cos(e) * Math.cos(t), Math.cos(e) * Math.sin(t), Math.sin(e)], h);
  });
}
