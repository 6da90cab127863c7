import { look as de } from "./de/look.ts";
import { look as en } from "./en/look.ts";
import { dictionary } from "./words.tsx";

export const lookWords = dictionary(en, de);
