import { describe, expect, it } from "vitest";
import { benchOf } from "../../../src/core/bench/bench.ts";
import { ballKg, offerOf, priceOf, roundedUp, workTime } from "../../../src/core/offer/offer.ts";
import type { Offer, Plan } from "../../../src/core/plan/document.ts";
import { PlanFileError, planFromData } from "../../../src/core/plan/file.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { offerWordsDe } from "../../../src/words/de/offer.ts";
import { offerWordsEn } from "../../../src/words/en/offer.ts";
import { fileFaultInWords } from "../../../src/words/file-faults.ts";
import { offerText, quotedRows } from "../../../src/words/offer.ts";
import { plan, tier } from "../bench/plans.ts";

const time = (minutes: number | null) => ({ minutes, guesses: [] });
const BALL = { diameterMm: 40, glass: "soda-lime" } as const;

/** Two stages, both tested, and every task's minutes given: nothing is guessed, and the work can be added up by hand. */
const MEASURED = {
  stages: [
    { id: "coarse", name: "Coarse", grainUm: 75, damageUm: 0, calibration: [{ strokes: 20, widthMm: 6 }] },
    { id: "polish", name: "Polish", grainUm: 1, damageUm: 0, calibration: [{ strokes: 10, widthMm: 1 }] },
  ],
  habits: {
    prepareMin: 7,
    setArmMin: 5,
    findAngleMin: 11,
    discMin: 3,
    cleanMin: 2,
    indexMin: 0.5,
    inspectMin: 1,
    measureMin: 4,
    turnOverMin: 45,
    strokeSeconds: 60,
  },
} as const;
const priced = (offer: Offer, own: Plan) => offerOf(solvePlan({ ...own, offer }));

