/**
 * Coloured glass and glass of several layers: concentric balls that share one index, so that light goes straight through their
 * borders and only its colour tells them. Absorption adds up along a path (Bouguer-Lambert). Unit sphere.
 */
import type { Vec3 } from "../geometry/vec.ts";
import type { Cased, Piece, Tint } from "../plan/document.ts";
import { type Rgb, type Stratum, strata } from "./spectrum.ts";

/** Colours of tints are held above this, so that their absorption stays finite: 1 part in 10 000 comes through. */
const DARKEST = 1e-4;

/** Value of a linear sRGB colour in a stratum: between the least and the greatest of its channels. */
export const rgbInStratum = (rgb: Rgb, s: Stratum): number =>
  rgb[0] * s.basis[0] + rgb[1] * s.basis[1] + rgb[2] * s.basis[2];

/** Absorption per mm that gives a transmittance `through` over `atMm` (Bouguer-Lambert). */
export const absorptionOfTint = (through: number, atMm: number): number =>
  -Math.log(Math.max(DARKEST, through)) / atMm;

/** Absorption per mm of a colour picked at a thickness, one a stratum; without a colour 0. */
export const tintByStratum = (tint: Tint | undefined): number[] =>
  strata().map((s) => (tint ? absorptionOfTint(rgbInStratum(tint.rgb, s), tint.atMm) : 0));

/** The same for three channels that pass independently. */
export const tintByChannel = (tint: Tint | undefined): Rgb => {
  const channel = (c: number) => (tint ? absorptionOfTint(tint.rgb[c], tint.atMm) : 0);
  return [channel(0), channel(1), channel(2)];
};

/** One layer: within `radius` the glass absorbs so much more (or less) than the glass around it, per unit-sphere length. */
export interface Casing {
  readonly radius: number;
  /** One a stratum, and for the three channels when there is no dispersion. */
  readonly sigma: Float64Array;
  readonly sigmaRgb: Rgb;
}

/** A piece's layers from the outermost in; those as wide as the piece or wider fill it. */
export const layersOf = ({ cased }: Piece): readonly Cased[] =>
  [...(cased ?? [])].sort((a, b) => b.diameterMm - a.diameterMm);

/** What each layer adds to the absorption of the glass around it. */
export function casingsOf(piece: Piece): Casing[] {
  const radiusMm = piece.diameterMm / 2;
  const layers = layersOf(piece);
  return layers.map(({ diameterMm, tint }, i) => {
    const around = i === 0 ? piece.tint : layers[i - 1].tint;
    const outer = tintByStratum(around);
    const [r, g, b] = tintByChannel(tint).map((own, c) => (own - tintByChannel(around)[c]) * radiusMm);
    return {
      radius: Math.min(1, diameterMm / piece.diameterMm),
      sigma: Float64Array.from(tintByStratum(tint), (own, j) => (own - outer[j]) * radiusMm),
      sigmaRgb: [r, g, b],
    };
  });
}

/** Length of the part of a ray (o, unit d), within 0 .. tMax, that runs within `radius` of the centre. */
export function lengthWithinBall(radius: number, o: Vec3, d: Vec3, tMax: number): number {
  const b = o[0] * d[0] + o[1] * d[1] + o[2] * d[2];
  const [cx, cy, cz] = [o[1] * d[2] - o[2] * d[1], o[2] * d[0] - o[0] * d[2], o[0] * d[1] - o[1] * d[0]];
  const square = radius * radius - (cx * cx + cy * cy + cz * cz);
  if (square <= 0) return 0;
  const half = Math.sqrt(square);
  return Math.max(0, Math.min(tMax, half - b) - Math.max(0, -half - b));
}

/** Linear colour of white light that has gone through the uncut ball along a diameter: tints only, the glass itself left out. */
export function colourThrough(piece: Piece): Rgb {
  const layers = layersOf(piece);
  const widths = [
    piece.diameterMm,
    ...layers.map(({ diameterMm }) => Math.min(piece.diameterMm, diameterMm)),
  ];
  const tints = [piece.tint, ...layers.map(({ tint }) => tint)];
  const channel = (c: number) =>
    tints.reduce((through, tint, i) => {
      const lengthMm = widths[i] - (widths[i + 1] ?? 0);
      return tint ? through * tint.rgb[c] ** (lengthMm / tint.atMm) : through;
    }, 1);
  return [channel(0), channel(1), channel(2)];
}
