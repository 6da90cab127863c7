/** How one field of a plan is checked by itself: numbers in a range, texts, words, lists. Faults are data, made here. */
import * as z from "zod/mini";
import type { Allowed, FaultData } from "./file-fault.ts";
import { isWithin, RANGES, type Range, TEXT } from "./limits.ts";

// No code is ever built from text: a strict content security policy forbids it, and plans are small.
z.config({ jitless: true });

/** Codes of the faults of one field by itself. */
type CheckCode =
  | "wrong-kind"
  | "out-of-range"
  | "too-short"
  | "too-long"
  | "too-many-entries"
  | "least-above-greatest"
  | "id-forbidden";
type FailedCheck = { [C in CheckCode | "missing"]: { code: C; data: FaultData[C] } }[CheckCode | "missing"];

/** A check's fault but for what it finds. The library takes nothing but text from a check to its issue: so JSON. */
const fault = <C extends CheckCode>(code: C, data: Omit<FaultData[C], "found">): string =>
  JSON.stringify({ code, data });

/** The fault that the text of an issue stands for, with what was found (undefined where nothing stands). */
export function failedCheck(issue: string, found: unknown): FailedCheck {
  const { code, data } = JSON.parse(issue);
  return code === "wrong-kind" && found === undefined
    ? { code: "missing", data }
    : { code, data: { ...data, found } };
}

export const needs = (allowed: Allowed) => fault("wrong-kind", { allowed });
export const limits = (allowed: Allowed) => fault("out-of-range", { allowed });

export const number = (range: Range) =>
  z
    .number(needs({ kind: "number", range }))
    .check(z.refine((value) => isWithin(range, value), limits({ kind: "range", range })));
export const text = (most: number, least = 0) =>
  z.string(needs({ kind: "text" })).check(
    z.refine((value) => value.length >= least, fault("too-short", { least, most })),
    z.refine((value) => value.length <= most, fault("too-long", { least, most })),
  );
export const word = <const T extends readonly string[]>(...words: T) =>
  z.enum(words, needs({ kind: "word", words }));
export const list = <T extends z.ZodMiniType>(of: T, most: number) =>
  z
    .array(of, needs({ kind: "list" }))
    .check(z.refine((value) => value.length <= most, fault("too-many-entries", { most })));
export const fields = <T extends z.core.$ZodLooseShape>(shape: T) =>
  z.object(shape, needs({ kind: "object" }));
export const yesNo = z.boolean(needs({ kind: "true-or-false" }));
export const id = text(TEXT.id, 1).check(
  z.refine((value) => value !== "__proto__", fault("id-forbidden", {})),
);

/** [least, greatest] of one quantity. */
export const span = (range: Range) =>
  z
    .tuple([number(range), number(range)], needs({ kind: "least-and-greatest" }))
    .check(z.refine((pair) => pair[0] <= pair[1], fault("least-above-greatest", {})));
export const triple = (range: Range, kind: "colour" | "point") =>
  z.tuple([number(range), number(range), number(range)], needs({ kind }));
export const rgb = triple(RANGES.unit, "colour");
