/** What tests of meshes and solids share: planes drawn at random, closedness by counting edges, and manifold-3d. */
import fc from "fast-check";
import ManifoldModule, { type ManifoldToplevel } from "manifold-3d";
import type { CutMesh } from "../../../src/core/geometry/mesh.ts";
import type { Plane } from "../../../src/core/geometry/plane.ts";
import { normalize, type Vec3 } from "../../../src/core/geometry/vec.ts";

/** All properties run on the same inputs every time. */
export const SEED = 20261125;

/** Uniform on a range: fast-check's own doubles are uniform in their bits, so most of them lie near zero. */
const STEPS = 2 ** 30;
export const within = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((i) => min + ((max - min) * i) / STEPS);

/** A uniform direction. */
export const direction: fc.Arbitrary<Vec3> = fc
  .tuple(within(-1, 1), within(0, 2 * Math.PI))
  .map(([z, t]): Vec3 => {
    const r = Math.sqrt(1 - z * z);
    return normalize([r * Math.cos(t), r * Math.sin(t), z]);
  });

export const planeWithin = (min: number, max: number): fc.Arbitrary<Plane> =>
  fc.record({ n: direction, h: within(min, max) });

export const planesWithin = (min: number, max: number, maxLength: number): fc.Arbitrary<Plane[]> =>
  fc.array(planeWithin(min, max), { minLength: 1, maxLength });

/** Axis planes, repeats, opposites, tangents and planes through the centre, among ordinary ones. */
export const awkwardPlanes: fc.Arbitrary<Plane[]> = fc
  .array(
    fc.record({
      n: fc.oneof(
        direction,
        fc.constantFrom<Vec3>([1, 0, 0], [0, 1, 0], [0, 0, 1], [-1, 0, 0], [0, -1, 0], [0, 0, -1]),
        fc.constantFrom<Vec3>([0.6, 0.8, 0], [0, -0.6, 0.8], normalize([1, 1, 1]), normalize([-1, -1, -1])),
      ),
      h: fc.oneof(
        { weight: 6, arbitrary: fc.double({ min: 0.3, max: 1.1, noNaN: true }) },
        { weight: 1, arbitrary: fc.double({ min: -1.2, max: 0.3, noNaN: true }) },
        { weight: 3, arbitrary: fc.constantFrom(0.5, 0.5 + 1e-12, 0.5 + 3e-12, Math.SQRT1_2, 0.9) },
        { weight: 1, arbitrary: fc.constantFrom(-1, -0.5, 0, 1e-13, 1 - 1e-12, 1, 1 + 1e-9) },
      ),
    }),
    { minLength: 1, maxLength: 24 },
  )
  .map((planes) => [...planes, ...planes.slice(0, planes.length % 3)]);

/** More vertices than any mesh here has: an edge is one number. */
const MOST_VERTICES = 2 ** 26;

/** Edges that are not shared by exactly two triangles running along it in opposite directions; none on a closed mesh. */
export function openEdges(triangles: ArrayLike<number>): string[] {
  const [along, back] = [new Float64Array(triangles.length), new Float64Array(triangles.length)];
  for (let i = 0; i < triangles.length; i++) {
    const [a, b] = [triangles[i], triangles[i % 3 === 2 ? i - 2 : i + 1]];
    along[i] = a * MOST_VERTICES + b;
    back[i] = b * MOST_VERTICES + a;
  }
  // in order, each edge once and the same ones both ways
  along.sort();
  back.sort();
  const open: string[] = [];
  for (let i = 0; i < along.length; i++)
    if (along[i] !== back[i] || along[i] === along[i - 1])
      open.push(`${Math.floor(along[i] / MOST_VERTICES)},${along[i] % MOST_VERTICES}`);
  return open;
}

/** Vertices - edges + faces of a closed triangle mesh. */
export function eulerNumber(triangles: ArrayLike<number>): number {
  const vertices = new Set(Array.from(triangles)).size;
  // three edges a triangle, each shared by two
  return vertices - triangles.length / 6;
}

/** Names vertices by their single-precision bits, as a reader of a file would; minus nought is nought. */
export function weldedTriangles(corners: ArrayLike<number>): number[] {
  const single = new Float32Array(corners.length);
  for (let i = 0; i < corners.length; i++) single[i] = corners[i] + 0;
  const bits = new Int32Array(single.buffer);
  const isSame = (v: number, w: number) =>
    bits[3 * v] === bits[3 * w] && bits[3 * v + 1] === bits[3 * w + 1] && bits[3 * v + 2] === bits[3 * w + 2];
  const count = corners.length / 3;
  // the first vertex of each kind, at a place that its bits tell or the next free one after it
  const slots = new Int32Array(2 ** Math.ceil(Math.log2(2 * count + 2))).fill(-1);
  const last = slots.length - 1;
  const names = new Array<number>(count);
  let known = 0;
  for (let v = 0; v < count; v++) {
    const mixed = Math.imul(
      Math.imul(bits[3 * v], 0x9e3779b1) ^ Math.imul(bits[3 * v + 1], 0x85ebca6b) ^ bits[3 * v + 2],
      0xc2b2ae35,
    );
    let slot = (mixed ^ (mixed >>> 15)) & last;
    while (slots[slot] >= 0 && !isSame(slots[slot], v)) slot = (slot + 1) & last;
    names[v] = slots[slot] < 0 ? known++ : names[slots[slot]];
    if (slots[slot] < 0) slots[slot] = v;
  }
  return names;
}

let loading: Promise<ManifoldToplevel> | undefined;
export function loadManifold(): Promise<ManifoldToplevel> {
  loading ??= ManifoldModule().then((api) => {
    api.setup();
    return api;
  });
  return loading;
}

/** The mesh as manifold-3d takes it; its constructor throws for anything that is not a closed manifold. */
export const toManifold = (
  api: ManifoldToplevel,
  { positions, triangles }: Pick<CutMesh, "positions" | "triangles">,
): InstanceType<ManifoldToplevel["Manifold"]> =>
  new api.Manifold(
    new api.Mesh({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles.slice() }),
  );

/** Cuts one plane after another; manifold-3d keeps the side its normal points to. */
export const trimByPlanes = (
  body: InstanceType<ManifoldToplevel["Manifold"]>,
  planes: readonly Plane[],
): InstanceType<ManifoldToplevel["Manifold"]> =>
  planes.reduce((left, { n, h }) => left.trimByPlane([-n[0], -n[1], -n[2]], -h), body);