describe("a price", () => {
  it("is what a person reckons by hand", () => {
    // 90 min at 60 = 90; ball of 40 mm: 33.510 cm3 at 2.5 g = 83.776 g at 50 a kg = 4.18879; 3 and 12 besides: 109.18879
    // a tenth of it 10.918879: 120.107669; a fifth of that 24.0215338: 144.1292028; up to a multiple of 5: 145
    const offer: Offer = {
      currency: "EUR",
      hourly: 60,
      glassPerKg: 50,
      consumables: 3,
      blank: 12,
      overheadShare: 0.1,
      taxShare: 0.2,
      roundTo: 5,
    };
    const { labour, glass, consumables, blank, overhead, sum, tax, price } = priceOf(offer, BALL, time(90));
    expect([labour, consumables, blank, price]).toEqual([90, 3, 12, 145]);
    expect(glass).toBeCloseTo(4.1887902, 7);
    expect(overhead).toBeCloseTo(10.918879, 7);
    expect(sum).toBeCloseTo(120.1076692, 7);
    expect(tax).toBeCloseTo(24.0215338, 7);
  });

  it("takes what is missing for nothing, and whole units of money", () => {
    const bare = priceOf({ currency: "USD", hourly: 31 }, BALL, time(61));
    expect(bare).toMatchObject({ glass: 0, consumables: 0, blank: 0, overhead: 0, tax: 0, price: 32 });
    expect(bare.sum).toBe((61 / 60) * 31);
  });

  it("is rounded up to a multiple, and left alone where it is one but for the last bits", () => {
    expect(roundedUp(100, 5)).toBe(100);
    expect(roundedUp(100.01, 5)).toBe(105);
    expect(roundedUp(0.1 + 0.2, 0.1)).toBe(0.3);
    expect(roundedUp(12.3400001, 0.05)).toBe(12.35);
    expect(roundedUp(0, 10)).toBe(0);
    expect(roundedUp(1234567.2, 0.01)).toBe(1234567.2);
  });

  it("weighs the ball before it is cut, by its own density", () => {
    expect(ballKg({ diameterMm: 20, glass: { name: "x", nd: 1.5, vd: 60, densityGcm3: 3 } })).toBeCloseTo(
      0.0125663706,
      10,
    );
  });

  it("takes the bench's minutes in the faster order", () => {
    // one facet of 6 mm on a ball of 30 mm: as the test facet says, 20 strokes of a minute. Polishing has no depth left to
    // take, so it takes no strokes. 7 + disc 3 + arm 5 + (0.5 + 20) + clean 2 + disc 3 + 0.5 + look 1 + measure 4 = 46
    const own = plan([tier({ count: 1, depth: { rule: "width", mm: 6 } })], MEASURED);
    const answer = priced({ currency: "EUR", hourly: 60 }, own);
    expect(answer?.minutes).toBeCloseTo(46, 6);
    expect(answer?.price).toBe(46);
    expect(answer?.guesses).toEqual([]);
  });

  it("chooses between finishing each tier and roughing all first by the time each takes", () => {
    const belt = tier({ count: 3, depth: { rule: "depth", mm: 0.5 } });
    const upper = tier({ ...belt, id: "upper", name: "Upper", armAngleDeg: 60 });
    const slowArm = { ...MEASURED, habits: { ...MEASURED.habits, findAngleMin: 200 } };
    const slowDisc = { ...MEASURED, habits: { ...MEASURED.habits, discMin: 200 } };
    const both = (rig: Plan["rig"]) => {
      const solved = solvePlan(plan([belt, upper], rig));
      const order = benchOf(solved).order.map(({ way, minutes }) => [way, minutes] as const);
      return { taken: workTime(solved).minutes, each: new Map(order) };
    };
    const arm = both({ wheelStops: 96, ...slowArm });
    expect(arm.taken).toBe(arm.each.get("finish-each"));
    expect(arm.taken).toBeLessThan(arm.each.get("rough-all") ?? 0);
    const disc = both({ wheelStops: 96, ...slowDisc });
    expect(disc.taken).toBe(disc.each.get("rough-all"));
    expect(disc.taken).toBeLessThan(disc.each.get("finish-each") ?? 0);
  });

  it("names the stages whose strokes are guessed", () => {
    const own = plan([tier()], {
      ...MEASURED,
      stages: [MEASURED.stages[0], { id: "fine", name: "Fine", grainUm: 5 }],
    });
    expect(priced({ currency: "EUR", hourly: 1 }, own)?.guesses).toEqual([
      { code: "strokes-not-calibrated", data: { stages: ["fine"] } },
    ]);
    expect(priced({ currency: "EUR", hourly: 1 }, plan([tier()]))?.guesses[0]?.data).toHaveProperty(
      "stages.length",
      5,
    );
  });

  it("is none where nothing of the piece is left, and the bought parts still stand", () => {
    const halves = [tier({ count: 2, armAngleDeg: 0, depth: { rule: "depth", mm: 15.5 } })];
    const answer = priced({ currency: "EUR", hourly: 60, blank: 9 }, plan(halves, MEASURED));
    expect(answer).toEqual({
      minutes: null,
      labour: null,
      glass: 0,
      consumables: 0,
      blank: 9,
      overhead: null,
      sum: null,
      tax: null,
      price: null,
      guesses: [{ code: "piece-vanishes", data: {} }],
    });
  });

  it("stands in words in both languages, with its lines in the currency's own form", () => {
    const own: Plan = {
      ...plan([tier({ count: 1, depth: { rule: "width", mm: 6 } })], MEASURED),
      offer: { currency: "EUR", hourly: 60, taxShare: 0.19, roundTo: 10 },
    };
    const answer = offerOf(solvePlan(own));
    if (!answer) throw new Error("no answer");
    const english = offerText(own, answer, offerWordsEn);
    expect(english).toMatch(/Labour, 46 min at €60\.00 an hour +€46\.00/);
    expect(english).toMatch(/Tax, 19% +€8\.74/);
    expect(english).toMatch(/Price, rounded up to €10\.00 +€60\.00/);
    expect(english).not.toMatch(/guess|Blank|Glass/);
    expect(offerText(own, answer, offerWordsDe)).toMatch(/Arbeit, 46 Min\. zu 60,00\s€ die Stunde +46,00\s€/);
  });
});

