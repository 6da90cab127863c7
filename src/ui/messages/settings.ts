import { settings as de } from "./de/settings.ts";
import { settings as en } from "./en/settings.ts";
import { dictionary } from "./words.tsx";

export const settingsWords = dictionary(en, de);
