import { bench as de } from "./de/bench.ts";
import { bench as en } from "./en/bench.ts";
import { dictionary } from "./words.tsx";

export const benchWords = dictionary(en, de);
