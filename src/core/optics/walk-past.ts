/**
 * What one sees of a piece as it leans: straight rays of one colour from far away, each followed along its stronger way
 * (through where glass lets it through, back where it is totally reflected) until it meets the inside or leaves.
 * A count on a grid, so it is good to a few parts in a hundred, and is said so.
 */
import { add, dot, scale, type Vec3 } from "../geometry/vec.ts";
import { bodyNormal, enterBody, NOWHERE, nextOnBody, pointOnBody } from "./body.ts";
import { cos2Refracted, reflectRay, refractRay } from "./fresnel.ts";
import { BACKING, BUBBLE, hitDesign, TINTED_CORE } from "./inside.ts";
import type { Scene } from "./scene.ts";

export interface WalkPast {
  /** Separate images of what is inside. */
  readonly images: number;
  /** Shares of the face one sees, 0 .. 1: where light from the viewer's side comes back, and where one sees through. */
  readonly back: number;
  readonly through: number;
}

/** Rays across the picture of the ball. */
const GRID = 96;
/** Images of fewer rays are specks, not counted. */
const LEAST_IMAGE = 4;
/** Neighbouring rays belong to one image when they meet the inside no farther apart than this many grid steps. */
const SAME_IMAGE = 12;
const MOST_MEETINGS = 40;
const FAR = 10;

type Fate = { readonly kind: "inside"; readonly at: Vec3 } | { readonly kind: "back" | "through" | "lost" };

/** @param back unit, from the centre to the far viewer; `right` and `up` make the picture's frame with it */
export function walkPast(scene: Scene, right: Vec3, up: Vec3, back: Vec3): WalkPast {
  const d = scale(back, -1);
  const fates: (Fate | null)[] = [];
  for (let y = 0; y < GRID; y++)
    for (let x = 0; x < GRID; x++) {
      const [sx, sy] = [(2 * x + 1) / GRID - 1, (2 * y + 1) / GRID - 1];
      fates.push(follow(scene, add(add(scale(right, sx), scale(up, sy)), scale(back, FAR)), d));
    }
  const seen = fates.filter((fate) => fate !== null);
  const share = (kind: Fate["kind"]) =>
    seen.filter((fate) => fate.kind === kind).length / Math.max(1, seen.length);
  return { images: countImages(fates), back: share("back"), through: share("through") };
}

/** Where a ray's stronger way ends; null when it passes the piece by. */
function follow(scene: Scene, o: Vec3, towards: Vec3): Fate | null {
  const entry = enterBody(scene, o, towards);
  if (!entry) return null;
  let p = pointOnBody(scene, o, towards, entry.t, entry.surface);
  const first = bodyNormal(scene, entry.surface, p);
  let d = refractRay(towards, first, -dot(towards, first), 1 / scene.nd);
  let from = entry.surface;
  for (let meeting = 0; meeting < MOST_MEETINGS; meeting++) {
    const ahead = nextOnBody(scene, p, d, from);
    const at = insideHit(scene, p, d, ahead.t);
    if (at) return { kind: "inside", at };
    p = pointOnBody(scene, p, d, ahead.t, ahead.surface);
    const n = scale(bodyNormal(scene, ahead.surface, p), -1);
    const cosI = Math.max(0, -dot(d, n));
    if (cos2Refracted(cosI, scene.nd) > 0) {
      const out = refractRay(d, n, cosI, scene.nd);
      return { kind: dot(out, towards) > 0 ? "through" : "back" };
    }
    d = reflectRay(d, n, cosI);
    from = ahead.surface;
  }
  return { kind: "lost" };
}

/** Where a ray first meets something that one would call the inside design; a backing is a ground, not an image. */
function insideHit(scene: Scene, p: Vec3, d: Vec3, tMax: number): Vec3 | null {
  let nearest: number | null = null;
  for (const design of scene.designs) {
    if (design.kind === BACKING) continue;
    // Tinted cores have no surface for the tracer, but are seen all the same: as their opaque twin would be.
    const solid = design.kind === TINTED_CORE ? { ...design, kind: BUBBLE } : design;
    const hit = hitDesign(solid, p, d, nearest ?? tMax, NOWHERE);
    if (hit) nearest = hit.t;
  }
  return nearest === null ? null : add(p, scale(d, nearest));
}

/** Connected regions of rays that meet the inside, joined where neighbours meet it close together. */
function countImages(fates: readonly (Fate | null)[]): number {
  const near = (SAME_IMAGE * 2) / GRID;
  const point = (i: number): Vec3 | null => {
    const fate = fates[i];
    return fate?.kind === "inside" ? fate.at : null;
  };
  const joins = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) <= near;
  const done = new Set<number>();
  let images = 0;
  for (let start = 0; start < fates.length; start++) {
    if (done.has(start) || !point(start)) continue;
    const open = [start];
    let size = 0;
    done.add(start);
    for (let i = open.pop(); i !== undefined; i = open.pop()) {
      size++;
      const here = point(i) as Vec3;
      const x = i % GRID;
      for (const next of [x > 0 ? i - 1 : -1, x < GRID - 1 ? i + 1 : -1, i - GRID, i + GRID]) {
        const there = next >= 0 && next < fates.length && !done.has(next) ? point(next) : null;
        if (!there || !joins(here, there)) continue;
        done.add(next);
        open.push(next);
      }
    }
    if (size >= LEAST_IMAGE) images++;
  }
  return images;
}
