import { help as de } from "../../words/de/help.ts";
import { help as en } from "../../words/en/help.ts";
import { dictionary } from "../../words/language.ts";

export const helpWords = dictionary(en, de);
