import { describe, expect, it } from "vitest";
import { strokeCount } from "../../../src/ui/bench/parts/strokes.ts";
import { timeInWords } from "../../../src/ui/bench/parts/time.ts";
import { testOf } from "../../../src/ui/bench/work/test-facet.ts";
import { benchWords } from "../../../src/ui/messages/bench.ts";

const { time } = benchWords.en;
const stage = { id: "s", name: "S", grainUm: 45 };

describe("times", () => {
  it("are told no finer than they are known", () => {
    expect(timeInWords(1, time)).toBe("5 minutes");
    expect(timeInWords(52, time)).toBe("50 minutes");
    expect(timeInWords(60, time)).toBe("1 hour");
    expect(timeInWords(1245, time)).toBe("20 h 45 min");
    expect(timeInWords(1249, time)).toBe("20 h 45 min");
    expect(timeInWords(115 + 4.9, time)).toBe("2 hours");
  });
});

describe("strokes", () => {
  it("are told as measured, or as a guess only when one is wished for", () => {
    expect(strokeCount(33.4, 2, stage, undefined, null, false)).toEqual({ strokes: 33, isGuess: false });
    expect(strokeCount(null, 2, stage, undefined, null, false)).toBeNull();
    expect(strokeCount(null, 2, stage, undefined, null, true)).toMatchObject({ isGuess: true });
  });

  it("are at least one, and carry two figures beyond a hundred", () => {
    expect(strokeCount(0.1, 1, stage, undefined, null, false)?.strokes).toBe(1);
    expect(strokeCount(1234, 1, stage, undefined, null, false)?.strokes).toBe(1200);
  });
});

describe("a test facet", () => {
  it("is kept once it says how many strokes made which width, without empty fields", () => {
    expect(testOf({ strokes: 20, widthMm: 5, fromWidthMm: undefined, radiusMm: 60 }, 30)).toEqual({
      strokes: 20,
      widthMm: 5,
      radiusMm: 60,
    });
  });

  it("is refused when it became narrower or wider than its ball", () => {
    expect(testOf({ strokes: 20 }, 30)).toBeNull();
    expect(testOf({ strokes: 20, widthMm: 5, fromWidthMm: 5 }, 30)).toBeNull();
    expect(testOf({ strokes: 20, widthMm: 31 }, 30)).toBeNull();
    expect(testOf({ strokes: 20, widthMm: 31, diameterMm: 40 }, 30)).not.toBeNull();
  });
});
