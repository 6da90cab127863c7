/**
 * glTF 2.0 in its binary container (Khronos Group, glTF 2.0 Specification, section 4.4): one mesh in one node, a
 * primitive for each kind of surface. Metres. glTF has y up, so the piece is turned a quarter about its x axis: what the
 * plan calls front (+z) stands up (+y), and the plan's y points to glTF's -z. Where two primitives border, their vertices
 * have the same bits, so the body is closed; the skin is shaded smooth, each facet flat.
 */
import type { SolvedPlan } from "../plan/solved.ts";
import { materialOf, USED_EXTENSIONS } from "./glb-materials.ts";
import { notShown } from "./not-shown.ts";
import type { PieceMesh } from "./piece-mesh.ts";
import { type Primitive, SURFACES, uprightSurfaces } from "./upright-surfaces.ts";

const GLB_MAGIC = 0x46546c67;
const GLB_VERSION = 2;
const CHUNK_JSON = 0x4e4f534a;
const CHUNK_BIN = 0x004e4942;
const HEADER_BYTES = 12;
const CHUNK_HEADER_BYTES = 8;
const FLOAT = 5126;
const UNSIGNED_INT = 5125;
const ARRAY_BUFFER = 34962;
const ELEMENT_ARRAY_BUFFER = 34963;

/** Least and greatest of each coordinate, in single precision as glTF asks. */
function boundsOf(positions: Float32Array): { min: number[]; max: number[] } {
  const [min, max] = [[0, 1, 2].map(() => Infinity), [0, 1, 2].map(() => -Infinity)];
  positions.forEach((x, i) => {
    min[i % 3] = Math.min(min[i % 3], x);
    max[i % 3] = Math.max(max[i % 3], x);
  });
  return { min, max };
}

/** Gathers arrays into one buffer, every piece four bytes aligned as all of them are of four-byte numbers. */
class BinaryParts {
  readonly parts: (Float32Array | Uint32Array)[] = [];
  readonly views: object[] = [];
  readonly accessors: object[] = [];
  bytes = 0;

  /** Adds an accessor of its own view; returns its index. */
  add(data: Float32Array | Uint32Array, type: "SCALAR" | "VEC3", more: object = {}): number {
    const isIndex = data instanceof Uint32Array;
    this.views.push({
      buffer: 0,
      byteOffset: this.bytes,
      byteLength: data.byteLength,
      target: isIndex ? ELEMENT_ARRAY_BUFFER : ARRAY_BUFFER,
    });
    this.accessors.push({
      bufferView: this.views.length - 1,
      componentType: isIndex ? UNSIGNED_INT : FLOAT,
      count: type === "VEC3" ? data.length / 3 : data.length,
      type,
      ...more,
    });
    this.parts.push(data);
    this.bytes += data.byteLength;
    return this.accessors.length - 1;
  }
}

/** @param mesh of this plan, in metres */
export function glbOf(mesh: PieceMesh, solved: SolvedPlan): Uint8Array<ArrayBuffer> {
  const { plan } = solved;
  const binary = new BinaryParts();
  const primitives = uprightSurfaces(mesh, solved);
  const present = SURFACES.filter((surface) => primitives.has(surface));
  const meshPrimitives = present.map((surface, material) => {
    const { positions, normals, indices } = primitives.get(surface) as Primitive;
    const at = Float32Array.from(positions);
    return {
      attributes: {
        POSITION: binary.add(at, "VEC3", boundsOf(at)),
        NORMAL: binary.add(Float32Array.from(normals), "VEC3"),
      },
      indices: binary.add(Uint32Array.from(indices), "SCALAR"),
      material,
    };
  });
  const json = {
    asset: { version: "2.0", generator: "Glintwright", extras: { notShown: notShown("glb", plan) } },
    extensionsUsed: USED_EXTENSIONS,
    scene: 0,
    scenes: [{ nodes: [0] }],
    nodes: [{ name: plan.name, mesh: 0 }],
    meshes: [{ name: plan.name, primitives: meshPrimitives }],
    materials: present.map((surface) => materialOf(surface, plan.piece)),
    accessors: binary.accessors,
    bufferViews: binary.views,
    buffers: [{ byteLength: binary.bytes }],
  };
  return container(new TextEncoder().encode(JSON.stringify(json)), binary);
}

/** Header and two chunks; the JSON is padded with spaces to a multiple of four bytes. */
function container(json: Uint8Array, binary: BinaryParts): Uint8Array<ArrayBuffer> {
  const jsonBytes = Math.ceil(json.length / 4) * 4;
  const total = HEADER_BYTES + CHUNK_HEADER_BYTES + jsonBytes + CHUNK_HEADER_BYTES + binary.bytes;
  const file = new Uint8Array(total);
  const view = new DataView(file.buffer);
  const words = (at: number, ...values: number[]): void =>
    values.forEach((value, i) => {
      view.setUint32(at + 4 * i, value, true);
    });
  words(0, GLB_MAGIC, GLB_VERSION, total, jsonBytes, CHUNK_JSON);
  let at = HEADER_BYTES + CHUNK_HEADER_BYTES;
  file.fill(" ".charCodeAt(0), at, at + jsonBytes);
  file.set(json, at);
  at += jsonBytes;
  words(at, binary.bytes, CHUNK_BIN);
  at += CHUNK_HEADER_BYTES;
  for (const part of binary.parts) {
    // numbers are little-endian whatever machine writes them
    for (let i = 0; i < part.length; i++, at += 4)
      if (part instanceof Uint32Array) view.setUint32(at, part[i], true);
      else view.setFloat32(at, part[i], true);
  }
  return file;
}
