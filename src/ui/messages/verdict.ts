import { verdict as en } from "../../words/en/verdict.ts";
import { openingWords } from "./german.ts";

export const verdictWords = openingWords(en, (german) => german.verdict);
