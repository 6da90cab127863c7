import fc from "fast-check";
import type { BufferGeometry, Group, Mesh, MeshPhysicalMaterial } from "three";
import { GLTFLoader } from "three/examples/jsm/loaders/GLTFLoader.js";
import { STLLoader } from "three/examples/jsm/loaders/STLLoader.js";
import { describe, expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { SKIN } from "../../../src/core/geometry/solid-types.ts";
import { cross, dot, length, sub, type Vec3 } from "../../../src/core/geometry/vec.ts";
import { glbOf } from "../../../src/core/models/glb.ts";
import { type PieceMesh, pieceMesh } from "../../../src/core/models/piece-mesh.ts";
import { stlOf } from "../../../src/core/models/stl.ts";
import { threeMfOf } from "../../../src/core/models/three-mf.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import type { SolvedPlan } from "../../../src/core/plan/solved.ts";
import { madePlan } from "../../plans/generator.ts";
import {
  eulerNumber,
  loadManifold,
  openEdges,
  planesWithin,
  SEED,
  weldedTriangles,
} from "../geometry/mesh-support.ts";
import { cubic, gone, HOSTILE_NAME, twoSided, uncut, unzip } from "./model-support.ts";

const at = (p: ArrayLike<number>, v: number): Vec3 => [p[3 * v], p[3 * v + 1], p[3 * v + 2]];

const MM = 1;
const METRES = 1000;
const plans: readonly (readonly [string, SolvedPlan])[] = [
  ["two-sided", twoSided],
  ["cube", cubic],
  ["uncut", uncut],
];

/** Signed volume of triangles given by their corners, three numbers each. */
function volumeOf(p: ArrayLike<number>): number {
  let six = 0;
  for (let i = 0; i < p.length; i += 9)
    six +=
      p[i] * (p[i + 4] * p[i + 8] - p[i + 5] * p[i + 7]) +
      p[i + 1] * (p[i + 5] * p[i + 6] - p[i + 3] * p[i + 8]) +
      p[i + 2] * (p[i + 3] * p[i + 7] - p[i + 4] * p[i + 6]);
  return six / 6;
}

/** Corners of an indexed geometry, three numbers each. */
const cornersOf = (geometry: BufferGeometry): number[] => {
  const { position } = geometry.attributes;
  const index = geometry.index ? [...geometry.index.array] : [...Array(position.count).keys()];
  return index.flatMap((v) => [position.getX(v), position.getY(v), position.getZ(v)]);
};

/** Corners of triangles one by one, three numbers each. */
function cornersBy(triangles: ArrayLike<number>, positions: ArrayLike<number>): Float64Array {
  const corners = new Float64Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i++)
    for (let c = 0; c < 3; c++) corners[3 * i + c] = positions[3 * triangles[i] + c];
  return corners;
}

function expectPiece(corners: ArrayLike<number>, solved: SolvedPlan, unitMm: number): void {
  const volume = volumeOf(corners) * unitMm ** 3;
  const { volume: exact, skinArea } = cutBall(solved.planes);
  const skin = skinArea * solved.radiusMm ** 2;
  // the mesh stands at most 0.008 mm off the skin
  expect(Math.abs(volume - exact * solved.radiusMm ** 3)).toBeLessThan(0.008 * skin + 1e-6 * volume);
  const triangles = weldedTriangles(corners);
  expect(openEdges(triangles)).toEqual([]);
  expect(eulerNumber(triangles)).toBe(2);
}

const stlReader = (bytes: Uint8Array<ArrayBuffer>): number[] =>
  cornersOf(new STLLoader().parse(bytes.buffer));

/** The XML of a 3MF's model, and its mesh. */
function threeMfReader(bytes: Uint8Array): { xml: string; corners: number[] } {
  const xml = new TextDecoder().decode(unzip(bytes).get("3D/3dmodel.model"));
  const vertices = [...xml.matchAll(/<vertex x="([^"]+)" y="([^"]+)" z="([^"]+)"\/>/g)].map((m) =>
    m.slice(1, 4).map(Number),
  );
  const corners = [...xml.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"\/>/g)].flatMap((m) =>
    m.slice(1, 4).flatMap((v) => vertices[Number(v)]),
  );
  return { xml, corners };
}

