/**
 * Reads and writes plan files. Strict about every field it knows, gentle with the ones it doesn't: unknown fields stay
 * in the plan, are written back, and are reported by path.
 */
import type * as z from "zod/mini";
import { parseBoundedJson } from "./bounded-json.ts";
import type { Plan } from "./document.ts";
import { type FileFault, pathText } from "./file-fault.ts";
import { FILE } from "./limits.ts";
import { migrate } from "./migrate.ts";
import { PlanFileError } from "./plan-file-error.ts";
import { checkReferences } from "./references.ts";
import { planSchema } from "./schema.ts";
import { failedCheck } from "./schema-fields.ts";

export { PlanFileError } from "./plan-file-error.ts";

export interface PlanFile {
  /** Frozen, unknown fields included. */
  readonly plan: Plan;
  /** Paths of fields that this version doesn't know, such as `piece.colour`. */
  readonly unknown: readonly string[];
}

type Data = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Data => typeof value === "object" && value !== null;

/** Freezes a tree of plain data and gives it back. */
export function deepFreeze<T>(value: T): T {
  if (isObject(value) && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const entry of Object.values(value)) deepFreeze(entry);
  }
  return value;
}

/** Fields of `data` that the checked copy dropped: those the schema doesn't know. */
function unknownFields(data: unknown, known: unknown, path: readonly PropertyKey[]): string[] {
  if (!isObject(data) || !isObject(known)) return [];
  return Object.keys(data).flatMap((key) => {
    const at = [...path, Array.isArray(data) ? Number(key) : key];
    return Object.hasOwn(known, key) ? unknownFields(data[key], known[key], at) : [pathText(at)];
  });
}

/** The fault behind an issue; where a value may have several shapes, the one closest to what stands there speaks. */
function faultOf(issue: z.core.$ZodIssue, data: unknown, path: readonly PropertyKey[] = []): FileFault {
  const at = [...path, ...issue.path];
  const found = at.reduce((holder, key) => (isObject(holder) ? holder[String(key)] : undefined), data);
  if (issue.code === "invalid_union" && issue.errors.length > 0 && isObject(found) && !Array.isArray(found)) {
    const closest = issue.errors[issue.errors.length - 1];
    return faultOf(closest[0], data, at);
  }
  return { ...failedCheck(issue.message, found), path: at };
}

/**
 * Checks the fields of a document, each by itself.
 * @returns paths of the fields that the schema doesn't know
 * @throws PlanFileError naming the first field that is wrong
 */
export function checkFields(document: Data, schema: z.ZodMiniType = planSchema): readonly string[] {
  const checked = schema.safeParse(document);
  if (checked.success) return unknownFields(document, checked.data, []);
  const { issues } = checked.error;
  throw new PlanFileError({ ...faultOf(issues[0], document), more: issues.length - 1 });
}

/**
 * Checks plain data as a plan.
 * @throws PlanFileError naming the first field that is wrong and what is allowed
 */
export function planFromData(data: unknown): PlanFile {
  if (!isObject(data) || Array.isArray(data))
    throw new PlanFileError({ code: "no-object", data: { found: data } });
  const { format: found } = data;
  const path = ["format"];
  if (found === undefined)
    throw new PlanFileError({ code: "missing", data: { allowed: { kind: "format" } }, path });
  if (found !== "glintwright-plan") throw new PlanFileError({ code: "other-format", data: { found }, path });
  const document = migrate(data);
  const unknown = checkFields(document);
  const plan = document as unknown as Plan;
  checkReferences(plan);
  return { plan: deepFreeze(plan), unknown };
}

/**
 * Reads a plan from the text of a file.
 * @throws PlanFileError (one clear line) for anything that is no plan of this or an earlier version
 */
export const parsePlan = (text: string): PlanFile => planFromData(parseBoundedJson(text));

/**
 * The plan as a file's text: JSON, unknown fields included, ending in a newline; set out for reading, unless that would be
 * longer than what `parsePlan` takes.
 */
export function serializePlan(plan: Plan): string {
  const readable = `${JSON.stringify(plan, null, 2)}\n`;
  return readable.length <= FILE.characters ? readable : `${JSON.stringify(plan)}\n`;
}
