/** Whether a plan that is not on the bench can be shown: the bench takes none that can't be reckoned, what is laid beside it is asked. */
import type { Plan } from "../../core/plan/document.ts";
import { solid } from "../../state/derived.ts";
import { engineFaultInWords } from "../../words/engine-faults.ts";
import type { Language } from "../../words/language.ts";
import { prepare } from "../settled.ts";

/** Reckons a plan, off this thread where that takes long. @returns why its cut can't be reckoned exactly; null when it can */
export async function whyInexact(plan: Plan, language: Language): Promise<string | null> {
  await prepare(plan);
  try {
    solid(plan);
    return null;
  } catch (error) {
    const why = engineFaultInWords(error, language);
    if (why === null) throw error;
    return why;
  }
}
