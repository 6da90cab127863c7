/** Strokes as they may be told: measured ones, guesses only when wished for and then called so, or none. */
import { guessRemoval, sayableStrokes, strokesFor } from "../../../core/bench/stages/strokes.ts";
import type { Lap, Stage } from "../../../core/plan/document.ts";

export interface StrokeCount {
  readonly strokes: number;
  readonly isGuess: boolean;
}

/** @param strokes as computed from the person's own test facets; null where there are none */
export function strokeCount(
  strokes: number | null,
  removeMm3: number,
  stage: Stage,
  lap: Lap | undefined,
  contactRadiusMm: number | null,
  withGuesses: boolean,
): StrokeCount | null {
  if (strokes !== null) return { strokes: sayableStrokes(strokes), isGuess: false };
  if (!withGuesses) return null;
  return {
    strokes: sayableStrokes(strokesFor(removeMm3, guessRemoval(stage, lap), contactRadiusMm)),
    isGuess: true,
  };
}
