/** Errors that end a command with words instead of a trace: how each is told, and with which status. */
import { type CommandLineWords, commandLineWords } from "../words/command-line.ts";
import { engineFaultInWords } from "../words/engine-faults.ts";
import type { Language } from "../words/language.ts";

/** One line for the person, in a language. */
export type Said = (words: CommandLineWords, language: Language) => string;

/** Thrown for an argument that can't be used, or a plan that can't be read; the message is its line in English. */
export class UsageError extends Error {
  override readonly name = "UsageError";
  readonly said: Said;
  constructor(said: Said, options?: ErrorOptions) {
    super(said(commandLineWords("en"), "en"), options);
    this.said = said;
  }
}

/** Whoever read our answer has enough of it (`report ... | head`): no fault, and nobody is left to tell. */
export class ReaderGone extends Error {
  override readonly name = "ReaderGone";
}

export interface Ending {
  readonly status: number;
  /** One line for the person; null when there is nothing to say. */
  readonly line: string | null;
}

const STATUS: ReadonlyMap<string, number> = new Map([
  ["UsageError", 2],
  // a picture in a plan whose head is sound and whose pixels are not
  ["BrokenPicture", 2],
  // the engine's own word for a plan whose cut it can't vouch for
  ["InexactCut", 3],
  // and for a model that would not be whole
  ["BrokenMesh", 3],
  ["NothingLeft", 2],
  ["PageTooLarge", 2],
]);

const oneLine = (text: string): string => text.replace(/\s*\n\s*/g, " ");

/** How the command line ends with this error; null for a fault of ours, which is to be seen with its trace. */
export function endingOf(error: unknown, language: Language = "en"): Ending | null {
  if (error instanceof ReaderGone) return { status: 0, line: null };
  const status = error instanceof Error ? STATUS.get(error.name) : undefined;
  if (status === undefined) return null;
  const line =
    error instanceof UsageError
      ? error.said(commandLineWords(language), language)
      : (engineFaultInWords(error, language) ?? (error as Error).message);
  return { status, line: oneLine(line) };
}
