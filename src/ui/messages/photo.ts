import { photo as de } from "../../words/de/photo.ts";
import { photo as en } from "../../words/en/photo.ts";
import { dictionary } from "../../words/language.ts";

export const photoWords = dictionary(en, de);
