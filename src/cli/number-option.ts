/** An option that is a number: read, held to its range, or refused in one line. */
import { UsageError } from "./usage-error.ts";

export type Words = Readonly<Record<string, string | boolean | undefined>>;

export interface Allowed {
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
  /** The ends themselves are not allowed. */
  readonly open?: boolean;
}

/** @throws UsageError */
export function numberOption(words: Words, name: string, fallback: number, allowed: Allowed): number {
  const text = words[name];
  if (text === undefined) return fallback;
  const value = typeof text === "string" && text.trim() !== "" ? Number(text) : Number.NaN;
  const { min, max, whole, open } = allowed;
  const inside = open ? value > min && value < max : value >= min && value <= max;
  if (inside && (!whole || Number.isInteger(value))) return value;
  const range = open ? `between ${min} and ${max}` : `from ${min} to ${max}`;
  throw new UsageError(`--${name} must be ${whole ? "a whole number" : "a number"} ${range}, not "${text}"`);
}
