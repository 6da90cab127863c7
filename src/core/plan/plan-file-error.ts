/** A plan that can't be read. The message is one clear line for a person: where, what is wrong, what is allowed. */
export class PlanFileError extends Error {
  override readonly name = "PlanFileError";
}

/** Longest piece of a file's own text that an error repeats. */
const SHOWN = 40;

/** Characters that JSON leaves as they are but that would break or turn round a line: C1 controls, line ends, directions. */
const UNRULY = /[\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;
const escaped = (c: string): string => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`;

/** A value as an error line shows it: short, on one line, control characters escaped. */
export function shown(value: unknown): string {
  if (typeof value === "string") {
    const short = value.length > SHOWN ? `${value.slice(0, SHOWN)}...` : value;
    return JSON.stringify(short).replace(UNRULY, escaped);
  }
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value);
  if (value === undefined) return "nothing";
  return Array.isArray(value) ? "a list" : "an object";
}

/** `tiers[2].armAngleDeg`; a name that is not a plain word stands in brackets and quotes. The document itself: "the plan". */
export function pathInWords(path: readonly PropertyKey[]): string {
  const text = path.map((step, i) => {
    if (typeof step === "number") return `[${step}]`;
    const name = String(step);
    if (!/^[A-Za-z_][A-Za-z0-9_]{0,60}$/.test(name)) return `[${shown(name)}]`;
    return i === 0 ? name : `.${name}`;
  });
  return path.length === 0 ? "the plan" : text.join("");
}
