/** What the glasses that a plan may name are called. */

import type { GlassName } from "../core/optics/glasses.ts";
import type { Glass } from "../core/plan/document.ts";

export type GlassWords = Readonly<Record<GlassName, string>>;

/** A glass as one says it; a person's own has its own name. */
export const glassInWords = (glass: Glass, words: GlassWords): string =>
  typeof glass === "string" ? words[glass] : glass.name;
