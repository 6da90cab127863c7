/**
 * Reads JSON from a stranger within bounds: size and depth are judged before anything is parsed, numbers that overflow
 * and field names that would reach into a prototype are refused, so that what comes out is plain data and nothing else.
 */
import { jsonFaultAt } from "./json-fault.ts";
import { FILE } from "./limits.ts";
import { PlanFileError } from "./plan-file-error.ts";

/** The one field name that means something to the language itself; a plain `a[key] = value` with it is no data. */
const FORBIDDEN_NAME = "__proto__";

/** Deepest nesting of brackets outside strings; stops counting one beyond the bound. */
function depthOf(text: string, bound: number): number {
  let depth = 0;
  let deepest = 0;
  let inString = false;
  for (let i = 0; i < text.length && deepest <= bound; i++) {
    const c = text[i];
    if (inString) {
      if (c === "\\") i++;
      else if (c === '"') inString = false;
    } else if (c === '"') inString = true;
    else if (c === "[" || c === "{") deepest = Math.max(deepest, ++depth);
    else if (c === "]" || c === "}") depth--;
  }
  return deepest;
}

/** Where the text stops being JSON; lines and columns as an editor counts them. */
function jsonError(text: string): PlanFileError {
  const at = jsonFaultAt(text);
  const before = text.slice(0, at).split("\n");
  const data = { line: before.length, column: before[before.length - 1].length + 1 };
  return new PlanFileError({ code: at >= text.trimEnd().length ? "json-cut-off" : "json-broken", data });
}

/** Refuses what JSON lets through but a plan can't hold; -0 becomes 0, so that writing and reading give the same. */
function purify(value: unknown, path: PropertyKey[]): void {
  if (typeof value !== "object" || value === null) return;
  const holder = value as Record<string, unknown>;
  for (const key of Object.keys(holder)) {
    const at = [...path, Array.isArray(value) ? Number(key) : key];
    if (key === FORBIDDEN_NAME) throw new PlanFileError({ code: "name-forbidden", data: {}, path: at });
    const entry = holder[key];
    if (typeof entry === "number") {
      if (!Number.isFinite(entry)) throw new PlanFileError({ code: "number-too-large", data: {}, path: at });
      if (entry === 0) holder[key] = 0;
    } else purify(entry, at);
  }
}

/**
 * Parses `text` to plain data.
 * @throws PlanFileError for text that is empty, too long (`FILE.characters`), nested too deeply (`FILE.depth`), not JSON,
 * or holds a number beyond a double or a field named `__proto__`
 */
export function parseBoundedJson(text: string): unknown {
  if (text.length > FILE.characters)
    throw new PlanFileError({
      code: "file-too-long",
      data: { characters: text.length, most: FILE.characters },
    });
  const body = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (body.trim() === "") throw new PlanFileError({ code: "file-empty", data: {} });
  if (depthOf(body, FILE.depth) > FILE.depth)
    throw new PlanFileError({ code: "too-deep", data: { most: FILE.depth } });
  let data: unknown;
  try {
    data = JSON.parse(body);
  } catch {
    throw jsonError(body);
  }
  purify(data, []);
  return data;
}
