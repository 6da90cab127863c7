/** The check of what is inside the glass, made from the fields of each kind. */
import * as z from "zod/mini";
import type { Field, Fields } from "../inside/fields.ts";
import { INSIDE_FIELDS } from "../inside/records.ts";
import type { InsideDesign } from "./document.ts";
import { RANGES } from "./limits.ts";
import { fields, id, needs, number, rgb, triple, word, yesNo } from "./schema-fields.ts";

function valueCheck(field: Field): z.ZodMiniType {
  switch (field.type) {
    case "mm":
    case "number":
      return number(field.range);
    case "colour":
      return rgb;
    case "point":
      return triple(RANGES.offsetMm, "point");
    case "yes-no":
      return yesNo;
    case "id":
      return id;
    case "word":
      return word(...field.words);
  }
}

const checkOf = (kind: string, own: Fields) =>
  fields({
    kind: z.literal(kind),
    ...Object.fromEntries(
      Object.entries(own).map(([name, field]) => {
        const check = valueCheck(field);
        return [name, field.optional ? z.optional(check) : check];
      }),
    ),
  });

const [first, ...more] = Object.entries(INSIDE_FIELDS).map(([kind, own]) => checkOf(kind, own));

/** Built from data, so the compiler has to be told what comes out: the shape that is made from the same data. */
export const inside = z.discriminatedUnion(
  "kind",
  [first, ...more],
  needs({ kind: "design", words: Object.keys(INSIDE_FIELDS) }),
) as unknown as z.ZodMiniType<InsideDesign>;
