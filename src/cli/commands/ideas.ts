/** `ideas WISH.json`: thousands of patterns tried, the best of each kind, as one JSON object. */
import { availableParallelism } from "node:os";
import type { IdeasAnswer } from "../../core/ideas/answer.ts";
import { parseWish, type WishFile } from "../../core/ideas/wish-file.ts";
import { PlanFileError } from "../../core/plan/file.ts";
import { FILE } from "../../core/plan/limits.ts";
import { mustBeWritable, readNamed, writeOut } from "../files.ts";
import { findIdeas } from "../ideas-threads.ts";
import { numberOption, type Words } from "../number-option.ts";
import { printJson } from "../print.ts";
import { textOf } from "../read-plan.ts";
import { UsageError } from "../usage-error.ts";

const DEFAULT_TRIES = 3000;
const MOST_TRIES = 1_000_000;
const MOST_THREADS = 64;

async function readWish(path: string): Promise<WishFile> {
  const bytes = await readNamed(path, FILE.bytes, path);
  try {
    return parseWish(textOf(bytes));
  } catch (error) {
    throw error instanceof PlanFileError ? new UsageError(`${path}: ${error.message}`) : error;
  }
}

const perCent = (share: number): string => `${Math.round(100 * share)} %`;

/** What a person is told besides the answer: on standard error. */
function say(line: string): void {
  process.stderr.write(`${line}\n`);
}

function sayInTheWay({ ideas, inTheWay }: IdeasAnswer): void {
  if (ideas.length > 0) return;
  const limits = inTheWay.map(({ limit, share }) => `${limit} (${perCent(share)})`);
  say(`no plan keeps this wish; in the way: ${limits.join(", ")}`);
}

export async function run([path]: readonly string[], words: Words): Promise<void> {
  const tries = numberOption(words, "tries", DEFAULT_TRIES, { min: 1, max: MOST_TRIES, whole: true });
  const seed = numberOption(words, "seed", 1, { min: 0, max: 2 ** 32 - 1, whole: true });
  const threads = numberOption(words, "threads", availableParallelism(), {
    min: 1,
    max: MOST_THREADS,
    whole: true,
  });
  const { wish, unknown } = await readWish(path);
  const out = typeof words.out === "string" ? words.out : null;
  if (out) await mustBeWritable(out);
  for (const field of unknown) say(`the field ${field} is not known to this version and has no effect`);
  const answer = await findIdeas(wish, { tries, seed }, threads);
  sayInTheWay(answer);
  if (out) await writeOut(out, `${JSON.stringify(answer, null, 1)}\n`);
  else await printJson(answer);
}
