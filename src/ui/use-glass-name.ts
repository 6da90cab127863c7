/** The name of the piece's glass as one says it. */
import { planWords } from "./messages/plan.ts";
import { useWords } from "./messages/words.tsx";
import { usePlan } from "./use-studio.ts";

export function useGlassName(): string {
  const words = useWords(planWords);
  const { glass } = usePlan().piece;
  return typeof glass === "string" ? words.piece.glasses[glass] : glass.name;
}
