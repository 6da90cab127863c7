import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { pictureRadiance } from "../../../src/core/optics/equirect.ts";
import { readHdr } from "../../../src/core/optics/hdr.ts";
import { HdrError, type HdrFaultData } from "../../../src/core/optics/hdr-fault.ts";
import { writePfm } from "../../../src/core/optics/pfm.ts";
import { hdrFaultInWords } from "../../../src/words/hdr-faults.ts";
import { englishIn } from "../../fixtures/english-left.ts";

type Pixel = readonly [number, number, number, number];

const header = (width: number, height: number, extra = ""): string =>
  `#?RADIANCE\n# made by a test\n${extra}FORMAT=32-bit_rle_rgbe\n\n-Y ${height} +X ${width}\n`;

const fileOf = (head: string, body: readonly number[]): Uint8Array =>
  Uint8Array.from([...new TextEncoder().encode(head), ...body]);

const flat = (pixels: readonly Pixel[]): number[] => pixels.flat();

/** Run-length scanline of the newer kind: every channel as runs of equal bytes and stretches of differing ones. */
function runs(pixels: readonly Pixel[]): number[] {
  const out = [2, 2, pixels.length >> 8, pixels.length & 255];
  for (let c = 0; c < 4; c++)
    for (let x = 0; x < pixels.length; ) {
      let n = 1;
      while (x + n < pixels.length && n < 127 && pixels[x + n][c] === pixels[x][c]) n++;
      if (n > 1) out.push(128 + n, pixels[x][c]);
      else out.push(1, pixels[x][c]);
      x += n;
    }
  return out;
}

function refusal(bytes: Uint8Array): HdrError {
  try {
    readHdr(bytes);
  } catch (error) {
    if (error instanceof HdrError) return error;
    throw error;
  }
  throw new Error("was read as a picture");
}

describe("Radiance pictures", () => {
  it("decode as mantissa times 2^(E - 136), with nothing added", () => {
    const picture = readHdr(
      fileOf(
        header(2, 1),
        flat([
          [128, 64, 1, 129],
          [255, 0, 3, 136],
        ]),
      ),
    );
    expect([...picture.data]).toEqual([1, 0.5, 1 / 128, 255, 0, 3]);
    expect([...readHdr(fileOf(header(1, 1), [9, 9, 9, 0])).data]).toEqual([0, 0, 0]);
  });

  it("decode the same from flat and from run-length scanlines", () => {
    const row = (seed: number): Pixel[] =>
      Array.from({ length: 40 }, (_, x) => [x < 20 ? seed : x, (x * 7) % 256, seed, 128 + (x % 3)]);
    const head = header(40, 2, "EXPOSURE=1.0\n");
    const a = readHdr(fileOf(head, [...flat(row(5)), ...flat(row(9))]));
    const b = readHdr(fileOf(head, [...runs(row(5)), ...runs(row(9))]));
    expect(b).toEqual(a);
  });

  it("decode the older runs that repeat the last pixel", () => {
    const picture = readHdr(
      fileOf(
        header(4, 1),
        flat([
          [128, 0, 0, 129],
          [1, 1, 1, 3],
        ]),
      ),
    );
    expect([...picture.data]).toEqual([1, 0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0]);
  });

  it("are refused with a plain reason of their own, in each language, when they are something else or break off", () => {
    const bad: Record<keyof HdrFaultData, Uint8Array[]> = {
      "header-cut": [new TextEncoder().encode("PNG"), new TextEncoder().encode("#?RADIANCE\nFORMAT")],
      "no-picture": [new TextEncoder().encode("PNG\n\n")],
      encoding: [fileOf("#?RADIANCE\nFORMAT=32-bit_rle_xyze\n\n-Y 1 +X 1\n", [1, 1, 1, 1])],
      "row-order": [fileOf("#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n+X 1 -Y 1\n", [1, 1, 1, 1])],
      size: [fileOf(header(0, 1), []), fileOf(header(100_000, 100_000), [])],
      broken: [fileOf(header(4, 4), [1, 2, 3]), fileOf(header(8, 1), [2, 2, 0, 8, 200, 7])],
    };
    const codes = Object.keys(bad) as (keyof HdrFaultData)[];
    const english = new Set<string>();
    for (const code of codes)
      for (const bytes of bad[code]) {
        const error = refusal(bytes);
        const [said, german] = [hdrFaultInWords(error.fault, "en"), hdrFaultInWords(error.fault, "de")];
        expect(error.fault.code).toBe(code);
        expect(englishIn(german)).toBeNull();
        expect(englishIn(said)).not.toBeNull();
        english.add(said);
      }
    expect(english.size).toBeGreaterThanOrEqual(codes.length);
    expect([...english].join(" ")).toContain("100000 by 100000 pixels; 1 to 67108864 pixels are read");
  });

  it("put u = 1/2 at +x, 3/4 at +z, and the top row at +y", () => {
    const [width, height] = [64, 32];
    const data = new Float32Array(width * height * 3);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++)
        data.set([(x + 0.5) / width, 1 - (y + 0.5) / height, 0], 3 * (y * width + x));
    const at = (d: Vec3) => pictureRadiance({ width, height, data }, d);
    expect(at([1, 0, 0])[0]).toBeCloseTo(0.5, 6);
    expect(at([0, 0, 1])[0]).toBeCloseTo(0.75, 6);
    expect(at([0, 0, -1])[0]).toBeCloseTo(0.25, 6);
    expect(at([1, 0, 0])[1]).toBeCloseTo(0.5, 6);
    expect(at([0, 1, 0])[1]).toBeCloseTo(1 - 0.5 / height, 6);
    expect(at([0, -1, 0])[1]).toBeCloseTo(0.5 / height, 6);
  });

  it("join without a seam at -x", () => {
    const data = new Float32Array(8 * 4 * 3).map((_, i) => i % 24);
    const picture = { width: 8, height: 4, data };
    const [above, below] = [
      pictureRadiance(picture, [-1, 0, 1e-9]),
      pictureRadiance(picture, [-1, 0, -1e-9]),
    ];
    for (let c = 0; c < 3; c++) expect(above[c]).toBeCloseTo(below[c], 5);
  });
});

describe("Portable FloatMaps", () => {
  it("hold their rows from the bottom, little-endian", () => {
    const file = writePfm(1, 2, Float32Array.from([1, 2, 3, 4, 5, 6]));
    const head = "PF\n1 2\n-1.0\n";
    expect(new TextDecoder().decode(file.subarray(0, head.length))).toBe(head);
    const view = new DataView(file.buffer, head.length);
    expect([0, 1, 2, 3, 4, 5].map((i) => view.getFloat32(4 * i, true))).toEqual([4, 5, 6, 1, 2, 3]);
  });
});
