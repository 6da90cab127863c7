/** Reads a wish from a file's text: strict, and what is wrong is told with the path of the field and what is allowed. */
import * as z from "zod/mini";
import { parseBoundedJson } from "../plan/bounded-json.ts";
import type { Plan } from "../plan/document.ts";
import { checkFields, deepFreeze } from "../plan/file.ts";
import { COUNTS } from "../plan/limits.ts";
import { PlanFileError } from "../plan/plan-file-error.ts";
import { checkReferences } from "../plan/references.ts";
import { piece, rig, tier } from "../plan/schema.ts";
import { fields, list, number, span, word } from "../plan/schema-fields.ts";
import { type IdeaWish, NUMERIC_MEASURES, planOfIdea } from "./wish.ts";

export interface WishFile {
  /** Frozen. */
  readonly wish: IdeaWish;
  /** Paths of fields that this version doesn't know; they have no effect. */
  readonly unknown: readonly string[];
}

const anyNumber = { min: -Number.MAX_VALUE, max: Number.MAX_VALUE };
const measure = word(...NUMERIC_MEASURES);
const byMeasure = <T extends z.ZodMiniType>(of: T) =>
  fields(Object.fromEntries(NUMERIC_MEASURES.map((name) => [name, z.optional(of)])));

const wishSchema = fields({
  format: word("glintwright-wish"),
  version: number({ min: 1, max: 1, integer: true }),
  piece,
  rig,
  sides: word("front", "both"),
  tiers: span({ min: 1, max: COUNTS.tiers, integer: true }),
  facets: span({ min: 1, max: COUNTS.facets, integer: true }),
  keep: z.optional(list(tier, COUNTS.tiers)),
  meets: z.optional(word("all", "rings")),
  limits: z.optional(byMeasure(span(anyNumber))),
  want: byMeasure(number({ min: -1, max: 1 })),
  across: measure,
  up: measure,
});

/** A misspelt measure would be a wish that nobody hears. */
const isMisheard = (path: string): boolean => path.startsWith("limits") || path.startsWith("want");

/** Tiers that are kept name one another as those of a plan do. */
function checkKept(wish: IdeaWish): void {
  try {
    checkReferences(planOfIdea(wish, wish.keep ?? [], "") satisfies Plan);
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    const { path = [], ...fault } = error.fault;
    throw new PlanFileError({ ...fault, path: path.map((step) => (step === "tiers" ? "keep" : step)) });
  }
}

/**
 * Checks plain data as a wish.
 * @throws PlanFileError naming the first field that is wrong and what is allowed
 */
export function wishFromData(data: unknown): WishFile {
  if (typeof data !== "object" || data === null || Array.isArray(data))
    throw new PlanFileError({ code: "no-object", data: { found: data } });
  const unknown = checkFields(data as Readonly<Record<string, unknown>>, wishSchema);
  const misheard = unknown.find(isMisheard);
  if (misheard) throw new PlanFileError({ code: "no-such-field", data: {}, path: misheard.split(".") });
  const wish = data as unknown as IdeaWish;
  checkKept(wish);
  return { wish: deepFreeze(wish), unknown };
}

/** @throws PlanFileError (one clear line) for anything that is no wish */
export const parseWish = (text: string): WishFile => wishFromData(parseBoundedJson(text));
