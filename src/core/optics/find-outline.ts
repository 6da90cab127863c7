/**
 * Where the ball stands in a photograph: the largest round outline that enough edges agree on. Votes for centres along each
 * edge's gradient (Duda and Hart's Hough transform for circles, Comm. ACM 15, 1972, with the gradient as Kimme et al. 1975 use
 * it) find it roughly, on a small copy; a circle through the strongest edges near it (I. Kasa, IEEE Trans. Instrum. Meas. 25,
 * 1976), outliers left out, finds it well.
 */
import type { Outline } from "./photo.ts";
import { LINEAR_OF_BYTE, type Raster } from "./raster.ts";

/** What can stand in the way. */
export type OutlineFault =
  | { readonly code: "none" }
  /** The ball is fewer pixels across than a picture of it needs. */
  | { readonly code: "too-small"; readonly pixels: number }
  /** Part of the ball lies beyond the photograph. */
  | { readonly code: "cut-off"; readonly outline: Outline };

export type FoundOutline = { readonly outline: Outline } | OutlineFault;

/** Edge of the small copy on which votes are cast, pixels. */
const SMALL = 180;
/** Radii that are looked for, as shares of the photograph's shorter side. */
const LEAST_SHARE = 0.12;
const MOST_SHARE = 0.75;
/** Votes for a circle, in pixels of its circumference (an edge is about two pixels wide), and the share of a peak's at which it is past. */
const LEAST_VOTES = 0.5;
const PAST_PEAK = 0.9;
/** Fewer pixels across hold no picture. */
const LEAST_ACROSS = 64;
/** Share of the edges, the strongest, that vote. */
const EDGES = 0.12;
/** Directions in which the outline is looked for again, share of its radius that it may be off, and outliers beyond this many pixels. */
const SPOKES = 360;
const SEARCH = 0.08;
const ROUNDS = 6;

interface Grey {
  readonly width: number;
  readonly height: number;
  readonly v: Float32Array;
}

/** Lightness, averaged over blocks so that the longer edge is at most `most` pixels. */
function greyOf({ width, height, rgba }: Raster, most: number): Grey & { readonly scale: number } {
  const block = Math.max(1, Math.ceil(Math.max(width, height) / most));
  const [w, h] = [Math.floor(width / block), Math.floor(height / block)];
  const v = new Float32Array(w * h);
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      let sum = 0;
      for (let j = 0; j < block; j++)
        for (let i = 0; i < block; i++) {
          const at = 4 * ((y * block + j) * width + x * block + i);
          const light = (c: 0 | 1 | 2) => LINEAR_OF_BYTE[rgba[at + c]];
          sum += 0.2126 * light(0) + 0.7152 * light(1) + 0.0722 * light(2);
        }
      v[y * w + x] = Math.sqrt(sum / (block * block));
    }
  return { width: w, height: h, v, scale: block };
}

/** Sobel's gradient, and how strong an edge must be to belong to the strongest. */
function edgesOf({ width, height, v }: Grey) {
  const gx = new Float32Array(width * height);
  const gy = new Float32Array(width * height);
  const strength = new Float32Array(width * height);
  const at = (x: number, y: number): number => v[y * width + x];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const k = y * width + x;
      const column = (i: number) => at(i, y - 1) + 2 * at(i, y) + at(i, y + 1);
      const row = (j: number) => at(x - 1, j) + 2 * at(x, j) + at(x + 1, j);
      gx[k] = column(x + 1) - column(x - 1);
      gy[k] = row(y + 1) - row(y - 1);
      strength[k] = Math.hypot(gx[k], gy[k]);
    }
  const sorted = Float32Array.from(strength).sort();
  const enough = Math.max(0.02, sorted[Math.floor((1 - EDGES) * sorted.length)]);
  return { gx, gy, strength, enough };
}

/** The largest circle that enough edges vote for; null when there is none. */
function vote(grey: Grey): Outline | null {
  const { width, height } = grey;
  const { gx, gy, strength, enough } = edgesOf(grey);
  const shorter = Math.min(width, height);
  const [least, most] = [Math.max(4, Math.floor(LEAST_SHARE * shorter)), Math.ceil(MOST_SHARE * shorter)];
  const edges: number[] = [];
  for (let k = 0; k < strength.length; k++) if (strength[k] >= enough) edges.push(k);
  // centres up to a quarter beyond the photograph's edges
  const [padX, padY] = [width >> 2, height >> 2];
  const [w, h] = [width + 2 * padX, height + 2 * padY];
  const nothing = { x: 0, y: 0, r: 0, share: 0 };
  let best = nothing;
  const votes = new Uint16Array(w * h);
  for (let r = most; r >= least; r--) {
    votes.fill(0);
    let here = nothing;
    for (const k of edges) {
      const length = strength[k];
      const [x, y] = [k % width, Math.floor(k / width)];
      for (const sign of [1, -1]) {
        const cx = Math.round(x + (sign * r * gx[k]) / length) + padX;
        const cy = Math.round(y + (sign * r * gy[k]) / length) + padY;
        if (cx >= 1 && cy >= 1 && cx < w - 1 && cy < h - 1) votes[cy * w + cx] = votes[cy * w + cx] + 1;
      }
    }
    for (let y = 1; y < h - 1; y++)
      for (let x = 1; x < w - 1; x++) {
        let sum = 0;
        for (let j = -1; j <= 1; j++) for (let i = -1; i <= 1; i++) sum += votes[(y + j) * w + x + i];
        const share = sum / (2 * Math.PI * r);
        if (share > here.share) here = { x: x - padX + 0.5, y: y - padY + 0.5, r, share };
      }
    // a ring inside may have more votes: the largest that stands out from its neighbours is the ball
    if (best.share >= LEAST_VOTES && here.share < PAST_PEAK * best.share) return best;
    if (here.share > best.share) best = here;
  }
  return best.share >= LEAST_VOTES ? best : null;
}

