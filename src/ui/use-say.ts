/** What sentences about a plan on the screen are made with. */
import { useMemo } from "react";
import type { Plan } from "../core/plan/document.ts";
import { type Say, sayOf } from "../words/say.ts";
import { useLanguage } from "./messages/words.tsx";
import { useFormat } from "./use-format.ts";
import { usePlan } from "./use-studio.ts";

export function useSay(): Say {
  return useSayOf(usePlan());
}

/** Of another plan than the one at hand. */
export function useSayOf(plan: Plan): Say {
  const language = useLanguage();
  const format = useFormat();
  return useMemo(() => sayOf(plan, format, language), [plan, format, language]);
}
