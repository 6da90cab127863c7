/** What a model of glass can't show in its format, in English, as the file itself says it. */
import type { Plan } from "../plan/document.ts";

const BY_FORMAT = {
  glb: ["how often light is thrown back and forth inside: that is left to the program that shows the model"],
  usdz: [
    "refraction, dispersion and what is thrown back inside: this format's material lets light straight through",
    "the colour by thickness: the glass has the colour that it shows through the whole piece",
  ],
} as const;

export function notShown(format: keyof typeof BY_FORMAT, { piece, tiers }: Plan): readonly string[] {
  const said: string[] = [...BY_FORMAT[format]];
  if (piece.cased?.length)
    said.push("layers of glass: all of it has the colour that they show together along a diameter");
  if (piece.inside?.length) said.push("what is inside the glass");
  if (format === "usdz" && tiers.some(({ finish }) => finish !== undefined && finish !== "polished"))
    said.push("light scattered by ground and pre-polished facets: they are drawn less clear instead");
  return said;
}
