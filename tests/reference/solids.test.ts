import { describe, expect, it } from "vitest";
import type { Plane } from "../../src/core/geometry/plane.ts";
import { cutBall } from "../../src/core/geometry/solid.ts";
import type { Solid } from "../../src/core/geometry/solid-types.ts";
import { angleBetween, dot, length, mix, normalize, type Vec3 } from "../../src/core/geometry/vec.ts";
import {
  ARCHIMEDEAN,
  BALL_CUT_BY_CUBE,
  CAPS,
  CATALAN,
  MATHASS,
  PLATONIC,
  type PublishedSolid,
  TOUCHING,
  TRUNCATED_DODECAHEDRON,
  TWO_TIERS,
} from "./solid-values.ts";

const PHI = (1 + Math.sqrt(5)) / 2;
const signs = [-1, 1] as const;

/** All sign changes of a vector, without repeats. */
const withSigns = ([x, y, z]: Vec3): Vec3[] => {
  const all = signs.flatMap((a) => signs.flatMap((b) => signs.map((c): Vec3 => [a * x, b * y, c * z])));
  return all.filter((v, i) => all.findIndex((w) => w.every((c, k) => c + 0 === v[k] + 0)) === i);
};
const turned = ([x, y, z]: Vec3): Vec3[] => [
  [x, y, z],
  [y, z, x],
  [z, x, y],
];
const directions = (...seeds: Vec3[]): Vec3[] =>
  seeds
    .flatMap((seed) => withSigns(seed).flatMap((v) => turned(v)))
    .map(normalize)
    .filter(isFirst);
function isFirst(v: Vec3, i: number, all: readonly Vec3[]): boolean {
  return all.findIndex((w) => angleBetween(v, w) < 1e-6) === i;
}

const AXES = directions([1, 0, 0]);
const DIAGONALS = directions([1, 1, 1]);
const HALFWAY = directions([1, 1, 0]);
const NORMALS = {
  tetrahedron: (
    [
      [1, 1, 1],
      [1, -1, -1],
      [-1, 1, -1],
      [-1, -1, 1],
    ] as Vec3[]
  ).map(normalize),
  cube: AXES,
  octahedron: DIAGONALS,
  dodecahedron: directions([0, 1, PHI]),
  icosahedron: directions([1, 1, 1], [1 / PHI, 0, PHI]),
  rhombicDodecahedron: HALFWAY,
  rhombicTriacontahedron: directions([1, 0, 0], [1 / 2, PHI / 2, (1 + PHI) / 2]),
} as const;

const facing = (normals: readonly Vec3[], h: number): Plane[] => normals.map((n) => ({ n, h }));
/** Cuts a body of circumradius `circumradius`, scaled to lie inside the unit ball. */
const FIT = 0.96;
const cutTo = (
  circumradius: number,
  ...tiers: (readonly [readonly Vec3[], number])[]
): { solid: Solid; s: number } => {
  const s = FIT / circumradius;
  return { solid: cutBall(tiers.flatMap(([normals, d]) => facing(normals, d * s))), s };
};

function expectCounts(solid: Solid, faces: number, edges: number, vertices: number): void {
  expect(solid.facets.filter((f) => !f.swallowed)).toHaveLength(faces);
  expect(solid.edges).toHaveLength(edges);
  expect(solid.vertices).toHaveLength(vertices);
  expect(solid.vertices.length - solid.edges.length + faces).toBe(2);
  expect(solid.patches).toEqual([]);
  expect(solid.skinArea).toBe(0);
}

describe("Platonic solids as facet patterns", () => {
  it.each(Object.entries(PLATONIC))("have the published volume, area and counts: %s", (name, known) => {
    const normals = NORMALS[name as keyof typeof PLATONIC];
    const { solid, s } = cutTo(known.circumradius, [normals, known.inradius]);
    expectCounts(solid, known.faces, known.edges, known.vertices);
    expect(solid.volume / s ** 3 / known.volume).toBeCloseTo(1, 7);
    expect(solid.facetArea / s ** 2 / known.area).toBeCloseTo(1, 7);
    for (const edge of solid.edges) expect(edge.length / s).toBeCloseTo(1, 7);
    for (const { at } of solid.vertices) expect(length(at)).toBeCloseTo(FIT, 7);
    // the dihedral angle is what the angle between the normals leaves of 180 degrees
    const { a, b } = solid.edges[0];
    expect(180 - (angleBetween(normals[a], normals[b]) * 180) / Math.PI).toBeCloseTo(known.dihedralDeg, 5);
  });

  it.each(Object.entries(MATHASS))("agree with a second source at circumradius 1: %s", (name, known) => {
    const normals = NORMALS[name as keyof typeof MATHASS];
    const { solid, s } = cutTo(1, [normals, known.inradius]);
    expect(solid.volume / s ** 3 / known.volume).toBeCloseTo(1, 6);
    expect(solid.facetArea / s ** 2 / known.area).toBeCloseTo(1, 6);
    expect(solid.edges[0].length / s / known.edge).toBeCloseTo(1, 6);
  });
});

