import { help as de } from "./de/help.ts";
import { help as en } from "./en/help.ts";
import { dictionary } from "./words.tsx";

export const helpWords = dictionary(en, de);
