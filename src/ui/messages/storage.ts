import { storage as de } from "./de/storage.ts";
import { storage as en } from "./en/storage.ts";
import { dictionary } from "./words.tsx";

export const storageWords = dictionary(en, de);
