/**
 * Edges of polished glass: the pad that polishes two faces rounds what lies between them. Faces and outlines stay as the planes
 * have them; only the normal turns, along the last hair before an edge, from the face's own to the one that halves the edge. So an
 * edge mirrors a line of light, as it does in the hand. Where light comes in; from within an edge is sharp. Unit sphere.
 */
import { dot, normalize, type Vec3 } from "../geometry/vec.ts";
import { facing } from "./facing.ts";
import type { Scene } from "./scene.ts";

/** Radius to which polishing by hand rounds an edge, mm: what is round is then some 0.05 across. Common practice, no source. */
export const EDGE_MM = 0.1;

type Body = Pick<Scene, "planes" | "planeCount" | "edgeRadius">;

/** Keeps faces that are one from being divided by nothing. */
const LEAST = 1e-9;

/**
 * How much a neighbour's normal counts for one of the face's own: nothing until rounding begins, as much on the edge. A cylinder
 * of radius r that touches both faces does so r tan(theta / 2) from the edge, theta between their normals; there the place lies
 * r (1 - cos theta) below the neighbour's plane.
 */
function turnBy(radius: number, cos: number, below: number): number {
  const near = Math.min(1, 1 - below / Math.max(LEAST, radius * (1 - cos)));
  return near > 0 ? near / (2 - near) : 0;
}

/**
 * Outward normal at p of a surface met from outside along d; `n` is its own.
 * @param surface position of its plane, or -1 for the natural skin
 */
export function roundedNormal(body: Body, surface: number, p: Vec3, n: Vec3, d: Vec3): Vec3 {
  const { planes, planeCount, edgeRadius } = body;
  if (edgeRadius === 0) return n;
  const sum: [number, number, number] = [n[0], n[1], n[2]];
  const add = (x: number, y: number, z: number, below: number) => {
    const share = turnBy(edgeRadius, n[0] * x + n[1] * y + n[2] * z, below);
    sum[0] += share * x;
    sum[1] += share * y;
    sum[2] += share * z;
  };
  if (surface >= 0) {
    const r = Math.sqrt(dot(p, p));
    if (1 - r < 2 * edgeRadius) add(p[0] / r, p[1] / r, p[2] / r, 1 - r);
  }
  for (let i = 0; i < planeCount; i++) {
    if (i === surface) continue;
    const [x, y, z] = [planes[4 * i], planes[4 * i + 1], planes[4 * i + 2]];
    const below = planes[4 * i + 3] - (x * p[0] + y * p[1] + z * p[2]);
    if (below < 2 * edgeRadius) add(x, y, z, below);
  }
  return facing(normalize(sum), n, d);
}
