/** A test facet as it is typed in, and when it says enough to be kept. */
import type { Calibration } from "../../../core/plan/document.ts";

export type TestDraft = { readonly [K in keyof Calibration]?: Calibration[K] | undefined };

/** The test as it is kept, without fields that were left empty; null while it says too little or makes no sense. */
export function testOf(draft: TestDraft, pieceDiameterMm: number): Calibration | null {
  const { strokes, widthMm, fromWidthMm = 0, diameterMm = pieceDiameterMm } = draft;
  if (strokes === undefined || widthMm === undefined) return null;
  if (widthMm <= fromWidthMm || widthMm > diameterMm) return null;
  const fields = Object.entries(draft).filter(([, value]) => value !== undefined);
  return Object.fromEntries(fields) as unknown as Calibration;
}
