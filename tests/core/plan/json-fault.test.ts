import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonFaultAt } from "../../../src/core/plan/json-fault.ts";

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe("the place of a fault in JSON", () => {
  it.each([
    ["", 0],
    ["{", 1],
    ['{"a":1,}', 7],
    ["[1,2,]", 5],
    ["[1 2]", 3],
    ["{a:1}", 1],
    ['{"a" 1}', 5],
    ["[1]]", 3],
    ["[1}", 2],
    ["01", 1],
    ["NaN", 0],
    ['{"a":NaN}', 5],
    ['["tab\there"]', 1],
    ["// note\n{}", 0],
    ['{"a":1} x', 8],
    ["[", 1],
    [" [1, \n 2  ", 10],
  ])("in %j is at %i", (text, at) => {
    expect(jsonFaultAt(text)).toBe(at);
  });

  it("is none exactly when the language's own parser takes the text", () => {
    const pieces = fc.constantFrom(
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"a"',
      '"b\\n"',
      '"\\x"',
      "1",
      "-0.5e3",
      "01",
      "true",
      "nul",
      " ",
      "\n",
    );
    const sample = fc.oneof(
      fc.array(pieces, { maxLength: 12 }).map((parts) => parts.join("")),
      fc.json(),
    );
    fc.assert(
      fc.property(sample, (text) => (jsonFaultAt(text) === -1) === isJson(text)),
      { numRuns: 5000, seed: 11 },
    );
  });

  it("is found in deep nesting without running out of stack", () => {
    expect(jsonFaultAt("[".repeat(1e6))).toBe(1e6);
  });

  it("is found after, and in, a text of two million letters", () => {
    const long = `\\n${"x".repeat(2e6)}`;
    expect(jsonFaultAt(`["${long}" 1]`)).toBe(long.length + 4);
    expect(jsonFaultAt(`["${long}`)).toBe(1);
  });
});
