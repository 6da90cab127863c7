/** What is inside the glass held against the ball it lies in. */
import { expect, it } from "vitest";
import { outsideMm, rangeWithin } from "../../../src/core/check/inside-fits.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import type { InsideDesign, Piece } from "../../../src/core/plan/document.ts";
import { RANGES } from "../../../src/core/plan/limits.ts";
import { plan } from "../plan/sample.ts";

const PIECE: Piece = { diameterMm: 38, glass: "borosilicate" };
const R = 19;
const bubble = (diameterMm: number, z = 0): InsideDesign => ({ kind: "bubble", diameterMm, atMm: [0, 0, z] });
const ribbon = (lengthMm: number, tiltDeg = 0): InsideDesign => ({
  kind: "ribbon",
  widthMm: 8,
  lengthMm,
  thicknessMm: 1.2,
  turns: 1,
  rgb: [0, 0, 0],
  tiltDeg,
});
/** Half the rod that a ribbon of 8 by 1.2 mm twists in. */
const ROD = Math.hypot(4, 0.6);

it("reckons how far a ball and a rod reach out, whichever way they lie", () => {
  expect(outsideMm(PIECE, bubble(20, 5))).toBe(0);
  expect(outsideMm(PIECE, bubble(20, 12))).toBeCloseTo(12 + 10 - R, 3);
  for (const tiltDeg of [0, 37, 90])
    expect(outsideMm(PIECE, ribbon(300, tiltDeg))).toBeCloseTo(Math.hypot(150, ROD) - R, 2);
  expect(outsideMm(PIECE, { kind: "backing", heightMm: 12, rgb: [0, 0, 0] })).toBe(0);
});

it("says how long a ribbon may be in this piece: the chord that its rod leaves", () => {
  const { min, max } = rangeWithin(PIECE, 18, ribbon, { min: 0.01, max: 300 });
  expect(min).toBe(0.01);
  expect(max).toBeCloseTo(Math.floor(2 * Math.sqrt(R * R - ROD * ROD) * 10) / 10, 6);
  expect(outsideMm(PIECE, ribbon(max))).toBe(0);
});

it("says how far up a bubble may sit, both ways", () => {
  const { min, max } = rangeWithin(PIECE, 0, (z) => bubble(10, z), RANGES.offsetMm);
  expect([min, max]).toEqual([-14, 14]);
});

it("lets one only be made smaller where nothing fits", () => {
  const off = (diameterMm: number): InsideDesign => ({ kind: "bubble", diameterMm, atMm: [30, 0, 0] });
  expect(rangeWithin(PIECE, 6, off, { min: 0.01, max: 300 })).toEqual({ min: 0.01, max: 6 });
});

it("tells of a plan whose inside reaches out of the glass", () => {
  const found = (inside: InsideDesign) =>
    reportPlan(plan([], { ...PIECE, inside: [inside] })).findings.find(
      ({ code }) => code === "inside-outside",
    );
  expect(found(ribbon(20))).toBeUndefined();
  expect(found(ribbon(300))?.data).toEqual({ byMm: expect.closeTo(Math.hypot(150, ROD) - R, 2) });
});
