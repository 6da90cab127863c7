/** A number takes the form that the plural rules of its language give it (Unicode CLDR, by `Intl.PluralRules`). */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { bench as benchDe } from "../../src/words/de/bench.ts";
import { counted as countedDe } from "../../src/words/de/counted.ts";
import { bench as benchEn } from "../../src/words/en/bench.ts";
import { counted as countedEn } from "../../src/words/en/counted.ts";

const words = fileURLToPath(new URL("../../src/words", import.meta.url));

it("is asked of the plural rules, and nowhere of the number itself", () => {
  const found = readdirSync(words, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .flatMap((entry) => {
      const file = join(entry.parentPath, entry.name);
      return readFileSync(file, "utf8")
        .split("\n")
        .filter((line) => /(?<!\.length) [!=]== 1 \?/.test(line))
        .map((line) => `${file}: ${line.trim()}`);
    });
  expect(found).toEqual([]);
});

describe.each([
  ["English", countedEn],
  ["German", countedDe],
] as const)("in %s", (_, counted) => {
  it.each(Object.entries(counted))("tells one of %s from none and two", (_, said) => {
    expect(said(1)).toMatch(/^1 \p{L}/u);
    for (const count of [0, 2, 21]) expect(said(count)).toBe(said(5).replace("5", String(count)));
  });
});

it("lets the verb go with the number", () => {
  expect(benchEn.work.againLost(1)).toBe("1 pair that met no longer does.");
  expect(benchEn.work.againLost(2)).toBe("2 pairs that met no longer do.");
  expect(benchDe.work.againLost(1)).toBe("1 Paar, das sich traf, trifft sich nicht mehr.");
  expect(benchDe.asCut.noLongerMeets(2)).toBe("2 Paare, die sich trafen, treffen sich nicht mehr.");
});
