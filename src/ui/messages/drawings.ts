import { drawings as de } from "../../words/de/drawings.ts";
import { drawings as en } from "../../words/en/drawings.ts";
import { dictionary } from "../../words/language.ts";

export const drawingWords = dictionary(en, de);
