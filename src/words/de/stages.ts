/** Wie die üblichen Schleifmittel heißen. */
import type { StageWords } from "../stages.ts";

export const stages: StageWords = {
  rough: "Diamant 170 mesh",
  medium: "Diamant 325 mesh",
  fine: "Diamant 15 µm",
  prepolish: "Vorpolitur 6 µm",
  polish: "Ceroxid auf Polierpad",
};
