import { lap as de } from "../../words/de/lap.ts";
import { lap as en } from "../../words/en/lap.ts";
import { dictionary } from "../../words/language.ts";

export const lapWords = dictionary(en, de);
