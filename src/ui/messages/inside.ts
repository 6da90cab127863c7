import { inside as de } from "../../words/de/inside.ts";
import { inside as en } from "../../words/en/inside.ts";
import { dictionary } from "../../words/language.ts";

export const insideWords = dictionary(en, de);
