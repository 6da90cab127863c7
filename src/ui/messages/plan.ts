import { plan as de } from "../../words/de/plan.ts";
import { plan as en } from "../../words/en/plan.ts";
import { dictionary } from "../../words/language.ts";

export const planWords = dictionary(en, de);
