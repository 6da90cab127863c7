import { rules as en } from "../../words/en/rules.ts";
import { openingWords } from "./german.ts";

export const ruleWords = openingWords(en, (german) => german.rules);
