/**
 * Radiance pictures (.hdr, RGBE) as lights all around. Reads flat and run-length scanlines; a pixel decodes as
 * mantissa * 2^(E - 136), without the half that some readers add.
 * Source: G. Ward, Real Pixels, Graphics Gems II, 1991, and the Radiance file format notes.
 */
import type { EquirectPicture } from "./equirect.ts";
import { HdrError } from "./hdr-fault.ts";

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
