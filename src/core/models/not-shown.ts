/** What a model of glass can't show in its format: by codes for the screens, and in English, as the file itself says it. */
import type { Plan } from "../plan/document.ts";

const IN_ENGLISH = {
  bounces:
    "how often light is thrown back and forth inside: that is left to the program that shows the model",
  refraction:
    "refraction, dispersion and what is thrown back inside: this format's material lets light straight through",
  thickness: "the colour by thickness: the glass has the colour that it shows through the whole piece",
  layers: "layers of glass: all of it has the colour that they show together along a diameter",
  inside: "what is inside the glass",
  scatter: "light scattered by ground and pre-polished facets: they are drawn less clear instead",
} as const;
export type NotShown = keyof typeof IN_ENGLISH;

const ALWAYS: Readonly<Record<"glb" | "usdz", readonly NotShown[]>> = {
  glb: ["bounces"],
  usdz: ["refraction", "thickness"],
};

export function notShownCodes(format: "glb" | "usdz", { piece, tiers }: Plan): readonly NotShown[] {
  const codes: NotShown[] = [...ALWAYS[format]];
  if (piece.cased?.length) codes.push("layers");
  if (piece.inside?.length) codes.push("inside");
  if (format === "usdz" && tiers.some(({ finish }) => finish !== undefined && finish !== "polished"))
    codes.push("scatter");
  return codes;
}

export const notShown = (format: "glb" | "usdz", plan: Plan): readonly string[] =>
  notShownCodes(format, plan).map((code) => IN_ENGLISH[code]);
