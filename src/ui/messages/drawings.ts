import { drawings as de } from "./de/drawings.ts";
import { drawings as en } from "./en/drawings.ts";
import { dictionary } from "./words.tsx";

export const drawingWords = dictionary(en, de);
