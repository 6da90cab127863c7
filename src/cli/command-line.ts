/**
 * The engine without a browser. Prints nothing but the answer on standard output; a plan that can't be read ends with
 * one line on standard error and status 2.
 */
import { CommanderError } from "commander";
import { LANGUAGES, type Language } from "../words/language.ts";
import { choice } from "./options.ts";
import { print } from "./print.ts";
import { parsingLine, programIn } from "./program.ts";
import { endingOf } from "./usage-error.ts";

/** What languages are asked for, wherever that stands among the arguments; `--language` is what `--lang` was called first. */
function languagesAsked(args: readonly string[]): string[] {
  const end = args.indexOf("--");
  return args.slice(0, end < 0 ? undefined : end).flatMap((arg, i) => {
    const found = /^--lang(?:uage)?(?:=(.*))?$/.exec(arg);
    return found ? [found[1] ?? args[i + 1] ?? []].flat() : [];
  });
}

/** @throws what a command throws */
async function answer(args: readonly string[], asked: readonly string[], language: Language): Promise<void> {
  const help: string[] = [];
  const program = programIn(language, (text) => help.push(text));
  program.hook("preAction", () => {
    choice({ lang: asked.at(-1) }, "lang", LANGUAGES);
  });
  try {
    await program.parseAsync(args, { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    // help that was asked for ends well; help that is shown because no command was given does not
    process.exitCode = error.exitCode === 0 ? 0 : 2;
    if (!error.code.startsWith("commander.help")) process.stderr.write(`${parsingLine(error, language)}\n`);
  }
  if (help.length > 0) await print(help.join(""));
}

/** Answers the arguments; ends with a word, or quietly, and sets the status.  @throws a fault of ours, with its trace */
export async function commandLine(args: readonly string[]): Promise<void> {
  const asked = languagesAsked(args);
  const isOurs = (one: string): one is Language => LANGUAGES.some((ours) => ours === one);
  const language = asked.filter(isOurs).at(-1) ?? "en";
  try {
    await answer(args, asked, language);
  } catch (error) {
    const ending = endingOf(error, language);
    if (ending === null) throw error;
    if (ending.line !== null) process.stderr.write(`${ending.line}\n`);
    process.exitCode = ending.status;
  }
}
