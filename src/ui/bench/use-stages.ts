/** The abrasives of the rig; those of a plan that names none as they are called in the language of the screen. */
import type { Rig, Stage } from "../../core/plan/document.ts";
import { stagesIn } from "../../words/stages.ts";
import { useLanguage } from "../messages/words.tsx";

export const useStages = (rig: Rig): readonly Stage[] => stagesIn(rig, useLanguage());
