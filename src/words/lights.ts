/** What the lights are called, after "Light of": both languages side by side, so that a light is one record more here. */
import type { LightName } from "../core/optics/light-settings.ts";
import type { Language } from "./language.ts";

export const LIGHT_WORDS: Readonly<Record<LightName, Readonly<Record<Language, string>>>> = {
  "north-window": { en: "a north window", de: "eines Nordfensters" },
  "showroom-spots": { en: "a showroom's spots", de: "von Strahlern im Laden" },
  overcast: { en: "an overcast sky", de: "eines bedeckten Himmels" },
  "one-lamp": { en: "one lamp in a dark room", de: "einer Lampe im dunklen Raum" },
  "lamp-at-hand": { en: "a lamp close by", de: "einer Lampe nah am Stück" },
  "soft-box": { en: "a soft box", de: "einer Softbox" },
};
