/** Whether a body is its own image in a mirror or turned half round, so that what is seen once need not be traced again. */
import type { SceneDesign } from "../optics/inside.ts";
import { BUBBLE, CORE, TINTED_CORE } from "../optics/inside.ts";
import type { RayBody } from "./straight-rays.ts";

/** Rounding of a placed facet's normal, with room; a facet really turned is off by far more. */
const SAME = 1e-12;

/** What becomes of each coordinate, 1 or -1. */
type Signs = readonly [number, number, number];
/** Mirrors through the piece's axis, and half a turn about it. */
export const SIDEWAYS: Signs = [-1, 1, 1];
export const UPSIDE_DOWN: Signs = [1, -1, 1];
export const HALF_TURN: Signs = [-1, -1, 1];

/** A ball or ellipsoid round about the piece's own axis is its own image; of all else that is not asked. */
function isDesignItself({ kind, centre, axisZ, size }: SceneDesign, signs: Signs): boolean {
  const isRound = kind === CORE || kind === BUBBLE || kind === TINTED_CORE;
  const isBall = size[0] === size[1] && size[1] === size[2];
  return (
    isRound &&
    [0, 1].every(
      (c) => signs[c] > 0 || (Math.abs(centre[c]) <= SAME && (isBall || Math.abs(axisZ[c]) <= SAME)),
    )
  );
}

/** Whether every plane has its image among the planes, and so has what is inside. */
export function isItself({ planeCount, planes, designs }: RayBody, signs: Signs): boolean {
  const hasImage = (k: number): boolean => {
    const x = signs[0] * planes[k];
    const y = signs[1] * planes[k + 1];
    const z = signs[2] * planes[k + 2];
    for (let j = 0; j < 4 * planeCount; j += 4)
      if (
        Math.abs(planes[j] - x) <= SAME &&
        Math.abs(planes[j + 1] - y) <= SAME &&
        Math.abs(planes[j + 2] - z) <= SAME &&
        Math.abs(planes[j + 3] - planes[k + 3]) <= SAME
      )
        return true;
    return false;
  };
  for (let k = 0; k < 4 * planeCount; k += 4) if (!hasImage(k)) return false;
  return designs.every((design) => isDesignItself(design, signs));
}
