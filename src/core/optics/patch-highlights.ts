/**
 * Lamps mirrored in the skin of a photographed ball are no part of its inside: burnt-out spots are filled from around them,
 * each pixel the mean of its neighbours (Laplace's equation, by relaxation), and told.
 */
import type { Outline } from "./photo.ts";
import type { Raster } from "./raster.ts";

/** All channels above this are burnt out; the rim of such a spot is lighter than it was, so a few pixels more go. */
const BURNT = 247;
const RIM_SHARE = 0.012;
/** Larger spots are white glass or the light itself, not its mirror: share of the ball's face. */
const LARGEST_SPOT = 0.04;
const ROUNDS = 400;

export interface Patched {
  readonly photo: Raster;
  /** 1 where something was patched. */
  readonly mask: Uint8Array;
  /** How much of the ball's face was patched, 0..1. */
  readonly share: number;
}

/** Burnt-out pixels within the outline, spots of light only. */
function spots({ width, height, rgba }: Raster, { x, y, r }: Outline): Uint8Array {
  const burnt = new Uint8Array(width * height);
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const at = 4 * (j * width + i);
      const isBurnt = [0, 1, 2].every((c) => rgba[at + c] >= BURNT);
      if (isBurnt && Math.hypot(i + 0.5 - x, j + 0.5 - y) < 0.98 * r) burnt[j * width + i] = 1;
    }
  const most = LARGEST_SPOT * Math.PI * r * r;
  const seen = new Uint8Array(width * height);
  for (let start = 0; start < burnt.length; start++) {
    if (!burnt[start] || seen[start]) continue;
    const spot = [start];
    seen[start] = 1;
    for (let k = 0; k < spot.length; k++) {
      const here = spot[k];
      for (const next of [here - 1, here + 1, here - width, here + width])
        if (burnt[next] && !seen[next]) {
          seen[next] = 1;
          spot.push(next);
        }
    }
    if (spot.length > most) for (const k of spot) burnt[k] = 0;
  }
  return burnt;
}

/** The mask, grown by so many pixels, within the photograph. */
function grown(mask: Uint8Array, width: number, height: number, by: number): Uint8Array {
  const wide = new Uint8Array(mask.length);
  for (let k = 0; k < mask.length; k++) {
    if (!mask[k]) continue;
    const [x, y] = [k % width, Math.floor(k / width)];
    for (let j = Math.max(0, y - by); j <= Math.min(height - 1, y + by); j++)
      wide.fill(1, j * width + Math.max(0, x - by), j * width + Math.min(width - 1, x + by) + 1);
  }
  return wide;
}

export function patchHighlights(photo: Raster, outline: Outline): Patched {
  const { width, height } = photo;
  const mask = grown(spots(photo, outline), width, height, Math.max(1, Math.round(RIM_SHARE * outline.r)));
  const places: number[] = [];
  for (let k = 0; k < mask.length; k++) if (mask[k]) places.push(k);
  const rgba = photo.rgba.slice();
  const share = places.length / (Math.PI * outline.r * outline.r);
  for (let c = 0; c < 3 && places.length > 0; c++) relax(rgba, places, mask, width, height, c);
  return { photo: { width, height, rgba }, mask, share };
}

/** Gauss and Seidel's rounds, there and back by turns, over-relaxed; begins with the mean of what stands around. */
function relax(
  rgba: Uint8Array,
  places: readonly number[],
  mask: Uint8Array,
  width: number,
  height: number,
  c: number,
) {
  const around = (k: number): number[] => {
    const [x, y] = [k % width, Math.floor(k / width)];
    const near = [];
    if (x > 0) near.push(k - 1);
    if (x < width - 1) near.push(k + 1);
    if (y > 0) near.push(k - width);
    if (y < height - 1) near.push(k + width);
    return near;
  };
  const value = new Map<number, number>();
  const rim = places.flatMap(around).filter((k) => !mask[k]);
  const start = rim.reduce((sum, k) => sum + rgba[4 * k + c], 0) / Math.max(1, rim.length);
  for (const k of places) value.set(k, start);
  const nears = places.map(around);
  const at = (k: number): number => value.get(k) ?? rgba[4 * k + c];
  for (let round = 0; round < ROUNDS; round++) {
    let moved = 0;
    for (let i = 0; i < places.length; i++) {
      const j = round % 2 === 0 ? i : places.length - 1 - i;
      const near = nears[j];
      const here = at(places[j]);
      const step = 1.7 * (near.reduce((sum, k) => sum + at(k), 0) / near.length - here);
      value.set(places[j], here + step);
      moved = Math.max(moved, Math.abs(step));
    }
    if (moved < 0.1) break;
  }
  for (const [k, v] of value) rgba[4 * k + c] = Math.round(Math.min(255, Math.max(0, v)));
}
