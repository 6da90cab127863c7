import { shell as de } from "./de/shell.ts";
import { shell as en } from "./en/shell.ts";
import { dictionary } from "./words.tsx";

export const shellWords = dictionary(en, de);
