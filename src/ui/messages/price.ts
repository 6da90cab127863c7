import { price as de } from "../../words/de/price.ts";
import { price as en } from "../../words/en/price.ts";
import { dictionary } from "../../words/language.ts";

export const priceWords = dictionary(en, de);
