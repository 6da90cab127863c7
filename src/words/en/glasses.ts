/** What the glasses are called. */
import type { GlassWords } from "../glasses.ts";

export const glasses: GlassWords = {
  borosilicate: "Borosilicate",
  "soda-lime": "Soda-lime",
};
