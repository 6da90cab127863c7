/** How long a film takes and still takes, and what is given up where that is too long. */
import { describe, expect, it } from "vitest";
import { BEGUN, lighter, partsLight, samplesIn, shotOf } from "../../src/ui/film/effort.ts";
import { marked, msLeft, spanInWords } from "../../src/ui/film/pace.ts";
import { film as de } from "../../src/words/de/film.ts";
import { film as en } from "../../src/words/en/film.ts";

describe("what a film asks of a device", () => {
  it("begins without a card with little enough to end: under 50 million samples, and light that doesn't part", () => {
    expect(samplesIn(shotOf("software", BEGUN.software))).toBeLessThan(5e7);
    expect(partsLight("software", BEGUN.software)).toBe(false);
    expect(partsLight("software", { ...BEGUN.software, fineness: "good" })).toBe(true);
    expect(partsLight("card", BEGUN.card)).toBe(true);
  });

  it("has an even number of pixels both ways in every size, as encoders want it", () => {
    for (const device of ["card", "software"] as const)
      for (const shape of ["shop", "square", "story"] as const)
        for (const size of ["large", "small"] as const) {
          const { width, height } = shotOf(device, { ...BEGUN[device], shape, size });
          expect([width % 2, height % 2], `${device} ${shape} ${size}`).toEqual([0, 0]);
        }
  });

  it("gives up no more than it takes to stay below a time, what the eye misses least first", () => {
    const heavy = { ...BEGUN.card, fineness: "best", length: "12" } as const;
    const msOf = (effort: typeof BEGUN.card) => samplesIn(shotOf("card", effort)) / 1000;
    const all = msOf(heavy);
    expect(lighter(heavy, msOf, all / 3)).toEqual({ ...heavy, fineness: "good" });
    expect(lighter(heavy, msOf, all / 30)).toEqual({ ...heavy, fineness: "draft", rate: "12" });
    // where nothing is short enough it is the least there is
    const least = lighter(heavy, msOf, 0);
    expect(least).toEqual({ ...heavy, fineness: "draft", rate: "12", size: "small", length: "3" });
    expect(least && lighter(least, msOf, 0)).toBeNull();
  });
});

describe("the time that is left", () => {
  it("goes by how fast the latest part went, not by what was compiled before", () => {
    let marks = marked([], 0.1, 60_000);
    expect(msLeft(marks)).toBeNull();
    marks = marked(marks, 0.2, 61_000);
    expect(msLeft(marks)).toBeCloseTo(8000, 6);
    // slower from now on: after a dozen marks nothing is left of the first ones
    for (let k = 1; k <= 12; k++) marks = marked(marks, 0.2 + k * 0.05, 61_000 + k * 2000);
    expect(msLeft(marks)).toBeCloseTo((0.2 / 0.05) * 2000, 6);
  });

  it("is said in whole seconds, minutes or hours, never less than it is", () => {
    const number = (value: number) => String(value);
    const said = [200, 61_200, 89_500, 91_000, 5_340_000, 5_460_000].map((ms) => spanInWords(ms, en, number));
    expect(said).toEqual(["1 s", "62 s", "90 s", "2 min", "89 min", "2 h"]);
    expect(spanInWords(91_000, de, number)).toBe("2 Min.");
  });
});
