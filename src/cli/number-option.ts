/** An option that is a number: read, held to its range, or refused in one line. */
import type { Options } from "./options.ts";
import { UsageError } from "./usage-error.ts";

export interface Allowed {
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
  /** The ends themselves are not allowed. */
  readonly open?: boolean;
}

/** @throws UsageError */
export function numberOption(options: Options, name: string, fallback: number, allowed: Allowed): number {
  const text = options[name];
  if (text === undefined) return fallback;
  const value = typeof text === "string" && text.trim() !== "" ? Number(text) : Number.NaN;
  const { min, max, whole, open } = allowed;
  const inside = open ? value > min && value < max : value >= min && value <= max;
  if (inside && (!whole || Number.isInteger(value))) return value;
  throw new UsageError(({ refused }) => {
    const range = refused[open ? "between" : "fromTo"](String(min), String(max));
    return refused[whole ? "whole" : "number"](name, range, String(text));
  });
}
