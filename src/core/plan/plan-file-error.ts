import { type FileFault, faultInWords } from "./file-fault.ts";
import { fileFaultWordsEn } from "./file-fault-words-en.ts";

/** A plan that can't be read. The message is one clear line in English: where, what is wrong, what is allowed. */
export class PlanFileError extends Error {
  override readonly name = "PlanFileError";
  constructor(readonly fault: FileFault) {
    super(faultInWords(fault, fileFaultWordsEn));
  }
}
