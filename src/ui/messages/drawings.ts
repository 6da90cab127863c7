import { drawings as en } from "../../words/en/drawings.ts";
import { openingWords } from "./german.ts";

export const drawingWords = openingWords(en, (german) => german.drawings);
