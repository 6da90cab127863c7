import { storage as de } from "../../words/de/storage.ts";
import { storage as en } from "../../words/en/storage.ts";
import { dictionary } from "../../words/language.ts";

export const storageWords = dictionary(en, de);
