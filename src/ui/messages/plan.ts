import { plan as en } from "../../words/en/plan.ts";
import { openingWords } from "./german.ts";

export const planWords = openingWords(en, (german) => german.plan);
