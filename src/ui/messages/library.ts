import { library as de } from "../../words/de/library.ts";
import { library as en } from "../../words/en/library.ts";
import { dictionary } from "../../words/language.ts";

export const libraryWords = dictionary(en, de);
