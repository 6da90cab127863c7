/** The colour of glass wavelength by wavelength: what a tint and what layers absorb in each stratum of the spectrum. */
import type { Piece, Tint } from "../plan/document.ts";
import { absorptionOfTint, addedByChannel, bordersOf } from "./casing.ts";
import { type Rgb, type Stratum, strata } from "./spectrum.ts";

/** Value of a linear sRGB colour in a stratum: between the least and the greatest of its channels. */
export const rgbInStratum = (rgb: Rgb, s: Stratum): number =>
  rgb[0] * s.basis[0] + rgb[1] * s.basis[1] + rgb[2] * s.basis[2];

/** Absorption per mm of a colour picked at a thickness, one a stratum; without a colour 0. */
export const tintByStratum = (tint: Tint | undefined): number[] =>
  strata().map((s) => (tint ? absorptionOfTint(rgbInStratum(tint.rgb, s), tint.atMm) : 0));

/** One layer: within `radius` the glass absorbs so much more (or less) than the glass around it, per unit-sphere length. */
export interface Casing {
  readonly radius: number;
  /** One a stratum, and for the three channels when there is no dispersion. */
  readonly sigma: Float64Array;
  readonly sigmaRgb: Rgb;
}

/** What each layer adds to the absorption of the glass around it, from the outermost in. */
export function casingsOf(piece: Piece): Casing[] {
  const radiusMm = piece.diameterMm / 2;
  return bordersOf(piece).map(({ radius, tint, around }) => {
    const outer = tintByStratum(around);
    return {
      radius,
      sigma: Float64Array.from(tintByStratum(tint), (own, j) => (own - outer[j]) * radiusMm),
      sigmaRgb: addedByChannel(tint, around, radiusMm),
    };
  });
}
