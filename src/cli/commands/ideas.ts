/** `ideas WISH.json`: thousands of patterns tried, the best of each kind, as one JSON object. */
import { availableParallelism } from "node:os";
import type { IdeasAnswer } from "../../core/ideas/answer.ts";
import { parseWish, type WishFile } from "../../core/ideas/wish-file.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { FILE } from "../../core/plan/limits.ts";
import { type CommandLineWords, commandLineWords } from "../../words/command-line.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import type { Language } from "../../words/language.ts";
import { mustBeWritable, readNamed, writeOut } from "../files.ts";
import { findIdeas } from "../ideas-threads.ts";
import { numberOption } from "../number-option.ts";
import type { Options } from "../options.ts";
import { printJson } from "../print.ts";
import { textOf } from "../read-plan.ts";
import { UsageError } from "../usage-error.ts";

const DEFAULT_TRIES = 3000;
const MOST_TRIES = 1_000_000;
const MOST_THREADS = 64;

async function readWish(path: string): Promise<WishFile> {
  const bytes = await readNamed(path, FILE.bytes);
  try {
    return parseWish(textOf(bytes));
  } catch (error) {
    throw error instanceof PlanFileError
      ? new UsageError((_, language) => `${path}: ${fileFaultInWords(error.fault, language)}`)
      : error;
  }
}

const perCent = (share: number): string => `${Math.round(100 * share)} %`;

type Progress = CommandLineWords["progress"];

/** What a person is told besides the answer: on standard error. */
function say(line: string): void {
  process.stderr.write(`${line}\n`);
}

function sayInTheWay({ ideas, inTheWay }: IdeasAnswer, words: Progress): void {
  if (ideas.length > 0) return;
  const limits = inTheWay.map(({ limit, share }) => `${limit} (${perCent(share)})`);
  say(words.inTheWay(limits.join(", ")));
}

export async function run([path]: readonly string[], options: Options, language: Language): Promise<void> {
  const tries = numberOption(options, "tries", DEFAULT_TRIES, { min: 1, max: MOST_TRIES, whole: true });
  const seed = numberOption(options, "seed", 1, { min: 0, max: 2 ** 32 - 1, whole: true });
  const threads = numberOption(options, "threads", availableParallelism(), {
    min: 1,
    max: MOST_THREADS,
    whole: true,
  });
  const { wish, unknown } = await readWish(path);
  const out = typeof options.out === "string" ? options.out : null;
  if (out) await mustBeWritable(out);
  const { progress } = commandLineWords(language);
  for (const field of unknown) say(progress.unknownField(field));
  const answer = await findIdeas(wish, { tries, seed }, threads);
  sayInTheWay(answer, progress);
  if (out) await writeOut(out, `${JSON.stringify(answer, null, 1)}\n`);
  else await printJson(answer);
}
