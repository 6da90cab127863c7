import { describe, expect, it } from "vitest";
import type * as z from "zod/mini";
import type { Plan } from "../../../src/core/plan/document.ts";
import { isWithin, RANGES, type Range } from "../../../src/core/plan/limits.ts";
import type { planSchema } from "../../../src/core/plan/schema.ts";
import { fileFaults } from "../../../src/words/en/file-faults.ts";
import { rangeInWords } from "../../../src/words/file-faults.ts";

type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;
type Complete<T> = T extends object ? { readonly [K in keyof T]-?: Complete<T[K]> } : T;
type Same<A, B> = [A, B] extends [B, A] ? true : false;
type Checked = z.output<typeof planSchema>;
/** Does not compile unless shapes and checks say the same: once with fields optional, once with none left out. */
const shapesAndChecksAgree: readonly [
  Same<Frozen<Checked>, Frozen<Plan>>,
  Same<Complete<Checked>, Complete<Plan>>,
] = [true, true];

describe("the checks of a plan", () => {
  it("say the same as the shapes, field by field (told by the compiler)", () => {
    expect(shapesAndChecksAgree).toEqual([true, true]);
  });

  it("hold both ends of every range and nothing beyond", () => {
    for (const range of Object.values<Range>(RANGES)) {
      expect(isWithin(range, range.max)).toBe(true);
      expect(isWithin(range, range.min)).toBe(!range.openMin);
      for (const outside of [range.min * 2 - 1, range.max * 2 + 1, Number.NaN, Number.POSITIVE_INFINITY])
        if (!(outside >= range.min && outside <= range.max)) expect(isWithin(range, outside)).toBe(false);
    }
    expect(isWithin(RANGES.count, 2.5)).toBe(false);
  });

  it("say a range as a person would", () => {
    const said = (range: Range) => rangeInWords(range, fileFaults.range);
    expect(said(RANGES.armAngleDeg)).toBe("0 to 90");
    expect(said(RANGES.count)).toBe("a whole number from 1 to 120");
    expect(said(RANGES.toleranceMm)).toBe("more than 0, at most 10");
    expect(said(RANGES.turnDeg)).toBe("any finite number");
  });
});
