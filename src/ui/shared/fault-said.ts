/** What is wrong with a file or a link, in words that come when they are needed: most visits need none. */
import type { FileFault } from "../../core/plan/file-fault.ts";
import type { Language } from "../../words/language.ts";

export const faultSaid = async (fault: FileFault, language: Language): Promise<string> =>
  (await import("../../words/file-faults.ts")).fileFaultInWords(fault, language);