/** The least-squares circle through points (Kasa): x^2 + y^2 = a x + b y + c. */
function circleThrough(points: readonly (readonly [number, number])[]): Outline | null {
  let [sx, sy, sxx, syy, sxy, sxz, syz, sz] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const z = x * x + y * y;
    sx += x;
    sy += y;
    sxx += x * x;
    syy += y * y;
    sxy += x * y;
    sxz += x * z;
    syz += y * z;
    sz += z;
  }
  const n = points.length;
  const [cxx, cyy, cxy] = [sxx - (sx * sx) / n, syy - (sy * sy) / n, sxy - (sx * sy) / n];
  const [cxz, cyz] = [sxz - (sx * sz) / n, syz - (sy * sz) / n];
  const det = cxx * cyy - cxy * cxy;
  if (n < 3 || !(Math.abs(det) > 0)) return null;
  const a = (cxz * cyy - cyz * cxy) / det;
  const b = (cyz * cxx - cxz * cxy) / det;
  const c = (sz - a * sx - b * sy) / n;
  const r2 = c + (a * a + b * b) / 4;
  return r2 > 0 ? { x: a / 2, y: b / 2, r: Math.sqrt(r2) } : null;
}

/** Finds the strongest edge near the outline along each spoke, and the circle through them without the outliers. */
function refined({ width, height, v }: Grey, rough: Outline): Outline {
  const at = (x: number, y: number): number | null => {
    const [i, j] = [Math.floor(x), Math.floor(y)];
    return i >= 0 && j >= 0 && i < width && j < height ? v[j * width + i] : null;
  };
  const points: (readonly [number, number])[] = [];
  for (let k = 0; k < SPOKES; k++) {
    const [c, s] = [Math.cos((2 * Math.PI * k) / SPOKES), Math.sin((2 * Math.PI * k) / SPOKES)];
    let best = 0;
    let place = 0;
    for (let r = rough.r * (1 - SEARCH); r <= rough.r * (1 + SEARCH); r += 0.25) {
      const inner = at(rough.x + (r - 1) * c, rough.y + (r - 1) * s);
      const outer = at(rough.x + (r + 1) * c, rough.y + (r + 1) * s);
      if (inner === null || outer === null) continue;
      const jump = Math.abs(outer - inner);
      if (jump > best) {
        best = jump;
        place = r;
      }
    }
    if (best > 0.01) points.push([rough.x + place * c, rough.y + place * s]);
  }
  let circle = rough;
  let kept = points;
  for (let round = 0; round < ROUNDS; round++) {
    const next = circleThrough(kept);
    if (!next) break;
    circle = next;
    const off = points.map(([x, y]) => Math.abs(Math.hypot(x - circle.x, y - circle.y) - circle.r));
    const allowed = Math.max(1, 2 * [...off].sort((a, b) => a - b)[off.length >> 1]);
    kept = points.filter((_, k) => off[k] <= allowed);
  }
  return circle;
}

const scaled = ({ x, y, r }: Outline, k: number): Outline => ({ x: k * x, y: k * y, r: k * r });

/** The ball's outline in a photograph, pixels. */
export function findOutline(photo: Raster): FoundOutline {
  const small = greyOf(photo, SMALL);
  const rough = vote(small);
  if (!rough) return { code: "none" };
  const large = greyOf(photo, 4 * SMALL);
  const outline = scaled(refined(large, scaled(rough, small.scale / large.scale)), large.scale);
  const { x, y, r } = outline;
  if (2 * r < LEAST_ACROSS) return { code: "too-small", pixels: Math.round(2 * r) };
  const room = 0.01 * r;
  const isWhole =
    x - r >= -room && y - r >= -room && x + r <= photo.width + room && y + r <= photo.height + room;
  return isWhole ? { outline } : { code: "cut-off", outline };
}
