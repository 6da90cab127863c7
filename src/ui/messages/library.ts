import { library as de } from "./de/library.ts";
import { library as en } from "./en/library.ts";
import { dictionary } from "./words.tsx";

export const libraryWords = dictionary(en, de);
