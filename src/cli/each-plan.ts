/**
 * One question asked of one plan or of many. One plan's answer is printed for reading; of several, one line of JSON each, in
 * their order. A plan without an answer has its error on its line and on standard error, and the others go on.
 */
import type { PlanFile } from "../core/plan/file.ts";
import type { Language } from "../words/language.ts";
import { printJson, printJsonLine } from "./print.ts";
import { readPlan } from "./read-plan.ts";
import { type Ending, endingOf, UsageError } from "./usage-error.ts";

type Answer = (file: PlanFile) => unknown;

type Told = { readonly answer: unknown } | { readonly ending: Ending };

async function told(path: string, answer: Answer, language: Language): Promise<Told> {
  try {
    return { answer: answer(await readPlan(path)) };
  } catch (error) {
    const ending = endingOf(error, language);
    if (ending === null) throw error;
    // a file that could not be read names itself already
    const line = error instanceof UsageError ? ending.line : `${path}: ${ending.line}`;
    return { ending: { ...ending, line } };
  }
}

/** @returns the status to end with: 0, or that of the first plan without an answer, one that can't be read before all others */
async function answerMany(paths: readonly string[], answer: Answer, language: Language): Promise<number> {
  const statuses: number[] = [];
  for (const path of paths) {
    const one = await told(path, answer, language);
    if ("answer" in one) await printJsonLine(one.answer);
    else {
      const { status, line } = one.ending;
      statuses.push(status);
      process.stderr.write(`${line}\n`);
      await printJsonLine({ error: line });
    }
  }
  return statuses.length === 0 ? 0 : Math.min(...statuses);
}

/** @throws UsageError and the engine's own errors where only one plan was given */
export async function printEach(paths: readonly string[], language: Language, answer: Answer): Promise<void> {
  if (paths.length === 1) await printJson(answer(await readPlan(paths[0])));
  else process.exitCode = await answerMany(paths, answer, language);
}
