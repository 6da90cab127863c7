/** Whether a body is its own mirror image, so that what is seen on one side of the mirror need not be traced on the other. */
import type { SceneDesign } from "../optics/inside.ts";
import { BUBBLE, CORE, TINTED_CORE } from "../optics/inside.ts";
import type { RayBody } from "./straight-rays.ts";

/** Rounding of a placed facet's normal, with room; a facet really turned is off by far more. */
const SAME = 1e-12;

/** A ball or ellipsoid round about the piece's own axis is its own image; of all else that is not asked. */
function isDesignMirrored({ kind, centre, axisZ, size }: SceneDesign, axis: 0 | 1): boolean {
  const isRound = kind === CORE || kind === BUBBLE || kind === TINTED_CORE;
  const isBall = size[0] === size[1] && size[1] === size[2];
  return isRound && Math.abs(centre[axis]) <= SAME && (isBall || Math.abs(axisZ[axis]) <= SAME);
}

/** @param axis 0: x becomes -x, 1: y becomes -y */
export function isMirrored({ planeCount, planes, designs }: RayBody, axis: 0 | 1): boolean {
  const near = (a: number, b: number) => Math.abs(a - b) <= SAME;
  const hasTwin = (k: number): boolean => {
    const sign = (c: number) => (c === axis ? -1 : 1);
    for (let j = 0; j < planeCount; j++) {
      const isTwin = [0, 1, 2, 3].every((c) => near(planes[4 * j + c], sign(c) * planes[4 * k + c]));
      if (isTwin) return true;
    }
    return false;
  };
  for (let k = 0; k < planeCount; k++) if (!hasTwin(k)) return false;
  return designs.every((design) => isDesignMirrored(design, axis));
}
