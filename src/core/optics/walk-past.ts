/** What one sees of a piece as it leans, for a picture's own frame: straight rays of one colour from far away, a count on a grid. */
import type { Vec3 } from "../geometry/vec.ts";
import { countImages } from "../measure/images.ts";
import { BACK, emptyEnds, StraightRays, seenOf, THROUGH } from "../measure/straight-rays.ts";
import type { Scene } from "./scene.ts";

export interface WalkPast {
  /** Separate images of what is inside. */
  readonly images: number;
  /** Shares of the face one sees, 0 .. 1: where light from the viewer's side comes back, and where one sees through. */
  readonly back: number;
  readonly through: number;
}

/** @param back unit, from the centre to the far viewer; `right` and `up` make the picture's frame with it */
export function walkPast(scene: Scene, right: Vec3, up: Vec3, back: Vec3): WalkPast {
  const ends = emptyEnds();
  new StraightRays(scene).look({ right, up, view: back }, ends);
  const seen = Math.max(1, seenOf(ends));
  return {
    images: countImages(ends),
    back: ends.counts[BACK] / seen,
    through: ends.counts[THROUGH] / seen,
  };
}
