import { shell as en } from "../../words/en/shell.ts";
import { openingWords } from "./german.ts";

export const shellWords = openingWords(en, (german) => german.shell);
