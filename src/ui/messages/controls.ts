import { controls as de } from "../../words/de/controls.ts";
import { controls as en } from "../../words/en/controls.ts";
import { dictionary } from "../../words/language.ts";

export const controlWords = dictionary(en, de);
