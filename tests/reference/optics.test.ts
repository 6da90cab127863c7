import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../src/core/geometry/vec.ts";
import { CIE_TABLE } from "../../src/core/optics/cie.ts";
import { ROUGHNESS } from "../../src/core/optics/finish.ts";
import { cos2Refracted, fresnel, refractRay } from "../../src/core/optics/fresnel.ts";
import {
  abbeNumber,
  absorptionAt,
  BOROSILICATE,
  cauchyFrom,
  indexAt,
  LINE_D_NM,
  N_BK7,
  SODA_LIME,
} from "../../src/core/optics/glasses.ts";
import { rgbOfSpectrum, STRATA, strata, XYZ_TO_SRGB } from "../../src/core/optics/spectrum.ts";
import { encodeSrgb } from "../../src/core/optics/tone-map.ts";
import { passThroughBall } from "../core/optics/helpers.ts";
import * as published from "./optics-values.ts";

const rad = Math.PI / 180;

describe("glasses against published data", () => {
  it("gives N-BK7's catalogue indices to 1e-5", () => {
    for (const [nm, n] of published.N_BK7_CATALOGUE)
      expect(Math.abs(indexAt(N_BK7.dispersion, nm) - n), `${nm} nm`).toBeLessThan(1e-5);
    expect(abbeNumber(N_BK7.dispersion)).toBeCloseTo(published.N_BK7_ABBE, 2);
  });

  it("gives the borosilicate and soda-lime formulas at the lines", () => {
    for (const [nm, n] of published.BOROSILICATE_INDICES)
      expect(indexAt(BOROSILICATE.dispersion, nm)).toBeCloseTo(n, 6);
    for (const [nm, n] of published.SODA_LIME_INDICES)
      expect(indexAt(SODA_LIME.dispersion, nm)).toBeCloseTo(n, 6);
    expect(indexAt(BOROSILICATE.dispersion, LINE_D_NM)).toBeCloseTo(published.BOROSILICATE_ND_SHEET, 2);
  });

  it("gives soda-lime less fire than other data do, never more", () => {
    // V_d of Rubin's formula is 64.0: the colours shown are some 8 % narrower than B 270's or window glass would be.
    const ours = abbeNumber(SODA_LIME.dispersion);
    expect(ours).toBeCloseTo(64, 1);
    for (const other of Object.values(published.OTHER_SODA_LIME_ABBE)) {
      expect(ours).toBeGreaterThan(other);
      expect(other / ours).toBeGreaterThan(0.9);
    }
  });

  it("takes ground and pre-polished glass for as rough as the published scale", () => {
    expect(ROUGHNESS.ground).toBeGreaterThan(published.ROUGHNESS_SCALE.ground[0]);
    expect(ROUGHNESS.ground).toBeLessThan(published.ROUGHNESS_SCALE.ground[1]);
    expect(ROUGHNESS.prepolished).toBe(published.ROUGHNESS_SCALE.relativelyRough);
    expect(ROUGHNESS.polished).toBe(0);
  });

  it("swallows in 25 mm what the measured tables say", () => {
    for (const [glass, table] of [
      [SODA_LIME, published.TRANSMITTANCE_25_MM.sodaLime],
      [BOROSILICATE, published.TRANSMITTANCE_25_MM.borosilicate],
    ] as const)
      for (const [nm, t] of Object.entries(table))
        expect(Math.exp(-25 * absorptionAt(glass, Number(nm))), `${glass.name} ${nm} nm`).toBeCloseTo(t, 4);
  });

  it("draws a glass through any n_d and V_d exactly", () => {
    for (const [nd, vd] of [
      [1.473, 65.4],
      [1.62, 36.4],
      [1.9, 20],
      [1, 60],
    ]) {
      const glass = cauchyFrom(nd, vd);
      expect(indexAt(glass, LINE_D_NM)).toBeCloseTo(nd, 14);
      if (nd > 1) expect(abbeNumber(glass)).toBeCloseTo(vd, 10);
    }
  });
});

