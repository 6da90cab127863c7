/**
 * Cautions of the wet lap, as codes that screens and the sheet put into words, and where in the work each belongs. Usual
 * safety practice; every wording defers to local codes, safety data sheets and licensed practice.
 */
import type { Step } from "./order.ts";

export const CAUTIONS = [
  "wet-only",
  "dust-and-slurry",
  "polish-data-sheet",
  "solvent-fire",
  "cement-and-torch",
  "heat-cracks",
  "mains-and-water",
  "eyes-hair-sleeves",
  "spinning-lap",
  "cracked-glass",
  "local-rules",
] as const;
/** The sheet names all of these; one more belongs to what is printed to lie beside the glass. */
export type Caution = (typeof CAUTIONS)[number] | "paper-by-the-lap";

const AT_STEP: Readonly<Partial<Record<Step["kind"], readonly Caution[]>>> = {
  prepare: ["cement-and-torch", "solvent-fire", "heat-cracks", "mains-and-water", "cracked-glass"],
  "turn-over": ["cement-and-torch", "solvent-fire", "heat-cracks"],
  "fit-disc": ["spinning-lap"],
  clean: ["dust-and-slurry"],
  grind: ["wet-only", "eyes-hair-sleeves"],
  "inspect-polish": ["polish-data-sheet"],
};

/** Cautions to show at a step; none where nothing special can hurt. */
export const cautionsAt = (kind: Step["kind"]): readonly Caution[] => AT_STEP[kind] ?? [];
