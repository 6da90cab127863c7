/** The dop as a body. Unit sphere. */
import { type BufferGeometry, CapsuleGeometry } from "three";
import type { Piece } from "../../core/plan/document.ts";

const FINE = 40;

/** The dop: a stick with a rounded cup that stands on a pole of the uncut ball. */
export function dopGeometry(piece: Piece): BufferGeometry | null {
  const { dop } = piece;
  if (!dop) return null;
  const toUnit = 2 / piece.diameterMm;
  const r = (dop.diameterMm * toUnit) / 2;
  const seat = Math.sqrt(Math.max(0, 1 - r * r));
  const length = 0.9;
  const stick = new CapsuleGeometry(Math.max(r, 0.01), length, 4, FINE).rotateX(Math.PI / 2);
  // The capsule's round end sinks into the glass down to where its rim meets the skin.
  return stick.translate(0, 0, (dop.side === "front" ? 1 : -1) * (seat + length / 2 + 0.02));
}