describe("boundaries against published optics", () => {
  it("reflects as Fresnel's table says for 1.5", () => {
    for (const [deg, r] of Object.entries(published.FRESNEL_AT_1_5))
      expect(fresnel(Math.cos(Number(deg) * rad), 1 / 1.5), `${deg} deg`).toBeCloseTo(r, 6);
  });

  it("reflects only one polarisation at Brewster's angle", () => {
    const brewster = Math.atan(1.5);
    expect(brewster / rad).toBeCloseTo(published.BREWSTER_1_5_DEG, 4);
    expect(fresnel(Math.cos(brewster), 1 / 1.5)).toBeCloseTo(0.5 * (5 / 13) ** 2, 12);
  });

  it("reflects everything beyond the critical angle and not before", () => {
    for (const [n, deg, digits] of published.CRITICAL_DEG) {
      const critical = Math.asin(1 / n);
      expect(critical / rad).toBeCloseTo(deg, digits);
      expect(fresnel(Math.cos(critical + 1e-6), n)).toBe(1);
      expect(fresnel(Math.cos(critical - 1e-6), n)).toBeLessThan(1);
    }
  });

  it("bends a prism's light by the exact least deviation", () => {
    for (const [n, deviationDeg] of published.PRISM_60) {
      // Faces at +-30 degrees; the light that runs level inside is deviated least.
      const faces: Vec3[] = [
        [-Math.cos(30 * rad), Math.sin(30 * rad), 0],
        [Math.cos(30 * rad), Math.sin(30 * rad), 0],
      ];
      const deviation = (incidence: number): number => {
        const d: Vec3 = [Math.cos(incidence - 30 * rad), Math.sin(incidence - 30 * rad), 0];
        const first = refractRay(d, faces[0], -(d[0] * faces[0][0] + d[1] * faces[0][1]), 1 / n);
        const inward: Vec3 = [-faces[1][0], -faces[1][1], 0];
        const cosI = -(first[0] * inward[0] + first[1] * inward[1]);
        if (cos2Refracted(cosI, n) <= 0) return Number.POSITIVE_INFINITY;
        const out = refractRay(first, inward, cosI, n);
        return (Math.atan2(d[1], d[0]) - Math.atan2(out[1], out[0])) / rad;
      };
      const incidences = Array.from({ length: 4000 }, (_, i) => (30 + i * 0.0149) * rad);
      const least = Math.min(...incidences.map(deviation));
      const exact = (2 * Math.asin(n * Math.sin(30 * rad)) - 60 * rad) / rad;
      expect(exact).toBeCloseTo(deviationDeg, 4);
      expect(least).toBeGreaterThanOrEqual(exact - 1e-9);
      expect(least).toBeCloseTo(exact, 5);
    }
  });

  it("focuses a thin bundle through a ball where the ball-lens formula says", () => {
    for (const [n, radii] of published.BALL_FOCUS) {
      const height = 1e-4;
      const { p, d } = passThroughBall([0, height, 3], [0, 0, -1], n);
      const focus = -(p[2] + (d[2] * p[1]) / -d[1]);
      expect(focus).toBeCloseTo(radii, 5);
    }
  });
});

describe("colour against published tables", () => {
  it("sees D65 where the tables put it", () => {
    const xyz = [0, 1, 2].map((c) => CIE_TABLE.reduce((sum, row) => sum + row[c] * row[3], 0));
    const total = xyz[0] + xyz[1] + xyz[2];
    expect(xyz[0] / total).toBeCloseTo(published.D65_XY_5NM[0], 6);
    expect(xyz[1] / total).toBeCloseTo(published.D65_XY_5NM[1], 6);
  });

  it("turns XYZ into sRGB by the inverse of the standard's matrix", () => {
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) {
        const product = [0, 1, 2].reduce((s, k) => s + XYZ_TO_SRGB[i][k] * published.SRGB_TO_XYZ[k][j], 0);
        expect(product).toBeCloseTo(i === j ? 1 : 0, 9);
      }
    expect(encodeSrgb(0.18)).toBeCloseTo(published.SRGB_OF_018, 12);
  });

  it("weighs wavelengths like the matching functions under D65", () => {
    // A flat spectrum cut off at 550 nm: compare with sums over the 5 nm table.
    const cut = 550;
    const below = strata().map((s) =>
      s.toNm <= cut ? 1 : s.fromNm >= cut ? 0 : (cut - s.fromNm) / (s.toNm - s.fromNm),
    );
    const rgb = rgbOfSpectrum(below);
    const channel = (row: readonly number[], c: number) =>
      row[3] * (XYZ_TO_SRGB[c][0] * row[0] + XYZ_TO_SRGB[c][1] * row[1] + XYZ_TO_SRGB[c][2] * row[2]);
    for (let c = 0; c < 3; c++) {
      const trapezoid = (rows: readonly (readonly number[])[]) =>
        rows.reduce((sum, row, i) => sum + channel(row, c) * (i === 0 || i === rows.length - 1 ? 0.5 : 1), 0);
      const share = trapezoid(CIE_TABLE.slice(0, (cut - 380) / 5 + 1)) / trapezoid(CIE_TABLE);
      expect(Math.abs(rgb[c] - share), `channel ${c}`).toBeLessThan(4e-3);
    }
    expect(strata()).toHaveLength(STRATA);
  });
});
