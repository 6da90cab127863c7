/** Wie die Gläser heißen. */
import type { GlassWords } from "../glasses.ts";

export const glasses: GlassWords = {
  borosilicate: "Borosilikatglas",
  "soda-lime": "Kalknatronglas",
};
