/** What is wrong with a file, a link or a backup, in the language of the screen. */
import { type FileFault, faultInWords } from "../../core/plan/file-fault.ts";
import { fileFaultWordsEn as en } from "../../core/plan/file-fault-words-en.ts";
import { fileFaults as de } from "../../words/de/file-faults.ts";
import type { Language } from "../../words/language.ts";

const WORDS = { en, de };

export const fileFaultInWords = (fault: FileFault, language: Language): string =>
  faultInWords(fault, WORDS[language]);
