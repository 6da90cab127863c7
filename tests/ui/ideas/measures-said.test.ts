import { describe, expect, it } from "vitest";
import type { MeasureName } from "../../../src/core/ideas/wish.ts";
import { NUMERIC_MEASURES } from "../../../src/core/ideas/wish.ts";
import { AXES } from "../../../src/ui/ideas/draft.ts";
import { ideasWords } from "../../../src/ui/messages/ideas.ts";

/** What rays are followed for; all else comes from the exact shape. */
const COUNTED: readonly MeasureName[] = ["back", "through", "inside", "images", "sparkle"];

it("every measure that can be asked for can be spread over the wall", () => {
  expect([...AXES].sort()).toEqual([...NUMERIC_MEASURES].sort());
});

describe.each([
  ["en", /\bgrid\b/, /nine leans/],
  ["de", /\bRaster\b/, /neun Neigungen/],
] as const)("the measures' sentences in %s", (language, grid, leans) => {
  const { measures } = ideasWords[language];
  it.each(AXES)("of %s is one, and says whether it is a count on a grid", (axis) => {
    expect(measures[axis]).toMatch(/^\p{Lu}[^.!?]*\.$/u);
    expect(grid.test(measures[axis])).toBe(COUNTED.includes(axis));
  });
  it("of a mean over leans says so", () => {
    for (const axis of AXES)
      expect(leans.test(measures[axis])).toBe(["back", "through", "inside"].includes(axis));
  });
});
