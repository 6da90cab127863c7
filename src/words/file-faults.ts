/** What is wrong with a file, a link or a backup, in words: where, what is wrong, what is allowed, on one line. */
import {
  type Allowed,
  type FaultCode,
  type FaultData,
  type FileFault,
  pathText,
  quoted,
} from "../core/plan/file-fault.ts";
import type { Range } from "../core/plan/limits.ts";
import { fileFaults as de } from "./de/file-faults.ts";
import { fileFaults as en } from "./en/file-faults.ts";
import type { Language } from "./language.ts";

/** The data of a code as text, for a sentence. */
type Said<D> = { readonly [K in keyof D]: string };

/** Everything a language needs; one that lacks a code does not compile. */
export interface FileFaultWords {
  readonly faults: {
    readonly [C in FaultCode]: keyof FaultData[C] extends never
      ? string
      : (said: Said<FaultData[C]>) => string;
  };
  /** `what` is the range in words, or the words to choose from. */
  readonly allowed: Readonly<Record<Allowed["kind"], (what: string) => string>>;
  readonly range: {
    readonly any: string;
    readonly above: (min: string, max: string) => string;
    readonly whole: (min: string, max: string) => string;
    readonly between: (min: string, max: string) => string;
  };
  readonly nothing: string;
  readonly list: string;
  readonly object: string;
  readonly plan: string;
  readonly more: (count: number) => string;
}

/** Any value of a file in a sentence. */
function shown(value: unknown, words: FileFaultWords): string {
  if (typeof value === "string") return quoted(value);
  if (value === undefined) return words.nothing;
  if (Array.isArray(value)) return words.list;
  return typeof value === "object" && value !== null ? words.object : String(value);
}

/** A range in words; the numbers stand as in a file, with a point. */
export function rangeInWords(range: Range, words: FileFaultWords["range"]): string {
  if (range.max === Number.MAX_VALUE) return words.any;
  if (range.min === range.max) return String(range.min);
  const say = range.openMin ? words.above : range.integer ? words.whole : words.between;
  return say(String(range.min), String(range.max));
}

function allowedInWords(allowed: Allowed, words: FileFaultWords): string {
  const say = words.allowed[allowed.kind];
  if ("range" in allowed) return say(rangeInWords(allowed.range, words.range));
  return say("words" in allowed ? allowed.words.join(", ") : "");
}

/** The sentence of a fault: where, what is wrong, what is allowed. One line, whatever the file holds. */
function faultInWords({ code, data, path, more = 0 }: FileFault, words: FileFaultWords): string {
  const textOf = ([key, value]: [string, unknown]): [string, string] => {
    if (key === "allowed") return [key, allowedInWords(value as Allowed, words)];
    return [key, key === "place" ? String(value) : shown(value, words)];
  };
  const say = words.faults[code] as string | ((said: Said<object>) => string);
  const sentence = typeof say === "string" ? say : say(Object.fromEntries(Object.entries(data).map(textOf)));
  const where = path ? `${path.length > 0 ? pathText(path) : words.plan}: ` : "";
  return where + sentence + (more > 0 ? ` ${words.more(more)}` : "");
}

const WORDS: Readonly<Record<Language, FileFaultWords>> = { en, de };

export const fileFaultInWords = (fault: FileFault, language: Language): string =>
  faultInWords(fault, WORDS[language]);
