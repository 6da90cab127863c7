import { settings as de } from "../../words/de/settings.ts";
import { settings as en } from "../../words/en/settings.ts";
import { dictionary } from "../../words/language.ts";

export const settingsWords = dictionary(en, de);
