import { send as de } from "../../words/de/send.ts";
import { send as en } from "../../words/en/send.ts";
import { dictionary } from "../../words/language.ts";

export const sendWords = dictionary(en, de);
