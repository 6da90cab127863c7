import { shell as de } from "../../words/de/shell.ts";
import { shell as en } from "../../words/en/shell.ts";
import { dictionary } from "../../words/language.ts";

export const shellWords = dictionary(en, de);
