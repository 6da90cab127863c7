import { look as de } from "../../words/de/look.ts";
import { look as en } from "../../words/en/look.ts";
import { dictionary } from "../../words/language.ts";

export const lookWords = dictionary(en, de);
