import { describe, expect, it } from "vitest";
import { LIGHT_SETTINGS } from "../../../src/core/optics/light-settings.ts";
import { makeScene } from "../../../src/core/optics/scene.ts";
import { type Rgb, rgbOfSpectrum, STRATA, strata, wavelengthIn } from "../../../src/core/optics/spectrum.ts";
import { rgbInStratum } from "../../../src/core/optics/tint-spectrum.ts";
import { clearPiece } from "./helpers.ts";

describe("wavelengths and colour", () => {
  it("brings white back exactly neutral", () => {
    for (const v of rgbOfSpectrum(strata().map(() => 1))) expect(v).toBeCloseTo(1, 12);
  });

  it("brings every colour back as it was", () => {
    for (const rgb of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0.2, 0.7, 0.1],
      [40, 3, 0.5],
    ] as Rgb[]) {
      const back = rgbOfSpectrum(strata().map((s) => rgbInStratum(rgb, s)));
      for (let c = 0; c < 3; c++) expect(Math.abs(back[c] - rgb[c])).toBeLessThan(1e-10 * Math.max(...rgb));
    }
  });

  it("has no wavelength with negative light, and none brighter than the colour's brightest channel", () => {
    for (const s of strata()) {
      for (const b of s.basis) expect(b).toBeGreaterThanOrEqual(0);
      expect(s.basis[0] + s.basis[1] + s.basis[2]).toBeCloseTo(1, 12);
    }
  });

  it("cuts the visible range without gap or overlap", () => {
    const all = strata();
    expect(all).toHaveLength(STRATA);
    expect([all[0].fromNm, all[STRATA - 1].toNm]).toEqual([380, 780]);
    all.forEach((s, j) => {
      expect(s.midNm).toBeGreaterThan(s.fromNm);
      expect(s.toNm).toBeGreaterThan(s.midNm);
      if (j > 0) expect(s.fromNm).toBe(all[j - 1].toNm);
      expect(wavelengthIn(s, 0)).toBe(s.fromNm);
      expect(wavelengthIn(s, 0.5)).toBe(s.midNm);
    });
  });

  it("shows a tint's colour exactly at the thickness where it was picked", () => {
    const tint = { rgb: [0.9, 0.45, 0.2] as const, atMm: 12 };
    const scene = makeScene({ piece: { ...clearPiece(), tint }, planes: [], light: { kind: "uniform" } });
    // Lengths in the scene are radii of 15 mm.
    const through = Array.from(scene.sigma, (sigma) => Math.exp((-sigma * 12) / 15));
    rgbOfSpectrum(through).forEach((v, c) => {
      expect(v).toBeCloseTo(tint.rgb[c], 10);
      expect(Math.exp((-scene.sigmaRgb[c] * 12) / 15)).toBeCloseTo(tint.rgb[c], 10);
    });
  });

  it("lets twice the thickness through as the square, wavelength by wavelength", () => {
    const at = (atMm: number) =>
      makeScene({
        piece: { ...clearPiece(), tint: { rgb: [0.5, 0.5, 0.5], atMm } },
        planes: [],
        light: { kind: "uniform" },
      }).sigma[20];
    expect(at(5)).toBeCloseTo(2 * at(10), 12);
  });

  it("keeps our lights free of negative and unbounded radiance", () => {
    for (const setting of Object.values(LIGHT_SETTINGS))
      for (const rgb of [
        setting.zenith,
        setting.horizon,
        setting.floor,
        setting.nadir,
        ...setting.panels.map((p) => p.rgb),
      ])
        for (const v of rgb) expect(v >= 0 && v <= 100).toBe(true);
  });
});
