/** The name of the piece's glass as one says it. */

import { glassInWords } from "../words/glasses.ts";
import { planWords } from "./messages/plan.ts";
import { useWords } from "./messages/words.tsx";
import { usePlan } from "./use-studio.ts";

export function useGlassName(): string {
  const words = useWords(planWords);
  const { glass } = usePlan().piece;
  return glassInWords(glass, words.piece.glasses);
}
