/** What the usual abrasives are called. */
import type { StageWords } from "../stages.ts";

export const stages: StageWords = {
  rough: "Diamond 170 mesh",
  medium: "Diamond 325 mesh",
  fine: "Diamond 15 µm",
  prepolish: "Pre-polish 6 µm",
  polish: "Cerium oxide on a pad",
};