describe("other solids as facet patterns", () => {
  it.each(Object.entries(CATALAN))(
    "have the published volume, area and vertex distances: %s",
    (name, known) => {
      const far = Math.max(...known.vertexDistances);
      const { solid, s } = cutTo(far, [NORMALS[name as keyof typeof CATALAN], 1]);
      expectCounts(solid, known.faces, known.edges, known.vertices);
      expect(solid.volume / s ** 3 / known.volume).toBeCloseTo(1, 7);
      expect(solid.facetArea / s ** 2 / known.area).toBeCloseTo(1, 7);
      for (const { at } of solid.vertices) {
        const nearest = Math.min(...known.vertexDistances.map((d) => Math.abs(length(at) / s - d)));
        expect(nearest).toBeLessThan(1e-7);
      }
    },
  );

  const { truncatedIcosahedron, cuboctahedron, truncatedOctahedron, truncatedCuboctahedron } = ARCHIMEDEAN;
  type Tiers = readonly (readonly [readonly Vec3[], number])[];
  const archimedean: readonly (readonly [string, PublishedSolid, Tiers])[] = [
    [
      "truncated icosahedron",
      truncatedIcosahedron,
      [
        [NORMALS.icosahedron, truncatedIcosahedron.distances.hexagon],
        [NORMALS.dodecahedron, truncatedIcosahedron.distances.pentagon],
      ],
    ],
    [
      "cuboctahedron",
      cuboctahedron,
      [
        [AXES, cuboctahedron.distances.square],
        [DIAGONALS, cuboctahedron.distances.triangle],
      ],
    ],
    [
      "truncated octahedron",
      truncatedOctahedron,
      [
        [AXES, truncatedOctahedron.distances.square],
        [DIAGONALS, truncatedOctahedron.distances.hexagon],
      ],
    ],
    [
      "truncated cuboctahedron",
      truncatedCuboctahedron,
      [
        [AXES, truncatedCuboctahedron.distances.octagon],
        [HALFWAY, truncatedCuboctahedron.distances.square],
        [DIAGONALS, truncatedCuboctahedron.distances.hexagon],
      ],
    ],
  ];
  it.each(archimedean)(
    "have the published volume, area, counts and edges all alike: %s",
    (_, known, tiers) => {
      const { solid, s } = cutTo(known.circumradius, ...tiers);
      expectCounts(solid, known.faces, known.edges, known.vertices);
      expect(solid.volume / s ** 3 / known.volume).toBeCloseTo(1, 7);
      // one area is published to five digits
      expect(solid.facetArea / s ** 2 / known.area).toBeCloseTo(1, 5);
      for (const edge of solid.edges) expect(edge.length / s).toBeCloseTo(1, 6);
    },
  );

  it("have the published middle radius: truncated dodecahedron", () => {
    const { circumradius: R, midradius } = TRUNCATED_DODECAHEDRON;
    // faces of edge 1: a decagon's circumradius is the golden ratio, a triangle's 1 / sqrt 3
    const { solid, s } = cutTo(
      R,
      [NORMALS.dodecahedron, Math.sqrt(R * R - PHI * PHI)],
      [NORMALS.icosahedron, Math.sqrt(R * R - 1 / 3)],
    );
    const long = solid.edges.filter((e) => e.length / s > 0.5);
    expect(long).toHaveLength(90);
    for (const { from, to, length: edge } of long) {
      expect(edge / s).toBeCloseTo(1, 3);
      expect(length(mix(from, to, 0.5)) / s).toBeCloseTo(midradius, 4);
    }
  });

  it("are prisms with side 2 r tan(pi/n) and volume n r^2 tan(pi/n) H", () => {
    for (const n of [3, 5, 12, 40]) {
      const [r, H] = [0.45, 0.5];
      const sides = Array.from({ length: n }, (_, k): Vec3 => {
        const t = (2 * Math.PI * k) / n;
        return [Math.cos(t), Math.sin(t), 0];
      });
      const solid = cutBall([
        ...facing(sides, r * (n === 3 ? 0.8 : 1)),
        ...facing(
          [
            [0, 0, 1],
            [0, 0, -1],
          ],
          H / 2,
        ),
      ]);
      const radius = r * (n === 3 ? 0.8 : 1);
      expectCounts(solid, n + 2, 3 * n, 2 * n);
      expect(solid.volume).toBeCloseTo(n * radius ** 2 * Math.tan(Math.PI / n) * H, 12);
      expect(solid.facets[0].width).toBeCloseTo(2 * radius * Math.tan(Math.PI / n), 12);
      expect(solid.facets[0].height).toBeCloseTo(H, 12);
    }
  });

  it("are bipyramids and trapezohedra when two tiers of one angle are mirrored or turned", () => {
    for (const { n, alphaDeg, bipyramid, trapezohedron } of TWO_TIERS) {
      const alpha = (alphaDeg * Math.PI) / 180;
      const ring = (z: 1 | -1, turn: number): Vec3[] =>
        Array.from({ length: n }, (_, k): Vec3 => {
          const t = (2 * Math.PI * (k + turn)) / n;
          return [Math.sin(alpha) * Math.cos(t), Math.sin(alpha) * Math.sin(t), z * Math.cos(alpha)];
        });
      // apex 1 / cos(alpha) and girdle corners must lie in the ball
      const far = Math.max(1 / Math.cos(alpha), 1.1 / Math.sin(alpha) / Math.cos(Math.PI / n));
      const mirrored = cutTo(far, [ring(1, 0), 1], [ring(-1, 0), 1]);
      expectCounts(mirrored.solid, 2 * n, 3 * n, n + 2);
      expect(mirrored.solid.volume / mirrored.s ** 3).toBeCloseTo(bipyramid, 8);
      const halfTurned = cutTo(far, [ring(1, 0), 1], [ring(-1, 0.5), 1]);
      expectCounts(halfTurned.solid, 2 * n, 4 * n, 2 * n + 2);
      expect(halfTurned.solid.volume / halfTurned.s ** 3).toBeCloseTo(trapezohedron, 8);
    }
  });
});

