import { describe, expect, it } from "vitest";
import { distanceByLens, focalLength35 } from "../../../src/core/optics/focal-length.ts";

/** A JPEG's beginning with APP0 and an APP1 that holds the focal length; byte order as asked. */
function jpeg(focalMm: number, isLittle: boolean, cutTo = Number.POSITIVE_INFINITY): Uint8Array {
  const bytes = new Uint8Array(120);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xffd8);
  view.setUint16(2, 0xffe0);
  view.setUint16(4, 16);
  const app1 = 20;
  view.setUint16(app1, 0xffe1);
  view.setUint16(app1 + 2, 90);
  bytes.set(new TextEncoder().encode("Exif\0\0"), app1 + 4);
  const tiff = app1 + 10;
  const short = (at: number, value: number) => view.setUint16(tiff + at, value, isLittle);
  const long = (at: number, value: number) => view.setUint32(tiff + at, value, isLittle);
  bytes.set(new TextEncoder().encode(isLittle ? "II" : "MM"), tiff);
  short(2, 42);
  long(4, 8);
  // first directory: orientation, then the way to the Exif directory
  short(8, 2);
  short(10, 0x0112);
  short(12, 3);
  short(18, 6);
  short(22, 0x8769);
  short(24, 4);
  long(26, 1);
  long(30, 40);
  short(40, 1);
  short(42, 0xa405);
  short(44, 3);
  long(46, 1);
  short(50, focalMm);
  return bytes.subarray(0, Math.min(cutTo, bytes.length));
}

describe("what a photograph's file says of its lens", () => {
  it("is read in both byte orders, and is nothing where it is not said", () => {
    expect(focalLength35(jpeg(26, true))).toBe(26);
    expect(focalLength35(jpeg(77, false))).toBe(77);
    expect(focalLength35(jpeg(0, true))).toBeNull();
    expect(focalLength35(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 0]))).toBeNull();
  });

  it("is nothing in a file that ends anywhere in it", () => {
    for (let length = 0; length < 80; length++) expect(focalLength35(jpeg(26, true, length))).toBeNull();
  });
});

describe("the camera's distance by its lens", () => {
  it("is where a ball of that size fills that much of the picture", () => {
    // 50 mm on 36 mm x 24 mm, 6000 x 4000 pixels; a ball of radius 1 seen from 8: tangent cone of half angle asin(1/8)
    const f = (50 / 36) * 6000;
    const radius = f * Math.tan(Math.asin(1 / 8));
    expect(distanceByLens(50, radius, Math.hypot(6000, 4000))).toBeCloseTo(8, 9);
  });
});
