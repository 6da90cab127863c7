import { controls as en } from "../../words/en/controls.ts";
import { openingWords } from "./german.ts";

export const controlWords = openingWords(en, (german) => german.controls);
