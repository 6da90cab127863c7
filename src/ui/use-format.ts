/** Numbers and dates in the unit, language and region of the screen. */
import { createContext, useContext, useMemo } from "react";
import { localeOf } from "../words/format.ts";
import { type Formats, makeFormats, type NumberHabits } from "../words/formats.ts";
import { useLanguage } from "./messages/words.tsx";

export const HabitsContext = createContext<NumberHabits>({ unit: "mm", cuttingAngle: false });

export function useFormat(): Formats {
  const language = useLanguage();
  const habits = useContext(HabitsContext);
  return useMemo(() => makeFormats(localeOf(language, navigator.languages), habits), [language, habits]);
}
