/** What becomes of a file that is no plan: a wish goes to the wall of ideas, of anything else is said why it can't be opened. */
import { PlanFileError } from "../../core/plan/file.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { openWish } from "../ideas/open-wish.ts";
import { shellWords } from "../messages/shell.ts";
import { languageNow, type Studio } from "../studio.ts";
import { tell } from "./screen.ts";

const isWish = ({ fault }: PlanFileError): boolean =>
  fault.code === "other-format" && fault.data.found === "glintwright-wish";

/** @returns whether it was opened */
export async function takeNoPlan(studio: Studio, file: File, error: PlanFileError): Promise<boolean> {
  let why = error;
  try {
    if (isWish(error)) {
      openWish(studio, file.name, await file.text());
      return true;
    }
  } catch (wrong) {
    if (!(wrong instanceof PlanFileError)) throw wrong;
    why = wrong;
  }
  const language = languageNow(studio);
  const words = shellWords[language];
  tell(studio, {
    tone: "stop",
    text: words.fileBad(file.name),
    details: [fileFaultInWords(why.fault, language), words.fileSafe],
  });
  return false;
}
