/** A link that carries a plan: opened when the page is, or when such a link is pasted into the address. */
import { PlanFileError } from "../../core/plan/file.ts";
import { planFromFragment } from "../../core/plan/link.ts";
import { fileFaultInWords } from "../messages/file-faults.ts";
import { libraryWords } from "../messages/library.ts";
import { shellWords } from "../messages/shell.ts";
import { languageNow } from "../studio.ts";
import { layOnBench, visit } from "../visit.ts";
import { tell } from "./view.ts";

/** Lays the plan of the address on the bench, if it carries one; what can't be read is said and changes nothing. */
export async function openLinkedPlan(): Promise<void> {
  const words = libraryWords[languageNow()].models;
  try {
    const file = planFromFragment(location.hash);
    if (!file) return;
    const trouble = await layOnBench(file.plan, file.unknown, true);
    if (trouble === null) tell({ tone: "said", text: words.openedLink(file.plan.name) });
    else tell({ tone: "stop", text: words.badLink, details: [shellWords[languageNow()].faults[trouble]] });
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    tell({ tone: "stop", text: words.badLink, details: [fileFaultInWords(error.fault, languageNow())] });
  }
  // Where the browser keeps nothing, the address is all that can be opened again.
  if (visit.getState().session?.autosave.status.getState().state === "in-memory") return;
  // Else the plan lives in the library from now on; the address would only go stale.
  history.replaceState(null, "", location.pathname + location.search);
}
