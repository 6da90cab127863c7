/** What the usual abrasives are called, where a plan names none of its own. */
import { DEFAULT_STAGES, stagesOf, type UsualStage } from "../core/bench/stages/default-stages.ts";
import type { Rig, Stage } from "../core/plan/document.ts";
import { stages as de } from "./de/stages.ts";
import { stages as en } from "./en/stages.ts";
import type { Language } from "./language.ts";

export type StageWords = Readonly<Record<UsualStage, string>>;

const named = (words: Readonly<Record<string, string>>): readonly Stage[] =>
  DEFAULT_STAGES.map((stage) => ({ ...stage, name: words[stage.id] }));
const USUAL: Readonly<Record<Language, readonly Stage[]>> = { en: named(en), de: named(de) };

/** The abrasives of a rig, the usual ones as they are called in a language. */
export const stagesIn = (rig: Rig, language: Language): readonly Stage[] =>
  rig.stages ? stagesOf(rig) : USUAL[language];
