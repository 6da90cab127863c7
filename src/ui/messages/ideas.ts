import { ideas as de } from "../../words/de/ideas.ts";
import { ideas as en } from "../../words/en/ideas.ts";
import { dictionary } from "../../words/language.ts";

export const ideasWords = dictionary(en, de);
