/**
 * Coloured glass and glass of several layers: concentric balls that share one index, so that light goes straight through their
 * borders and only its colour tells them. Absorption adds up along a path (Bouguer-Lambert). Unit sphere.
 */
import type { Vec3 } from "../geometry/vec.ts";
import type { Cased, Piece, Rgb, Tint } from "../plan/document.ts";

/** Colours of tints are held above this, so that their absorption stays finite: 1 part in 10 000 comes through. */
const DARKEST = 1e-4;

/** Absorption per mm that gives a transmittance `through` over `atMm` (Bouguer-Lambert). */
export const absorptionOfTint = (through: number, atMm: number): number =>
  -Math.log(Math.max(DARKEST, through)) / atMm;

/** Absorption per mm of a colour picked at a thickness, for three channels that pass independently; without a colour 0. */
export const tintByChannel = (tint: Tint | undefined): Rgb => {
  const channel = (c: number) => (tint ? absorptionOfTint(tint.rgb[c], tint.atMm) : 0);
  return [channel(0), channel(1), channel(2)];
};

/** A piece's layers from the outermost in; those as wide as the piece or wider fill it. */
export const layersOf = ({ cased }: Piece): readonly Cased[] =>
  [...(cased ?? [])].sort((a, b) => b.diameterMm - a.diameterMm);

/** A piece's layers, each with the colour of the glass around it; radius in unit-sphere lengths. */
export function bordersOf(piece: Piece) {
  const layers = layersOf(piece);
  return layers.map(({ diameterMm, tint }, i) => ({
    radius: Math.min(1, diameterMm / piece.diameterMm),
    tint,
    around: i === 0 ? piece.tint : layers[i - 1].tint,
  }));
}

/** What a colour adds to the absorption of the one around it, for three channels, per `unitMm` of glass. */
export function addedByChannel(tint: Tint | undefined, around: Tint | undefined, unitMm: number): Rgb {
  const [own, outer] = [tintByChannel(tint), tintByChannel(around)];
  const channel = (c: number) => (own[c] - outer[c]) * unitMm;
  return [channel(0), channel(1), channel(2)];
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

/**
 * Linear colour of white light that has gone straight through the uncut ball at `off` radii beside the middle: tints only, what the
 * glass itself swallows left out.
 */
export function colourAlong(piece: Piece, off: number): Rgb {
  const balls = [piece, ...layersOf(piece)];
  const offMm = off * piece.diameterMm;
  const chords = balls.map(({ diameterMm }) => {
    const mm = Math.min(piece.diameterMm, diameterMm);
    return offMm === 0 ? mm : Math.sqrt(Math.max(0, mm * mm - offMm * offMm));
  });
  const channel = (c: number) =>
    balls.reduce((through, { tint }, i) => {
      const lengthMm = chords[i] - (chords[i + 1] ?? 0);
      return tint ? through * tint.rgb[c] ** (lengthMm / tint.atMm) : through;
    }, 1);
  return [channel(0), channel(1), channel(2)];
}

/** The same along a diameter. */
export const colourThrough = (piece: Piece): Rgb => colourAlong(piece, 0);
