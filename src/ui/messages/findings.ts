import { findings as en } from "../../words/en/findings.ts";
import { openingWords } from "./german.ts";

export const findingWords = openingWords(en, (german) => german.findings);
