import { cautions as de } from "../../words/de/cautions.ts";
import { cautions as en } from "../../words/en/cautions.ts";
import { dictionary } from "../../words/language.ts";

export const cautionWords = dictionary(en, de);
