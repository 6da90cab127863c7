/** What is wrong with a file, a link or a backup, in the language of the screen. */
import { type FileFault, type FileFaultWords, faultInWords } from "../../core/plan/file-fault.ts";
import { fileFaultWordsEn as en } from "../../core/plan/file-fault-words-en.ts";
import type { Language } from "../../words/language.ts";
import { openingWords } from "./german.ts";

const WORDS = openingWords(en as FileFaultWords, (german) => german.fileFaults);

export const fileFaultInWords = (fault: FileFault, language: Language): string =>
  faultInWords(fault, WORDS[language]);
