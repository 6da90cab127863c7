import { film as de } from "../../words/de/film.ts";
import { film as en } from "../../words/en/film.ts";
import { dictionary } from "../../words/language.ts";

export const filmWords = dictionary(en, de);
