import { describe, expect, it } from "vitest";
import { taxWithin } from "../../src/core/offer/offer.ts";
import { type QuoteMatter, quoteHtml } from "../../src/sheet/quote.ts";
import { usualCurrency } from "../../src/words/currency.ts";
import { quoteWordsDe } from "../../src/words/de/quote.ts";
import { quoteWordsEn } from "../../src/words/en/quote.ts";

const HOSTILE = `</style><script>alert(1)</script>"'&`;
const matter: QuoteMatter = {
  name: "Quay",
  piece: { diameterMm: 38 },
  glass: "Borosilicate",
  maker: { name: "Kiln Lane" },
  offer: { currency: "EUR", hourly: 40, taxShare: 0.19, validDays: 14 },
  price: 119,
  rows: [],
  picture: null,
  today: Date.UTC(2026, 1, 20, 12),
  words: quoteWordsEn,
  locale: "en-GB",
  paper: "a4",
  face: [],
};

describe("a quote", () => {
  it("says size, glass, price with the tax in it, the day and until when it holds", () => {
    const page = quoteHtml(matter);
    // 38 / 25.4 = 1.496; 14 days after 20 February 2026 is 6 March
    for (const said of ["38 mm (1.50 in)", "Glass: Borosilicate", "€119.00", "€19.00 of tax at 19%"])
      expect(page).toContain(said);
    expect(page).toContain("20 February 2026");
    expect(page).toContain("Valid until 6 March 2026.");
    expect(page).toContain("Kiln Lane");
    const german = quoteHtml({ ...matter, words: quoteWordsDe, locale: "de-DE" });
    expect(german).toMatch(/119,00\s€/);
    expect(german).toContain("Gültig bis 6. März 2026.");
  });

  it("holds for thirty days and names no tax where nothing is said of either", () => {
    const page = quoteHtml({ ...matter, offer: { currency: "EUR", hourly: 40 } });
    expect(page).toContain("Valid until 22 March 2026.");
    expect(page).not.toContain("tax");
  });

  it("takes every text as text", () => {
    const page = quoteHtml({
      ...matter,
      name: HOSTILE,
      glass: HOSTILE,
      maker: { name: HOSTILE },
      offer: { ...matter.offer, terms: HOSTILE },
      rows: [{ id: "sum", what: HOSTILE, much: HOSTILE }],
    });
    expect(page).not.toContain("<script");
    expect(page.match(/<\/style>/g)).toHaveLength(1);
    expect(page.match(/&lt;script&gt;/g)?.length).toBeGreaterThanOrEqual(6);
  });

  it("finds the tax within a price", () => {
    expect(taxWithin(119, 0.19)).toBeCloseTo(19, 12);
    expect(taxWithin(80, 0)).toBe(0);
  });
});

it("offers the money of the region first", () => {
  expect(["en-US", "en-GB", "de-CH", "de-AT", "de", "en", "sv-SE"].map(usualCurrency)).toEqual([
    "USD",
    "GBP",
    "CHF",
    "EUR",
    "EUR",
    "USD",
    "SEK",
  ]);
});
