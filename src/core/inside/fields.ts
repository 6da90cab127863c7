/**
 * What a design inside the glass says in a plan, field by field, as data: its shape in TypeScript, its check in a file and its
 * form on screen are all made from it.
 */
import type { Placement, Rgb } from "../plan/document.ts";
import { RANGES, type Range } from "../plan/limits.ts";

interface NumberField {
  /** `mm` is a length of the design, which has to fit the piece. */
  readonly type: "mm" | "number";
  readonly range: Range;
  /** What a form counts by. */
  readonly step?: number;
  /** What an optional field means where it is left out, if a form is to offer it then. */
  readonly usual?: number;
}
type AnyField =
  | NumberField
  | { readonly type: "colour" | "yes-no" | "id" | "point" }
  | { readonly type: "word"; readonly words: readonly [string, ...string[]] };
export type Field = AnyField & { readonly optional: boolean };
export type Fields = Readonly<Record<string, Field>>;

export const mm = (range: Range) => ({ type: "mm", range, optional: false }) as const;
export const count = (range: Range, step = 1) => ({ type: "number", range, step, optional: false }) as const;
export const colour = { type: "colour", optional: false } as const;
export const point = { type: "point", optional: false } as const;
export const id = { type: "id", optional: false } as const;
export const yesNo = { type: "yes-no", optional: false } as const;
export const oneOf = <const W extends readonly [string, ...string[]]>(...words: W) =>
  ({ type: "word", words, optional: false }) as const;
/** A field that may be left out. @param usual what it then means, for a form that offers it all the same */
export const maybe = <const F extends Field>(field: F, usual?: number) =>
  ({ ...field, optional: true, ...(usual === undefined ? {} : { usual }) }) as Omit<F, "optional"> & {
    readonly optional: true;
  };

/** Where a design stands; `Placement` as fields. */
export const PLACE = {
  atMm: maybe(point),
  tiltDeg: maybe({ type: "number", range: RANGES.tiltDeg, optional: false }),
  turnDeg: maybe({ type: "number", range: RANGES.turnDeg, optional: false }),
} as const satisfies { readonly [N in keyof Required<Placement>]: Field };

type ValueOf<F> = F extends { readonly type: "mm" | "number" }
  ? number
  : F extends { readonly type: "colour" }
    ? Rgb
    : F extends { readonly type: "point" }
      ? readonly [number, number, number]
      : F extends { readonly type: "yes-no" }
        ? boolean
        : F extends { readonly type: "id" }
          ? string
          : F extends { readonly words: readonly (infer W)[] }
            ? W
            : never;
type Optional<F> = { [N in keyof F]: F[N] extends { readonly optional: true } ? N : never }[keyof F];

/** The shape of a design of kind K with fields F. */
export type Shaped<K extends string, F> = { readonly kind: K } & {
  readonly [N in Exclude<keyof F, Optional<F>>]: ValueOf<F[N]>;
} & { readonly [N in Optional<F>]?: ValueOf<F[N]> };