describe("caps and the ball cut by a cube", () => {
  it.each(CAPS)(
    "a cap of height $height has the published volume and curved area",
    ({ height, volume, area }) => {
      const solid = cutBall([{ n: [0, 0.6, 0.8], h: 1 - height }]);
      expect((4 * Math.PI) / 3 - solid.volume).toBeCloseTo(volume, 9);
      expect(4 * Math.PI - solid.skinArea).toBeCloseTo(area, 9);
      // pi a^2 with a^2 = h (2 R - h)
      expect(solid.facetArea).toBeCloseTo(Math.PI * height * (2 - height), 12);
    },
  );

  it.each(BALL_CUT_BY_CUBE)("six planes at $a leave the published volume", ({ a, volume }) => {
    expect(cutBall(facing(AXES, a)).volume).toBeCloseTo(volume, 8);
  });

  it("is more than six caps would leave once they overlap", () => {
    expect(cutBall(facing(AXES, 0.6)).volume).toBeGreaterThan(1.574985 + 0.1);
  });
});

describe("touching", () => {
  it.each(Object.entries(TOUCHING))(
    "circles first share an edge at the published ratio: %s",
    (name, ratio) => {
      const normals = NORMALS[name as keyof typeof TOUCHING];
      const step = 2e-8;
      expect(cutBall(facing(normals, ratio + step)).edges).toEqual([]);
      const { edges } = cutBall(facing(normals, ratio - step));
      expect(edges.length).toBeGreaterThan(0);
      for (const { a, b } of edges)
        expect(Math.acos(dot(normals[a], normals[b])) / 2).toBeCloseTo(Math.acos(ratio), 6);
    },
  );

  it("leaves no round skin once the ball's radius is the farthest vertex's distance", () => {
    for (const [normals, far] of [
      [NORMALS.cube, Math.sqrt(3)],
      [NORMALS.dodecahedron, 1.25840857],
      [NORMALS.rhombicTriacontahedron, 1.1755705],
    ] as const) {
      expect(cutBall(facing(normals, (1 - 1e-6) / far)).skinArea).toBe(0);
      expect(cutBall(facing(normals, (1 + 1e-6) / far)).skinArea).toBeGreaterThan(0);
    }
  });
});
