/** `sheet PLAN.json --out sheet.html`: the bench sheet as one HTML file to print. */
import { sheetHtml } from "../../core/bench/sheet.ts";
import { sheetWordsDe } from "../../core/bench/sheet-words-de.ts";
import { sheetWordsEn } from "../../core/bench/sheet-words-en.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { writeOut } from "../files.ts";
import { readPlan } from "../read-plan.ts";
import { sheetFace } from "../sheet-face.ts";
import { UsageError } from "../usage-error.ts";

type Options = Readonly<Record<string, string | boolean | undefined>>;

const WORDS = { en: sheetWordsEn, de: sheetWordsDe } as const;
const UNITS = { mm: "mm", inch: "inch" } as const;
const PAPERS = { a4: "a4", letter: "letter" } as const;

/** One of a few named values; the first when the option was not given. */
function choice<T>(options: Options, name: string, values: Readonly<Record<string, T>>): T {
  const names = Object.keys(values);
  const given = options[name] ?? names[0];
  if (typeof given === "string" && Object.hasOwn(values, given)) return values[given];
  throw new UsageError(`--${name} must be ${names.join(" or ")}, not "${String(given)}"`);
}

export async function run([planPath]: readonly string[], options: Options): Promise<void> {
  const out = String(options.out);
  const words = choice(options, "language", WORDS);
  const unit = choice(options, "unit", UNITS);
  const paper = choice(options, "paper", PAPERS);
  const { plan } = await readPlan(planPath);
  const sheet = sheetHtml(solvePlan(plan), { words, unit, paper, face: await sheetFace() });
  await writeOut(out, sheet);
}
