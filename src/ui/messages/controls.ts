import { controls as de } from "./de/controls.ts";
import { controls as en } from "./en/controls.ts";
import { dictionary } from "./words.tsx";

export const controlWords = dictionary(en, de);
