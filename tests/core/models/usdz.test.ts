import type { BufferGeometry, Group, Mesh, MeshPhysicalMaterial } from "three";
import { USDLoader } from "three/examples/jsm/loaders/USDLoader.js";
import { describe, expect, it } from "vitest";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { pieceMesh } from "../../../src/core/models/piece-mesh.ts";
import { usdzOf } from "../../../src/core/models/usdz.ts";
import type { SolvedPlan } from "../../../src/core/plan/solved.ts";
import { eulerNumber, openEdges, weldedTriangles } from "../geometry/mesh-support.ts";
import { cubic, gone, HOSTILE_NAME, planOf, twoSided, uncut, unzip } from "./model-support.ts";

const METRES = 1000;
const bytesOf = (solved: SolvedPlan) => usdzOf(pieceMesh(solved, METRES), solved);
const layerOf = (solved: SolvedPlan): string =>
  new TextDecoder().decode([...unzip(bytesOf(solved)).values()][0]);
const plans: readonly (readonly [string, SolvedPlan])[] = [
  ["two-sided", twoSided],
  ["cube", cubic],
  ["uncut", uncut],
];

/** Local headers from the first byte on, one after another (PKWARE APPNOTE 6.3, 4.3.7). */
function localHeaders(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer);
  const headers: {
    flags: number;
    method: number;
    packed: number;
    size: number;
    name: string;
    data: number;
  }[] = [];
  for (let at = 0; view.getUint32(at, true) === 0x04034b50; ) {
    const [name, extra] = [view.getUint16(at + 26, true), view.getUint16(at + 28, true)];
    const data = at + 30 + name + extra;
    const packed = view.getUint32(at + 18, true);
    headers.push({
      flags: view.getUint16(at + 6, true),
      method: view.getUint16(at + 8, true),
      packed,
      size: view.getUint32(at + 22, true),
      name: new TextDecoder().decode(bytes.subarray(at + 30, at + 30 + name)),
      data,
    });
    at = data + packed;
  }
  return headers;
}

/** Numbers of an array of the layer, in order. */
function numbersOf(layer: string, name: string): number[] {
  const start = layer.indexOf(` ${name} = [`);
  const text = layer.slice(start, layer.indexOf("]", start));
  return (text.slice(text.indexOf("[")).match(/-?[\d.]+(e[+-]?\d+)?/g) ?? []).map(Number);
}

