/** How many times one sees the design inside: patches of neighbouring rays that end close together within it. */
import { GRID } from "./places.ts";
import { INSIDE, type RayEnds } from "./straight-rays.ts";

/** Patches of fewer rays are specks, not counted. */
const LEAST_IMAGE = 4;
/** Neighbouring rays belong to one image where they end within this, radii. */
const SAME_IMAGE = 0.25;

export function countImages({ fates, ends }: RayEnds): number {
  const open = new Int32Array(fates.length);
  const isDone = new Uint8Array(fates.length);
  let left = 0;
  const visit = (from: number, to: number): void => {
    if (isDone[to] || fates[to] !== INSIDE) return;
    const [dx, dy, dz] = [0, 1, 2].map((c) => ends[3 * to + c] - ends[3 * from + c]);
    if (dx * dx + dy * dy + dz * dz > SAME_IMAGE * SAME_IMAGE) return;
    isDone[to] = 1;
    open[left++] = to;
  };
  let images = 0;
  for (let start = 0; start < fates.length; start++) {
    if (isDone[start] || fates[start] !== INSIDE) continue;
    let size = 0;
    visit(start, start);
    while (left > 0) {
      const ray = open[--left];
      size++;
      const column = ray % GRID;
      if (column > 0) visit(ray, ray - 1);
      if (column < GRID - 1) visit(ray, ray + 1);
      if (ray >= GRID) visit(ray, ray - GRID);
      if (ray < fates.length - GRID) visit(ray, ray + GRID);
    }
    if (size >= LEAST_IMAGE) images++;
  }
  return images;
}
