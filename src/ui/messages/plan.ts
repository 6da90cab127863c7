import { plan as de } from "./de/plan.ts";
import { plan as en } from "./en/plan.ts";
import { dictionary } from "./words.tsx";

export const planWords = dictionary(en, de);
