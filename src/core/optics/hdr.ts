/**
 * Radiance pictures (.hdr, RGBE) as lights all around. Reads flat and run-length scanlines; a pixel decodes as
 * mantissa * 2^(E - 136), without the half that some readers add.
 * Source: G. Ward, Real Pixels, Graphics Gems II, 1991, and the Radiance file format notes.
 */
import type { Vec3 } from "../geometry/vec.ts";
import { HdrError } from "./hdr-fault.ts";
import type { Rgb } from "./spectrum.ts";

/** Linear RGB, three floats a pixel, rows from the top. */
export interface EquirectPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

export const MOST_PIXELS = 1 << 26;
const NEWLINE = 10;

function readLine(bytes: Uint8Array, from: number): { line: string; next: number } {
  const end = bytes.indexOf(NEWLINE, from);
  if (end < 0) throw new HdrError({ code: "header-cut", data: {} });
  return {
    line: String.fromCharCode(...bytes.subarray(from, Math.min(end, from + 512))).trim(),
    next: end + 1,
  };
}

function readHeader(bytes: Uint8Array): { width: number; height: number; start: number } {
  const first = readLine(bytes, 0);
  if (!first.line.startsWith("#?")) throw new HdrError({ code: "no-picture", data: {} });
  let at = first.next;
  for (;;) {
    const { line, next } = readLine(bytes, at);
    at = next;
    if (line === "") break;
    if (line.startsWith("FORMAT=") && line !== "FORMAT=32-bit_rle_rgbe")
      throw new HdrError({ code: "encoding", data: { found: line.slice(7) } });
  }
  const { line, next } = readLine(bytes, at);
  const size = /^-Y (\d+) \+X (\d+)$/.exec(line);
  if (!size) throw new HdrError({ code: "row-order", data: { found: line } });
  const [height, width] = [Number(size[1]), Number(size[2])];
  if (width < 1 || height < 1 || width * height > MOST_PIXELS)
    throw new HdrError({ code: "size", data: { width, height, most: MOST_PIXELS } });
  return { width, height, start: next };
}

/** Reads one scanline into `row` (RGBE, four bytes a pixel); gives the position after it. */
function readScanline(bytes: Uint8Array, from: number, row: Uint8Array, width: number): number {
  const broken = () => new HdrError({ code: "broken", data: {} });
  if (from + 4 > bytes.length) throw broken();
  const perChannel =
    width >= 8 &&
    width < 32768 &&
    bytes[from] === 2 &&
    bytes[from + 1] === 2 &&
    bytes[from + 2] * 256 + bytes[from + 3] === width;
  return perChannel
    ? readRuns(bytes, from + 4, row, width, broken)
    : readFlat(bytes, from, row, width, broken);
}

/** Each channel by itself: a count above 128 repeats the next byte count - 128 times, else count bytes follow. */
function readRuns(
  bytes: Uint8Array,
  from: number,
  row: Uint8Array,
  width: number,
  broken: () => Error,
): number {
  let at = from;
  for (let channel = 0; channel < 4; channel++)
    for (let x = 0; x < width; ) {
      const count = bytes[at++];
      const run = count > 128;
      const n = run ? count - 128 : count;
      if (!(n > 0) || x + n > width || at + (run ? 1 : n) > bytes.length) throw broken();
      for (let i = 0; i < n; i++) row[4 * x++ + channel] = bytes[run ? at : at + i];
      at += run ? 1 : n;
    }
  return at;
}

/** Plain pixels; (1, 1, 1, n) repeats the last pixel n times, the next such pixel counting 256 times as much. */
function readFlat(
  bytes: Uint8Array,
  from: number,
  row: Uint8Array,
  width: number,
  broken: () => Error,
): number {
  let at = from;
  let shift = 0;
  for (let x = 0; x < width; at += 4) {
    if (at + 4 > bytes.length) throw broken();
    const repeats = bytes[at] === 1 && bytes[at + 1] === 1 && bytes[at + 2] === 1;
    if (!repeats) {
      row.set(bytes.subarray(at, at + 4), 4 * x++);
      shift = 0;
      continue;
    }
    const n = bytes[at + 3] << shift;
    if (x === 0 || x + n > width) throw broken();
    for (let i = 0; i < n; i++, x++) row.copyWithin(4 * x, 4 * (x - 1), 4 * x);
    shift += 8;
  }
  return at;
}

/**
 * Decodes a Radiance .hdr file.
 * @throws HdrError when it isn't one, is larger than 2^26 pixels, or breaks off
 */
export function readHdr(bytes: Uint8Array): EquirectPicture {
  const { width, height, start } = readHeader(bytes);
  const data = new Float32Array(width * height * 3);
  const row = new Uint8Array(width * 4);
  let at = start;
  for (let y = 0; y < height; y++) {
    at = readScanline(bytes, at, row, width);
    for (let x = 0; x < width; x++) {
      const unit = row[4 * x + 3] === 0 ? 0 : 2 ** (row[4 * x + 3] - 136);
      for (let c = 0; c < 3; c++) data[3 * (y * width + x) + c] = row[4 * x + c] * unit;
    }
  }
  return { width, height, data };
}

/**
 * Radiance in unit direction d: u = 1/2 + atan2(z, x) / 2 pi, v = 1/2 + asin(y) / pi with v = 1 at the top row;
 * bilinear between pixel centres, joined at the seam, held at the poles.
 */
export function pictureRadiance(picture: EquirectPicture, d: Vec3): Rgb {
  const { width, height, data } = picture;
  const x = (0.5 + Math.atan2(d[2], d[0]) / (2 * Math.PI)) * width - 0.5;
  const y = (0.5 - Math.asin(Math.max(-1, Math.min(1, d[1]))) / Math.PI) * height - 0.5;
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [x - x0, y - y0];
  const left = ((x0 % width) + width) % width;
  const right = (left + 1) % width;
  const top = Math.max(0, Math.min(height - 1, y0)) * width;
  const bottom = Math.max(0, Math.min(height - 1, y0 + 1)) * width;
  const at = (c: number): number => {
    const upper = data[3 * (top + left) + c] * (1 - fx) + data[3 * (top + right) + c] * fx;
    const lower = data[3 * (bottom + left) + c] * (1 - fx) + data[3 * (bottom + right) + c] * fx;
    return upper * (1 - fy) + lower * fy;
  };
  return [at(0), at(1), at(2)];
}

/** Mean radiance over the sphere: each row weighs as much as the band of the sphere that it covers. */
export function pictureMean({ width, height, data }: EquirectPicture): Rgb {
  const sum: [number, number, number] = [0, 0, 0];
  for (let row = 0; row < height; row++) {
    const band = Math.cos((Math.PI * row) / height) - Math.cos((Math.PI * (row + 1)) / height);
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 3; c++) sum[c] += (band * data[3 * (row * width + x) + c]) / (2 * width);
  }
  return sum;
}
