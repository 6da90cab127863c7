/** Numbers as a person writes and reads them. 1 inch = 25.4 mm exactly (international yard and pound agreement, 1959). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  formatAngle,
  formatFraction,
  formatLength,
  formatMoment,
  formatNumber,
  localeOf,
  parseAngle,
  parseLength,
  parseNumber,
} from "../../src/words/format.ts";

describe("reading what is typed", () => {
  it.each([
    ["12.5", 12.5],
    ["12,5", 12.5],
    [" -3 ", -3],
    ["\u22123", -3],
    [".5", 0.5],
    ["1 3/16", 1.1875],
    ["3/4", 0.75],
    ["-1 1/2", -1.5],
  ])("takes %s", (text, value) => {
    expect(parseNumber(text)).toBe(value);
  });
  it.each(["", "abc", "1.2.3", "1/0", "12 5", "1e5", "Infinity", "NaN", "--1"])(
    "does not take %j",
    (text) => {
      expect(parseNumber(text)).toBeNull();
    },
  );
  it("lets a typed unit win over the unit of the screen", () => {
    expect(parseLength("1 in", "mm")).toBe(25.4);
    expect(parseLength('1/2"', "mm")).toBe(12.7);
    expect(parseLength("10 mm", "inch")).toBe(10);
    expect(parseLength("1,2 cm", "inch")).toBe(12);
    expect(parseLength("2", "inch-fraction")).toBe(50.8);
    expect(parseLength("2 furlongs", "mm")).toBeNull();
  });
  it("takes an angle with or without its sign", () => {
    expect(parseAngle("36,5°")).toBe(36.5);
    expect(parseAngle("36.5 deg")).toBe(36.5);
  });
});

describe("the region", () => {
  const MOMENT = new Date(2026, 10, 5, 14, 7).getTime();
  it.each([
    ["en", ["en-GB", "en"], "5 Nov 2026, 14:07"],
    ["en", ["en-US", "de-DE"], "Nov 5, 2026, 2:07 PM"],
    // the region is the browser's own, not that of a language further down its list
    ["en", ["de-DE", "de", "en-US", "en"], "5 Nov 2026, 14:07"],
    ["de", ["de-AT", "en"], "05.11.2026, 14:07"],
    ["de", ["en-GB"], "05.11.2026, 14:07"],
  ])("of a screen in %s for a browser that asks for %j writes %s", (language, preferred, date) => {
    // some releases of the common locale data put a narrow space before PM (Unicode CLDR 42 and later)
    expect(formatMoment(MOMENT, localeOf(language, preferred)).replace(/\u202f/g, " ")).toBe(date);
  });
  it.each([
    ["de", ["de-DE"], "12,50"],
    ["de", ["de-AT"], "12,50"],
    ["de", ["de-CH"], "12.50"],
    ["en", ["en-GB"], "12.50"],
    ["en", ["en-ZA"], "12,50"],
    ["en", ["de-AT", "de"], "12,50"],
    ["de", ["en", "en-US"], "12,50"],
  ])(
    "of a screen in %s for a browser that asks for %j sets the decimal sign of %s",
    (language, tags, shown) => {
      const locale = localeOf(language, tags);
      expect(formatNumber(12.5, locale, 2)).toBe(shown);
      expect(parseNumber(formatNumber(-12.5, locale, 2))).toBe(-12.5);
    },
  );
  it("is the bare language where the browser's tag is none, and never other figures than the fields read", () => {
    expect(localeOf("en", ["en-!!", "en"])).toBe("en");
    expect(formatNumber(12.5, localeOf("en", ["en-u-nu-arab"]), 1)).toBe("12.5");
  });
});

describe("writing", () => {
  it("has a decimal comma in German and none of it in English", () => {
    expect(formatNumber(1234.5, "de", 1)).toBe("1234,5");
    expect(formatNumber(1234.5, "en", 1)).toBe("1234.5");
  });
  it("never shows minus nothing", () => {
    expect(formatNumber(-0.01, "en", 1)).toBe("0.0");
    expect(formatAngle(-0.001, "de")).toBe("0,0°");
    expect(formatNumber(-0.26, "en", 1)).toBe("\u22120.3");
  });
  it("puts fractions of an inch in lowest terms", () => {
    expect(formatFraction(1.1875)).toBe("1 3/16");
    expect(formatFraction(0.5)).toBe("1/2");
    expect(formatFraction(2)).toBe("2");
    expect(formatFraction(0)).toBe("0");
    expect(formatFraction(0.9999)).toBe("1");
  });
  it("reads back what it wrote, to half of the last digit shown", () => {
    const mm = fc.double({ min: 0, max: 300, noNaN: true });
    fc.assert(
      fc.property(mm, fc.constantFrom("en", "de"), (value, locale) => {
        const back = (unit: "mm" | "inch" | "inch-fraction") =>
          parseLength(formatLength(value, unit, locale, 2).figure, unit) ?? Number.NaN;
        expect(Math.abs(back("mm") - value)).toBeLessThanOrEqual(0.005 + 1e-9);
        expect(Math.abs(back("inch") - value)).toBeLessThanOrEqual(0.0005 * 25.4 + 1e-9);
        expect(Math.abs(back("inch-fraction") - value)).toBeLessThanOrEqual(25.4 / 128 + 1e-9);
      }),
      { seed: 7 },
    );
  });
});
