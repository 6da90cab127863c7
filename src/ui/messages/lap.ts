import { lap as de } from "./de/lap.ts";
import { lap as en } from "./en/lap.ts";
import { dictionary } from "./words.tsx";

export const lapWords = dictionary(en, de);