const glbReader = (bytes: Uint8Array<ArrayBuffer>): Promise<Group> =>
  new Promise((resolve, reject) =>
    new GLTFLoader().parse(bytes.buffer, "", (gltf) => resolve(gltf.scene), reject),
  );
const glbMeshes = async (solved: SolvedPlan): Promise<Mesh<BufferGeometry, MeshPhysicalMaterial>[]> => {
  const meshes: Mesh<BufferGeometry, MeshPhysicalMaterial>[] = [];
  (await glbReader(glbOf(pieceMesh(solved, METRES), solved))).traverse((o) => {
    if ("isMesh" in o) meshes.push(o as Mesh<BufferGeometry, MeshPhysicalMaterial>);
  });
  return meshes;
};

describe("a model's mesh", () => {
  it("is closed and takes in all of the piece's volume, for any planes", async () => {
    const api = await loadManifold();
    fc.assert(
      fc.property(planesWithin(0.4, 1, 60), (planes) => {
        const mesh: PieceMesh = pieceMesh({ ...uncut, planes, radiusMm: 12.5 }, MM);
        expect(openEdges(mesh.triangles)).toEqual([]);
        expect(eulerNumber(mesh.triangles)).toBe(2);
        const theirs = new api.Manifold(
          new api.Mesh({ numProp: 3, vertProperties: mesh.positions, triVerts: mesh.triangles }),
        );
        expect(theirs.status()).toBe("NoError");
        const exact = cutBall(planes).volume * 12.5 ** 3;
        expect(Math.abs(theirs.volume() - exact)).toBeLessThan(0.008 * 4 * Math.PI * 12.5 ** 2);
      }),
      { seed: SEED, numRuns: 15 },
    );
  });

  it("is whole and true to size for plans as people make them, their tiers meeting", async () => {
    const api = await loadManifold();
    fc.assert(
      fc.property(madePlan, (plan) => {
        const made = solvePlan(plan);
        // on a small piece the same corners and borders come with far fewer chords
        const solved = { ...made, radiusMm: Math.min(made.radiusMm, 10) };
        const solid = cutBall(solved.planes);
        if (solid.vanished) return;
        const mesh = pieceMesh(solved, MM);
        const { positions: p, triangles, facets } = mesh;
        expect(openEdges(triangles)).toEqual([]);
        expect(eulerNumber(triangles)).toBe(2);
        expectPiece(cornersBy(triangles, p), solved, MM);
        const areas = new Map<number, number>();
        let offPlane = 0;
        facets.forEach((facet, i) => {
          const [a, b, c] = [0, 1, 2].map((k) => at(p, triangles[3 * i + k]));
          areas.set(facet, (areas.get(facet) ?? 0) + length(cross(sub(b, a), sub(c, a))) / 2);
          if (facet === SKIN) return;
          const { n, h } = solved.planes[facet];
          for (const v of [a, b, c]) offPlane = Math.max(offPlane, Math.abs(dot(n, v) - h * solved.radiusMm));
        });
        // single precision of coordinates up to the radius
        expect(offPlane).toBeLessThan(4e-7 * solved.radiusMm);
        solid.facets.forEach(({ area, perimeter }, i) => {
          const off = Math.abs((areas.get(i) ?? 0) - area * solved.radiusMm ** 2);
          expect(off).toBeLessThan(0.008 * perimeter * solved.radiusMm + 1e-6 * solved.radiusMm ** 2);
        });
        const theirs = new api.Manifold(new api.Mesh({ numProp: 3, vertProperties: p, triVerts: triangles }));
        expect(theirs.status()).toBe("NoError");
        expect(theirs.genus()).toBe(0);
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it("stays closed for a reader that joins by bits where corners are nearer than single precision tells", () => {
    const third = 1 / Math.sqrt(3);
    // a cube's corner taken off by a facet of some 1e-8 radii: its three corners round to the same numbers
    const planes = [
      ...[0, 1, 2].map((k) => ({ n: [0, 1, 2].map((i) => Number(i === k)) as unknown as Vec3, h: 0.5 })),
      { n: [third, third, third] as const, h: 1.5 * third - 1e-8 },
    ];
    const solved = { ...uncut, planes, radiusMm: 12.5 };
    expect(cutBall(planes).facets[3].outline).toHaveLength(3);
    const { positions: p, triangles } = pieceMesh(solved, MM);
    expectPiece(cornersBy(triangles, p), solved, MM);
    expect(new Set(weldedTriangles(cornersBy(triangles, p))).size).toBe(new Set(triangles).size);
  });

  it("is closed where the second ring closes up to the first", () => {
    const tier = { side: "front", startDeg: 0, count: 6 } as const;
    const solved = solvePlan({
      format: "glintwright-plan",
      version: 1,
      name: "two rings",
      piece: { diameterMm: 29, glass: "borosilicate" },
      rig: { wheelStops: null },
      tiers: [
        { ...tier, id: "a", name: "a", armAngleDeg: 21, depth: { rule: "touch" } },
        { ...tier, id: "b", name: "b", armAngleDeg: 58.3, depth: { rule: "close", to: "a" } },
      ],
    });
    expectPiece(stlReader(stlOf(pieceMesh(solved, MM), "x")), solved, MM);
  });

  it("stands within a hundredth of a millimetre of the true skin, from the smallest piece to the largest", () => {
    for (const radiusMm of [1.5, 15, 150]) {
      const { positions: p, triangles } = pieceMesh({ ...uncut, radiusMm }, MM);
      for (let i = 0; i < triangles.length; i += 3) {
        const middle = [0, 1, 2].map(
          (k) => [0, 1, 2].reduce((s, j) => s + p[3 * triangles[i + j] + k], 0) / 3,
        );
        if (radiusMm - Math.hypot(...middle) > 0.01) expect.fail(`triangle ${i / 3} stands off`);
      }
    }
  });

  it("is refused for a piece of which nothing is left", () => {
    expect(() => pieceMesh(gone, MM)).toThrow(/nothing/);
  });
});

describe("STL", () => {
  it.each(plans)("is read back by three's loader, closed and true to size: %s", (_, solved) => {
    expectPiece(stlReader(stlOf(pieceMesh(solved, MM), solved.plan.name)), solved, MM);
  });

  it("has normals that agree with the winding, and a header no one takes for a text file", () => {
    const bytes = stlOf(pieceMesh(twoSided, MM), "solid\n<b>");
    expect(new TextDecoder().decode(bytes.subarray(0, 5))).not.toBe("solid");
    const geometry = new STLLoader().parse(bytes.buffer);
    const { position, normal } = geometry.attributes;
    for (let i = 0; i < position.count; i += 3) {
      // outward: the piece is convex and holds the centre
      const out =
        position.getX(i) * normal.getX(i) +
        position.getY(i) * normal.getY(i) +
        position.getZ(i) * normal.getZ(i);
      expect(out).toBeGreaterThan(0);
    }
  });
});

describe("3MF", () => {
  it.each(plans)("is read back from its zip and XML, closed and true to size: %s", (_, solved) => {
    const { xml, corners } = threeMfReader(threeMfOf(pieceMesh(solved, MM), solved.plan.name));
    expect(xml).toContain('unit="millimeter"');
    expectPiece(corners, solved, MM);
  });

  it("has the parts that the packaging conventions ask for", () => {
    const files = unzip(threeMfOf(pieceMesh(cubic, MM), "x"));
    expect([...files.keys()].sort()).toEqual(["3D/3dmodel.model", "[Content_Types].xml", "_rels/.rels"]);
    expect(new TextDecoder().decode(files.get("_rels/.rels"))).toContain('Target="/3D/3dmodel.model"');
  });

  it("takes a hostile name for text", () => {
    const { xml } = threeMfReader(threeMfOf(pieceMesh(cubic, MM), HOSTILE_NAME));
    expect(xml).not.toContain("<script");
    expect(xml).toContain("&lt;script&gt;alert(&quot;1&quot;)");
    expect(xml).toContain("硝子");
    expect(xml).not.toContain("\u0007");
  });

  it("is the same to the byte for the same plan", () => {
    const bytes = threeMfOf(pieceMesh(cubic, MM), "x");
    expect(threeMfOf(pieceMesh(cubic, MM), "x")).toEqual(bytes);
  });
});

describe("glTF", () => {
  it.each(plans)("is read back by three's loader, closed across its primitives: %s", async (_, solved) => {
    const corners = (await glbMeshes(solved)).flatMap((mesh) => cornersOf(mesh.geometry));
    expectPiece(corners, solved, METRES);
  });

  it("stands the front up: the window's normal is +y, and the plan's y is -z", async () => {
    const meshes = await glbMeshes(twoSided);
    const window = meshes.find((m) => m.material.name === "prepolished facets");
    const { normal, position } = (window as Mesh).geometry.attributes;
    for (let i = 0; i < normal.count; i++) {
      expect([normal.getX(i), normal.getY(i), normal.getZ(i)]).toEqual([0, 1, 0]);
      expect(position.getY(i)).toBeCloseTo((15 - 2.5) / METRES, 7);
    }
    // waist/5 stands at azimuth 90, +y in the plan
    const waist = meshes.find((m) => m.material.name === "polished facets") as Mesh;
    const normals = waist.geometry.attributes.normal;
    const lowest = Math.min(...Array.from({ length: normals.count }, (_, i) => normals.getZ(i)));
    expect(lowest).toBeCloseTo(-1, 6);
  });

  it("shades skin by its radius and each facet flat", async () => {
    for (const mesh of await glbMeshes(twoSided)) {
      const { position: p, normal: n } = mesh.geometry.attributes;
      const isSkin = mesh.material.name === "natural skin";
      for (let i = 0; i < p.count; i++) {
        const r = Math.hypot(p.getX(i), p.getY(i), p.getZ(i));
        const along = (p.getX(i) * n.getX(i) + p.getY(i) * n.getY(i) + p.getZ(i) * n.getZ(i)) / r;
        if (isSkin) expect(along).toBeCloseTo(1, 6);
        expect(Math.hypot(n.getX(i), n.getY(i), n.getZ(i))).toBeCloseTo(1, 6);
      }
      if (isSkin) continue;
      const index = mesh.geometry.index?.array ?? [];
      for (let i = 0; i < index.length; i += 3) {
        expect(n.getX(index[i])).toBe(n.getX(index[i + 1]));
        expect(n.getZ(index[i])).toBe(n.getZ(index[i + 2]));
      }
    }
  });

  it("says what the glass is: index, transmission, thickness, tint, and roughness by finish", async () => {
    const byName = new Map((await glbMeshes(twoSided)).map((m) => [m.material.name, m.material]));
    expect([...byName.keys()]).toEqual([
      "natural skin",
      "ground facets",
      "prepolished facets",
      "polished facets",
    ]);
    for (const material of byName.values()) {
      expect(material.transmission).toBe(1);
      expect(material.ior).toBeCloseTo(1.4714, 3);
      expect(material.thickness).toBeCloseTo(0.03, 9);
      expect(material.attenuationDistance).toBeCloseTo(0.012, 9);
      expect(material.attenuationColor.toArray()).toEqual([0.4, 0.7, 0.9]);
      expect(material.metalness).toBe(0);
    }
    expect(byName.get("natural skin")?.roughness).toBe(0);
    expect(byName.get("ground facets")?.roughness ?? 0).toBeGreaterThan(
      byName.get("prepolished facets")?.roughness ?? 1,
    );
  });

  it("is one mesh in one node, with a primitive for each material that is there", () => {
    const bytes = glbOf(pieceMesh(cubic, METRES), cubic);
    const view = new DataView(bytes.buffer);
    expect(view.getUint32(8, true)).toBe(bytes.length);
    const length = view.getUint32(12, true);
    expect(length % 4).toBe(0);
    const json = JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + length)));
    expect(json.nodes).toHaveLength(1);
    expect(json.meshes).toHaveLength(1);
    expect(json.meshes[0].primitives).toHaveLength(1);
    expect(json.materials.map((m: { name: string }) => m.name)).toEqual(["polished facets"]);
    expect(json.extensionsUsed).toEqual(
      expect.arrayContaining(["KHR_materials_transmission", "KHR_materials_ior", "KHR_materials_volume"]),
    );
    // a flat primitive of 12 triangles on 24 corners of its own
    expect(json.accessors[0].count).toBe(24);
    expect(json.accessors[2].count).toBe(36);
  });
});
