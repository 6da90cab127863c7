/**
 * What can be wrong with a plan's file, a link or a backup: a code, the data that goes with it (what was found, what is
 * allowed) and where. Sentences are made from it in `src/words`.
 */
import type { Range } from "./limits.ts";

type None = Readonly<Record<never, never>>;

/** What may stand in a field, or has to. */
export type Allowed =
  | {
      readonly kind:
        | "text"
        | "list"
        | "object"
        | "measured-facets"
        | "true-or-false"
        | "least-and-greatest"
        | "colour"
        | "point"
        | "currency"
        | "mark"
        | "format"
        | "picture";
    }
  | {
      readonly kind: "number" | "number-or-null" | "range" | "range-or-free" | "version";
      readonly range: Range;
    }
  | { readonly kind: "word" | "glass" | "depth-rule" | "design"; readonly words: readonly string[] };

/** The data of each code. `found` is what stands in the file, of any type; ids are what the file calls a tier, stage or facet. */
export interface FaultData {
  // one field of a plan
  missing: { readonly allowed: Allowed };
  "wrong-kind": { readonly found: unknown; readonly allowed: Allowed };
  "out-of-range": { readonly found: unknown; readonly allowed: Allowed };
  "too-short": { readonly found: unknown; readonly least: number; readonly most: number };
  "too-long": { readonly found: unknown; readonly least: number; readonly most: number };
  "too-many-entries": { readonly most: number };
  "least-above-greatest": None;
  "id-forbidden": None;
  "name-forbidden": None;
  "number-too-large": None;
  "no-such-field": None;
  // how the parts of a plan go together
  "id-used-twice": { readonly id: string };
  "no-such-tier": { readonly id: string };
  "names-no-tier": { readonly id: string };
  "names-itself": None;
  "names-later-tier": { readonly id: string };
  "no-such-facet": { readonly id: string; readonly first: string; readonly last: string };
  "too-many-facets": { readonly count: number; readonly most: number };
  "picture-too-large": { readonly width: number; readonly height: number; readonly most: number };
  "pictures-too-long": { readonly characters: number; readonly most: number };
  /** Doubles can't tell how its facets meet. */
  "not-reckoned": None;
  // what kind of file it is
  "other-format": { readonly found: unknown };
  "no-version": { readonly found: unknown; readonly allowed: Allowed };
  "newer-version": { readonly found: unknown; readonly allowed: Allowed };
  "no-object": { readonly found: unknown };
  // the text of a file
  "file-unreadable": None;
  "file-too-heavy": { readonly bytes: number; readonly most: number };
  "file-not-text": None;
  "file-too-long": { readonly characters: number; readonly most: number };
  "file-empty": None;
  "too-deep": { readonly most: number };
  "json-cut-off": { readonly line: number; readonly column: number };
  "json-broken": { readonly line: number; readonly column: number };
  // links
  "link-damaged": None;
  "link-too-full": None;
  "link-newer": None;
  "link-too-long": { readonly characters: number; readonly most: number };
  "plan-too-long-for-link": { readonly characters: number; readonly most: number };
  "link-too-long-for-code": { readonly characters: number; readonly most: number };
  // the library and its backup
  "not-in-library": None;
  "backup-too-large": None;
  "backup-no-zip": None;
  "backup-no-list": None;
  "backup-list-broken": { readonly place: string };
  "not-in-backup": None;
}
export type FaultCode = keyof FaultData;

export type FileFault = {
  readonly [C in FaultCode]: {
    readonly code: C;
    readonly data: FaultData[C];
    /** The field, from the top of the plan; none for what concerns the whole. */
    readonly path?: readonly PropertyKey[];
    /** So many further problems were found after this one. */
    readonly more?: number;
  };
}[FaultCode];

/** Longest piece of a file's own text that a sentence repeats. */
const SHOWN = 40;

/** Characters that JSON leaves as they are but that would break or turn round a line: C1 controls, line ends, directions. */
const UNRULY = /[\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;
const escaped = (c: string): string => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`;

/** Text of a file in a sentence: quoted, short, on one line, control characters escaped. */
export function quoted(text: string): string {
  const short = text.length > SHOWN ? `${text.slice(0, SHOWN)}...` : text;
  return JSON.stringify(short).replace(UNRULY, escaped);
}

/** `tiers[2].armAngleDeg`; a name that is not a plain word stands in brackets and quotes. */
export const pathText = (path: readonly PropertyKey[]): string =>
  path
    .map((step, i) => {
      if (typeof step === "number") return `[${step}]`;
      const name = String(step);
      if (!/^[A-Za-z_][A-Za-z0-9_]{0,60}$/.test(name)) return `[${quoted(name)}]`;
      return i === 0 ? name : `.${name}`;
    })
    .join("");
