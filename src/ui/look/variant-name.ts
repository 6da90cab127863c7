/** What a picture shows, in one name: the plan, and what of glass, facets and light is not as planned or usual. */
import type { look } from "../../words/en/look.ts";
import type { plan } from "../../words/en/plan.ts";
import type { Language, Translated } from "../../words/language.ts";
import { LIGHT_WORDS } from "../../words/lights.ts";
import { DEFAULT_SETTINGS, type OtherLook } from "./look-settings.ts";

export interface VariantWords {
  readonly language: Language;
  readonly look: Translated<typeof look>;
  readonly glasses: Translated<typeof plan>["piece"]["glasses"];
}

/** @param pictureName of a light that is the person's own picture */
export function variantName(
  name: string,
  { glass = "planned", finish = "planned", light = DEFAULT_SETTINGS.light }: OtherLook,
  { look: words, glasses, language }: VariantWords,
  pictureName = "",
): string {
  const parts = [
    name,
    glass === "planned" ? "" : glasses[glass],
    finish === "planned" ? "" : words.glass.finishes[finish],
    light === DEFAULT_SETTINGS.light ? "" : light === "picture" ? pictureName : LIGHT_WORDS[light][language],
  ];
  return parts.filter((part) => part !== "").join(", ");
}