describe("USDZ, by the rules of its packing", () => {
  it.each(plans)("stores one layer as it is, its data at a multiple of 64 bytes: %s", (_, solved) => {
    const headers = localHeaders(bytesOf(solved));
    expect(headers).toHaveLength(1);
    const [{ flags, method, packed, size, name, data }] = headers;
    expect(method).toBe(0);
    expect(packed).toBe(size);
    // neither encrypted nor with sizes that come only after the data
    expect(flags & 0b1001).toBe(0);
    expect(name).toMatch(/\.usda$/);
    expect(data % 64).toBe(0);
    expect(layerOf(solved)).toMatch(/^#usda 1\.0\n/);
  });

  it("is the same to the byte for the same plan", () => {
    expect(bytesOf(cubic)).toEqual(bytesOf(cubic));
  });

  it("is refused for a piece of which nothing is left", () => {
    expect(() => bytesOf(gone)).toThrow(/nothing/);
  });
});

describe("its layer", () => {
  it.each(plans)(
    "holds the piece in metres, closed across its surfaces, standing on the floor: %s",
    (_, solved) => {
      const layer = layerOf(solved);
      expect(layer).toContain("metersPerUnit = 1\n");
      expect(layer).toContain('upAxis = "Y"');
      const p = numbersOf(layer, "points");
      const indices = numbersOf(layer, "faceVertexIndices");
      expect(numbersOf(layer, "faceVertexCounts")).toEqual(Array(indices.length / 3).fill(3));
      const corners = indices.flatMap((v) => [p[3 * v], p[3 * v + 1], p[3 * v + 2]].map(Math.fround));
      const triangles = weldedTriangles(corners);
      expect(openEdges(triangles)).toEqual([]);
      expect(eulerNumber(triangles)).toBe(2);
      let six = 0;
      for (let i = 0; i < corners.length; i += 9) {
        const [a, b, c, d, e, f, g, h, k] = corners.slice(i, i + 9);
        six += a * (e * k - f * h) + b * (f * g - d * k) + c * (d * h - e * g);
      }
      const { volume, skinArea } = cutBall(solved.planes);
      const R = solved.radiusMm;
      const off = Math.abs((six / 6) * METRES ** 3 - volume * R ** 3);
      expect(off).toBeLessThan(0.008 * skinArea * R * R + 1e-6 * volume * R ** 3);
      const lowest = Math.min(...p.filter((_x, i) => i % 3 === 1));
      expect(layer).toContain(`xformOp:translate = (0, ${Number((-lowest).toPrecision(9))}, 0)`);
    },
  );

  it("is read by three's loader: true size, front up, outward normals, glass", async () => {
    const scene: Group = new USDLoader().parse(bytesOf(twoSided).buffer);
    const meshes: Mesh<BufferGeometry, MeshPhysicalMaterial | MeshPhysicalMaterial[]>[] = [];
    scene.updateMatrixWorld(true);
    scene.traverse((o) => {
      if ("isMesh" in o) meshes.push(o as (typeof meshes)[number]);
    });
    expect(meshes).toHaveLength(1);
    const { position, normal } = meshes[0].geometry.attributes;
    let [top, bottom, out] = [-1, 1, 1];
    for (let i = 0; i < position.count; i++) {
      const [x, y, z] = [position.getX(i), position.getY(i), position.getZ(i)];
      [top, bottom] = [Math.max(top, y), Math.min(bottom, y)];
      out = Math.min(
        out,
        (x * normal.getX(i) + y * normal.getY(i) + z * normal.getZ(i)) / Math.hypot(x, y, z),
      );
    }
    // the window at the front pole lies 2.5 mm below the skin; the convex piece holds the centre
    expect(top).toBeCloseTo(0.0125, 6);
    expect(bottom).toBeCloseTo(-0.015, 5);
    expect(out).toBeGreaterThan(0);
    expect(scene.getObjectByName("Piece")?.position.y ?? meshes[0].parent?.position.y).toBeCloseTo(
      -bottom,
      6,
    );
    const materials = [meshes[0].material].flat();
    expect(materials).toHaveLength(4);
    for (const material of materials) {
      expect(material.ior).toBeCloseTo(1.4714, 3);
      expect(material.opacity).toBeLessThan(1);
      expect(material.metalness).toBe(0);
      // seen through 30 mm of a tint picked at 12 mm
      expect(material.color.r).toBeCloseTo(0.4 ** 2.5, 4);
    }
    expect(materials.map((m) => m.roughness > 0)).toEqual([false, true, true, false]);
  });

  it("gives every triangle one material, each facet the one of its finish", () => {
    const layer = layerOf(twoSided);
    const count = numbersOf(layer, "faceVertexIndices").length / 3;
    const subsets = [...layer.matchAll(/GeomSubset "(\w+)"[\s\S]*?int\[\] indices = \[([\d, ]+)\]/g)];
    expect(subsets.map(([, name]) => name)).toEqual(["skin", "ground", "prepolished", "polished"]);
    const faces = subsets.flatMap(([, , list]) => list.split(", ").map(Number));
    expect(faces).toEqual(Array.from({ length: count }, (_, i) => i));
  });

  it("says what it can't show, only where the plan has it", () => {
    expect(layerOf(twoSided)).toMatch(/doc = ".*Not shown: refraction, dispersion.*ground and pre-polished/);
    expect(layerOf(cubic)).not.toMatch(/ground and pre-polished|inside the glass/);
    const core = { kind: "core", diameterMm: 8, rgb: [0.1, 0.2, 0.5] } as const;
    const { plan } = uncut;
    const filled = { ...uncut, plan: planOf([], { piece: { ...plan.piece, inside: [core] } }) };
    expect(layerOf(filled)).toMatch(/what is inside the glass/);
  });

  it("takes a hostile name for text", () => {
    const hostile = `${HOSTILE_NAME}\\ "\n) def Xform "x`;
    const layer = layerOf({ ...cubic, plan: { ...cubic.plan, name: hostile } });
    const line = /string name = (".*")\n/.exec(layer)?.[1] ?? "";
    expect(line).toMatch(/^"(?:[^"\\]|\\["\\])*"$/);
    expect(line).toContain("硝子");
    expect(layer.match(/^\s*def Xform/gm)).toHaveLength(1);
  });
});
