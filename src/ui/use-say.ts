/** What sentences about a plan on the screen are made with. */
import { useContext, useMemo } from "react";
import type { Plan } from "../core/plan/document.ts";
import { localeOf } from "../words/format.ts";
import { makeFormats } from "../words/formats.ts";
import { LANGUAGES } from "../words/language.ts";
import { type Say, sayOf } from "../words/say.ts";
import { useLanguage } from "./messages/words.tsx";
import { HabitsContext, useFormat } from "./use-format.ts";
import { usePlan } from "./use-studio.ts";

/** The formatters that sentences need: names, lengths and angles in the person's language and units. */
export function useSay(): Say {
  return useSayOf(usePlan());
}

/** In every language of the app, in the person's units: for what is kept in words whatever language it is read in later. */
export function useSays(): readonly Say[] {
  const habits = useContext(HabitsContext);
  const plan = usePlan();
  return useMemo(
    () =>
      LANGUAGES.map((language) =>
        sayOf(plan, makeFormats(localeOf(language, navigator.languages), habits), language),
      ),
    [plan, habits],
  );
}

/** Of another plan than the one at hand. */
function useSayOf(plan: Plan): Say {
  const language = useLanguage();
  const format = useFormat();
  return useMemo(() => sayOf(plan, format, language), [plan, format, language]);
}
