/** Where a text stops being JSON (RFC 8259): parsers say that it isn't, few say where. */

const STRING = String.raw`"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"`;
const NUMBER = String.raw`-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?`;
const SPACE = /[ \t\n\r]*/y;
/** One token with the space before it: a mark, a string, or another value. */
const TOKEN = new RegExp(`${SPACE.source}(?:([[\\]{},:])|(${STRING})|(?:${NUMBER}|true|false|null))`, "y");

/** What may come next; `entry` and `element` are those that may also close what was just opened. */
type Wanted = "value" | "element" | "entry" | "key" | "colon" | "more";

/** Position of the token after `at`, white space skipped. */
function tokenStart(text: string, at: number): number {
  SPACE.lastIndex = at;
  SPACE.exec(text);
  return SPACE.lastIndex;
}

/**
 * Index of the first character at which `text` can't go on as JSON; the length of the text when it only ends too early;
 * -1 when it is JSON. Time and memory grow with the length alone, however deep the nesting.
 */
export function jsonFaultAt(text: string): number {
  const open: ("[" | "{")[] = [];
  let wanted: Wanted = "value";
  let at = 0;
  let isComplete = false;
  for (;;) {
    const start = tokenStart(text, at);
    if (start === text.length) return isComplete ? -1 : start;
    TOKEN.lastIndex = at;
    const token = TOKEN.exec(text);
    if (!token || isComplete) return start;
    const next = after(token, wanted, open);
    if (next === null) return start;
    wanted = next;
    at = TOKEN.lastIndex;
    isComplete = open.length === 0 && wanted === "more";
  }
}

/** What may follow this token, or null when it may not stand here. Keeps `open` in step. */
function after([, mark, string]: RegExpExecArray, wanted: Wanted, open: ("[" | "{")[]): Wanted | null {
  const isValueWanted = wanted === "value" || wanted === "element";
  const inside = open[open.length - 1];
  if (string !== undefined && (wanted === "key" || wanted === "entry")) return "colon";
  if (mark === undefined) return isValueWanted ? "more" : null;
  if (mark === "[" || mark === "{") {
    if (!isValueWanted) return null;
    open.push(mark);
    return mark === "[" ? "element" : "entry";
  }
  if (mark === ":") return wanted === "colon" ? "value" : null;
  if (mark === ",") {
    if (wanted !== "more" || inside === undefined) return null;
    return inside === "[" ? "value" : "key";
  }
  const closes = mark === "]" ? inside === "[" : inside === "{";
  if (!closes || (wanted !== "more" && wanted !== (mark === "]" ? "element" : "entry"))) return null;
  open.pop();
  return "more";
}
