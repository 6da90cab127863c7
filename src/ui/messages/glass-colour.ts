import { glassColour as de } from "../../words/de/glass-colour.ts";
import { glassColour as en } from "../../words/en/glass-colour.ts";
import { dictionary } from "../../words/language.ts";

export const glassColourWords = dictionary(en, de);
