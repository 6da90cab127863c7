import { bench as de } from "../../words/de/bench.ts";
import { bench as en } from "../../words/en/bench.ts";
import { dictionary } from "../../words/language.ts";

export const benchWords = dictionary(en, de);
