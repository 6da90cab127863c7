/** What the command line says, in both languages; English until a language is known. */
import { commandLine as de } from "./de/command-line.ts";
import { commandLine as en } from "./en/command-line.ts";
import { dictionary, type Language, type Translated } from "./language.ts";

export type CommandLineWords = Translated<typeof en>;

const WORDS = dictionary(en, de);

export const commandLineWords = (language: Language): CommandLineWords => WORDS[language];
