/** Everything that goes to standard output, which may be full or closed. */
import { systemCode, systemSaid } from "./system-fault.ts";
import { ReaderGone, UsageError } from "./usage-error.ts";

/** Standard output's fault as an error to be told. Anything that is no fault of the system stays what it is. */
function outputFault(error: unknown): unknown {
  if (systemCode(error) === "EPIPE") return new ReaderGone();
  const why = systemSaid(error);
  return why === null ? error : new UsageError((words, language) => words.files.output(why(words, language)));
}

/** Resolves once the text is taken, so that many answers never pile up.  @throws ReaderGone, UsageError */
export async function print(text: string): Promise<void> {
  try {
    await new Promise<void>((resolve, reject) => {
      process.stdout.write(text, (error) => (error ? reject(error) : resolve()));
    });
  } catch (error) {
    throw outputFault(error);
  }
}

/** @returns JSON on one line, or on many for reading. JSON has no NaN or infinity: one here is a fault of ours, so it is thrown. */
function jsonOf(value: unknown, indent: number): string {
  return JSON.stringify(
    value,
    (key, v) => {
      if (typeof v === "number" && !Number.isFinite(v))
        throw new Error(`${key || "answer"} is not a finite number`);
      return v;
    },
    indent,
  );
}

/** Prints one JSON object over several lines. */
export const printJson = (value: unknown): Promise<void> => print(`${jsonOf(value, 1)}\n`);

/** Prints one JSON object as one line. */
export const printJsonLine = (value: unknown): Promise<void> => print(`${jsonOf(value, 0)}\n`);