describe("the reckoning on a quote", () => {
  /** Cents of "€1,234.50" or "1.234,50 €"; yen have none, so there they are yen. */
  const coins = (much: string): number => (much.includes("-") ? -1 : 1) * Number(much.replace(/\D/g, ""));
  const read = (offer: Offer, locale: string, minutes: number) => {
    const price = priceOf(offer, BALL, time(minutes));
    const words = locale.startsWith("de") ? offerWordsDe : offerWordsEn;
    if (price.price === null) throw new Error("no price");
    const rows = quotedRows({ piece: BALL, offer }, { ...price, price: price.price }, words, locale);
    return new Map(rows.map(({ id, much }) => [id, much]));
  };

  it("adds up to the coin, with the tax that is in the price asked for", () => {
    // 900.2933 min at 45 = 675.22 and glass 3.18: 678.40; with a fifth 814.08, up to 815; its tax 815 / 6 = 135.83, its net 679.17
    const offer: Offer = { currency: "EUR", hourly: 45, glassPerKg: 38, taxShare: 0.2 };
    const rows = read(offer, "de-DE", 900.2933);
    expect(Object.fromEntries([...rows].map(([id, much]) => [id, coins(much)]))).toEqual({
      labour: 67522,
      glass: 318,
      rounding: 77,
      sum: 67917,
      tax: 13583,
      price: 81500,
    });
    expect(rows.get("sum")).toMatch(/^679,17\s€$/);
  });

  it("adds up for any rates, currency and place", () => {
    for (let k = 1; k <= 60; k++) {
      const offer: Offer = {
        currency: ["EUR", "JPY", "CHF", "USD"][k % 4],
        hourly: 17 + 1.37 * k,
        glassPerKg: 0.31 * k,
        consumables: (k * 0.777) % 9,
        overheadShare: (k % 7) / 30,
        taxShare: [0, 0.19, 0.081, 0.2][k % 3],
        roundTo: [1, 5, 0.05, 10][k % 4],
      };
      const rows = read(offer, ["de-DE", "en-GB", "de-CH", "en-US"][k % 4], 13 * k);
      const of = (id: Parameters<typeof rows.get>[0]) => coins(rows.get(id) ?? "0");
      const lines = (["labour", "glass", "consumables", "overhead", "rounding"] as const).map(of);
      expect(
        lines.reduce((sum, one) => sum + one, 0),
        `${k}`,
      ).toBe(of("sum"));
      expect(of("sum") + of("tax"), `${k}`).toBe(of("price"));
    }
  });
});

describe("a plan's offer", () => {
  const refused = (offer: unknown): string => {
    try {
      planFromData({ ...plan([]), offer });
    } catch (error) {
      if (error instanceof PlanFileError) return fileFaultInWords(error.fault, "en");
      throw error;
    }
    throw new Error("was not refused");
  };
  it("is refused by field, with what is allowed", () => {
    expect(refused({ currency: "EUR" })).toMatch(/^offer\.hourly: missing/);
    expect(refused({ currency: "eur", hourly: 1 })).toMatch(/^offer\.currency: .*"EUR"/);
    expect(refused({ currency: 5, hourly: 1 })).toMatch(/^offer\.currency: 5 is not/);
    expect(refused({ currency: "EUR", hourly: -1 })).toMatch(/^offer\.hourly: -1 is out of range/);
    expect(refused({ currency: "EUR", hourly: 1, roundTo: 0 })).toMatch(/^offer\.roundTo: 0 is out of range/);
    expect(refused({ currency: "EUR", hourly: 1, taxShare: 19 })).toMatch(/^offer\.taxShare: 19 is out of/);
    expect(refused([])).toMatch(/^offer: /);
  });
  it("keeps what it doesn't know, and says so", () => {
    const { plan: read, unknown } = planFromData({
      ...plan([]),
      offer: { currency: "EUR", hourly: 1, discount: 0.1 },
    });
    expect(unknown).toEqual(["offer.discount"]);
    expect(read.offer).toMatchObject({ discount: 0.1 });
  });
});
