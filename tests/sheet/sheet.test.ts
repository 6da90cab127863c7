/** The bench sheet as text: complete, true to size, and harmless whatever names a plan brings. */
import { describe, expect, it } from "vitest";
import { CAUTIONS } from "../../src/core/bench/order/cautions.ts";
import { cutBall } from "../../src/core/geometry/solid.ts";
import { solvePlan } from "../../src/core/plan/solve.ts";
import { flatFacet, piecePath } from "../../src/sheet/facet-drawing.ts";
import { escapeText, html } from "../../src/sheet/markup.ts";
import { sheetHtml } from "../../src/sheet/sheet.ts";
import { pagesOf } from "../../src/sheet/sheet-fit.ts";
import { sheetFormat } from "../../src/sheet/sheet-format.ts";
import { stopsInRow } from "../../src/sheet/sheet-layout.ts";
import { BOLD, linesOf, textEm } from "../../src/sheet/sheet-letters.ts";
import { SIZES } from "../../src/sheet/sheet-style.ts";
import { sheetWordsDe } from "../../src/words/de/sheet.ts";
import { sheetWordsEn } from "../../src/words/en/sheet.ts";
import { plan, RIG, tier } from "../core/bench/plans.ts";

const EVIL = `</title><script>alert(1)</script><img src=x onerror='a("b")'>&`;
const STAGES = [
  { id: "s1", name: "Coarse", grainUm: 75, calibration: [{ strokes: 20, widthMm: 6 }] },
  { id: "s2", name: "Fine", grainUm: 15 },
];
const solved = solvePlan(
  plan(
    [
      tier({ depth: { rule: "edge", mm: 3 } }),
      tier({
        id: "upper",
        name: "Upper",
        armAngleDeg: 45,
        startDeg: 15,
        depth: { rule: "close", to: "belt" },
      }),
      tier({ id: "under", name: "Under", side: "back", armAngleDeg: 30, count: 8 }),
    ],
    { ...RIG, stages: STAGES },
  ),
);
const sheet = (own = solved, words = sheetWordsEn, unit: "mm" | "inch" = "mm") =>
  sheetHtml(own, { words, unit, paper: "a4", face: [] });

describe("bench sheet", () => {
  it("says each tier as a sentence and lists every stop with a box a stage", () => {
    const text = sheet();
    expect(text).toContain("Belt: 12 facets at 20.0\u00b0, from stop 0, each ground");
    expect(text.match(/class="stop"/g)).toHaveLength(32);
    expect(text.match(/<td><\/td>/g)).toHaveLength(2 * 32);
    expect(text).toContain("Turn the piece over: back");
    expect(text).toContain("Beside polished Belt: wash first.");
    expect(text.match(/Wash first: piece, lap and hands, before coarse grit\./g)).toHaveLength(1);
  });

  it("calls a tier without a name by its place", () => {
    const nameless = solvePlan(plan([tier({ name: " " })], { ...RIG, stages: STAGES }));
    expect(sheet(nameless)).toContain("Tier 1: 12 facets at");
    expect(sheet(nameless, sheetWordsDe)).toContain("Reihe 1: 12 Facetten bei");
  });

  it("says whether the piece meets before what signs mean, and on top in bold why it can't be ground", () => {
    const edge = { rule: "edge", mm: 3 } as const;
    const met = solvePlan(plan([tier({ depth: edge })], { ...RIG, stages: STAGES }));
    expect(sheet(met)).toContain('<p class="legend"><b>All facets meet.</b> Pictures');
    expect(sheet(met, sheetWordsDe)).toContain("<b>Alle Facetten treffen sich.</b>");

    const apart = solvePlan(plan([tier({ depth: { rule: "gap", mm: 0.06 } })], { ...RIG, stages: STAGES }));
    expect(sheet(apart)).toContain("<b>Facets of Belt stay apart by up to 0.06\u00a0mm.</b>");

    const never = { rule: "edge", mm: 45 } as const;
    const stopped = solvePlan(plan([tier({ depth: never, name: "" })], { ...RIG, stages: STAGES }));
    expect(sheet(stopped)).toContain(
      'wheel of 96 stops</p></div><p class="note">Can&#39;t be ground: Tier 1 can&#39;t do what it should</p>',
    );
  });

  it("gives pivot height, strokes where calibrated, and says where they are not", () => {
    const text = sheet();
    expect(text).toMatch(/Pivot 8\d\.\d\u00a0mm above the disc, arm 212\.8\u00a0mm/);
    expect(text).toMatch(/\d+ to \d+ strokes/);
    expect(text).toContain("Polish until a loupe shows no grey");
  });

  it("draws a gauge exactly as long as each width it names, and a 50 mm check bar", () => {
    const bars = [...sheet().matchAll(/data-mm="([\d.]+)" width="([\d.]+)mm"[^>]*viewBox="0 0 ([\d.]+) /g)];
    expect(bars.length).toBeGreaterThan(4);
    for (const [, mm, width, box] of bars) expect([width, box]).toEqual([mm, mm]);
    expect(bars.map((b) => b[1])).toContain("50");
  });

  it("says with which abrasive a tier ends that is to stay ground, and offers no box for finer ones", () => {
    const tiers = solved.plan.tiers.map((t, i) => (i === 2 ? ({ ...t, finish: "ground" } as const) : t));
    const text = sheet(solvePlan({ ...solved.plan, tiers }));
    expect(text).toContain("Stop after Coarse: this tier stays ground.");
    expect(text.match(/<td><\/td>/g)).toHaveLength(32 + 24);
  });

  it("says once how the pivot follows discs of different thickness", () => {
    const stages = [STAGES[0], { ...STAGES[1], discMm: 2.5 }];
    const text = sheet(solvePlan({ ...solved.plan, rig: { ...solved.plan.rig, stages } }));
    expect(text.match(/For Fine raise the pivot by 2\.5\u00a0mm/g)).toHaveLength(1);
    expect(sheet()).not.toContain("raise the pivot");
  });

  it("shares gauges between widths that an eye can't tell apart, each as long as it says", () => {
    for (const unit of ["mm", "inch"] as const) {
      const bars = [
        ...sheet(solved, sheetWordsEn, unit).matchAll(/data-mm="([\d.]+)"[\s\S]*?<figcaption>([\d.]+)/g),
      ];
      const step = unit === "mm" ? 0.1 : 0.005 * 25.4;
      for (const [, mm, label] of bars.slice(1)) {
        expect(Number(mm)).toBeCloseTo(Number(label) * (unit === "mm" ? 1 : 25.4), 1);
        expect(Math.abs(Number(mm) / step - Math.round(Number(mm) / step))).toBeLessThan(0.06);
      }
      expect(new Set(bars.map(([, , label]) => label)).size).toBe(bars.length);
    }
  });

  it("lets the text get smaller by how much has to fit, never below what is read at arm's length", () => {
    const rings = (count: number) =>
      solvePlan(
        plan(
          Array.from({ length: count }, (_, i) =>
            tier({ id: `t${i}`, armAngleDeg: 4 * i, count: 24, depth: { rule: "depth", mm: 0.3 } }),
          ),
          { ...RIG, stages: STAGES },
          60,
        ),
      );
    const made = (own: ReturnType<typeof rings>, paper: "a4" | "letter") => {
      const text = sheetHtml(own, { words: sheetWordsEn, unit: "mm", paper, face: [] });
      return {
        points: Number(/font: ([\d.]+)pt/.exec(text)?.[1]),
        tooMuch: text.includes("too much for two pages"),
      };
    };
    let before = { points: SIZES[0].lapPt, tooMuch: false };
    for (const count of [1, 4, 8, 11, 20]) {
      const own = rings(count);
      const [a4, letter] = [made(own, "a4"), made(own, "letter")];
      expect(letter.points).toBeLessThanOrEqual(a4.points);
      expect(a4.points).toBeLessThanOrEqual(before.points);
      before = a4;
      if (count === 1) expect(a4).toEqual({ points: 14, tooMuch: false });
      if (count === 8) expect(a4.tooMuch).toBe(false);
    }
    // Twenty rings of 24 don't fit on two pages at any size that can be read: the sheet says so itself.
    expect(before).toEqual({ points: 9, tooMuch: true });
  });

  it("puts what doesn't fit any more on the next page whole", () => {
    expect(pagesOf([100, 100, 49], 250)).toBe(1);
    expect(pagesOf([100, 100, 51], 250)).toBe(2);
    expect(pagesOf([100, 200, 100, 200], 250)).toBe(4);
    expect(pagesOf([600], 250)).toBe(3);
    expect(pagesOf([600, 150], 250)).toBe(3);
  });

  it("spreads a tier's stops evenly over as few rows as the paper allows", () => {
    expect([8, 24, 25, 48, 120].map((n) => stopsInRow(n, 24))).toEqual([8, 24, 13, 24, 24]);
    expect(stopsInRow(16, 15)).toBe(8);
  });

  it("says every caution before the first tier", () => {
    const text = sheet();
    for (const caution of CAUTIONS.map((one) => sheetWordsEn.cautions[one])) {
      const at = text.indexOf(escapeText(caution));
      expect(at).toBeGreaterThan(0);
      expect(at).toBeLessThan(text.indexOf('class="tier"'));
    }
  });

  it("gives widths while ground in brackets where the last facet ends as said, at the stops where facets stand unevenly", () => {
    expect(sheet()).toContain("In brackets: width while ground");
    expect(sheet()).not.toContain("Under a stop");
    const uneven = sheet(
      solvePlan(plan([tier({ count: 7, depth: { rule: "touch" } })], { ...RIG, stages: STAGES })),
    );
    expect(uneven).toContain("Under a stop: its last width while ground, mm.");
    expect(uneven.match(/<small>\d+\.\d<i>/g)).toHaveLength(7);
  });

  it("keeps every name and note as text", () => {
    const evil = {
      ...solved.plan,
      name: EVIL,
      notes: EVIL,
      piece: { ...solved.plan.piece, glass: { name: EVIL, nd: 1.5, vd: 60, densityGcm3: 2.5 } },
      rig: {
        ...solved.plan.rig,
        stages: [{ ...STAGES[0], name: EVIL }],
        setUps: { front: { zeroLabel: EVIL } },
      },
      tiers: solved.plan.tiers.map((t) => ({ ...t, name: EVIL })),
    };
    const text = sheet(solvePlan(evil));
    expect(text).not.toMatch(/<script|<img/);
    expect(text.match(/&lt;script&gt;/g)!.length).toBeGreaterThan(5);
  });

  it("asks for nothing from outside and runs nothing", () => {
    const text = sheet();
    expect(text).not.toMatch(/https?:|<script|<link|url\(|@import| on\w+=/);
    expect(text).toContain("default-src 'none'");
  });

  it("speaks German with a decimal comma, and inch", () => {
    const de = sheet(solved, sheetWordsDe);
    expect(de).toContain('lang="de"');
    expect(de).toMatch(/12 Facetten bei 20,0\u00b0/);
    const inch = sheet(solved, sheetWordsEn, "inch");
    expect(inch).toContain("1.181\u00a0in");
    expect(sheetFormat(sheetWordsEn, "inch").length(25.4)).toBe("1.000\u00a0in");
  });

  it("is a sheet for the uncut marble and for a tier that cuts nothing", () => {
    expect(sheet(solvePlan(plan([])))).toContain("Before the first cut");
    const nothing = sheet(solvePlan(plan([tier({ depth: { rule: "depth", mm: 0 } })])));
    expect(nothing).toContain("Nothing of this facet is left");
  });
});

describe("a facet drawn flat", () => {
  const solid = cutBall(solved.planes);

  it("has the width and height of the exact solid", () => {
    solid.facets.forEach((facet, k) => {
      const { side } = solved.plan.tiers[solved.facets[k].tierIndex];
      const [left, right, low, high] = flatFacet(facet, 15, side)!.box;
      expect(right - left).toBeCloseTo(facet.width * 15, 9);
      expect(high - low).toBeCloseTo(facet.height * 15, 9);
    });
  });

  it("has its own pole up on both sides", () => {
    for (const k of [12, 24]) {
      const { side } = solved.plan.tiers[solved.facets[k].tierIndex];
      const facet = solid.facets[k];
      const flat = flatFacet(facet, 15, side)!;
      const highest = flat.pieces.reduce((a, b) => (b.from[1] > a.from[1] ? b : a));
      const index = flat.pieces.indexOf(highest);
      const poles = facet.outline.map((p) => Math.abs(p.from[2]));
      expect(Math.abs(facet.outline[index].from[2])).toBeCloseTo(Math.max(...poles), 9);
    }
  });

  it("draws a whole circle as two halves and an arc the right way round", () => {
    const whole = flatFacet(cutBall([{ n: [1, 0, 0], h: 0.6 }]).facets[0], 10, "front")!;
    expect(whole.circleMm).toBeCloseTo(8, 12);
    expect(piecePath(whole.pieces[0], whole.circleMm).match(/A/g)).toHaveLength(2);
    expect(flatFacet(cutBall([{ n: [1, 0, 0], h: 1 }]).facets[0], 10, "front")).toBeNull();
  });
});

describe("lines of text", () => {
  it("are never reckoned narrower than they are set, and at most a twelfth wider", () => {
    // Widths of this line at 1000 px: Liberation Sans (Helvetica's metrics) 46748, bold 49624, as Chromium measures them.
    const line =
      "Polish until no grey shows under a loupe, at a slant against a lamp. Diamond 325 mesh: 7.0 mm (8.3, 7.7)";
    for (const [weight, measured] of [
      [1, 46.748],
      [BOLD, 49.624],
    ]) {
      expect(textEm(line, weight) / measured).toBeGreaterThan(1);
      expect(textEm(line, weight) / measured).toBeLessThan(13 / 12);
    }
  });

  it("are broken at spaces, within a word only where it is longer than a line", () => {
    const word = textEm("stone");
    const space = textEm(" ");
    expect(linesOf("stone stone", 2 * word + space + 1e-9)).toBe(1);
    expect(linesOf("stone stone", 2 * word)).toBe(2);
    expect(linesOf("stone", word / 2.5)).toBe(3);
    expect(linesOf("", 10)).toBe(1);
  });
});

describe("markup", () => {
  it("escapes every value but what it made itself", () => {
    expect(html`<p>${"<b>"}${html`<i>${"&"}</i>`}${null}${3}</p>`.markup).toBe(
      "<p>&lt;b&gt;<i>&amp;</i>3</p>",
    );
    expect(escapeText("a\u0000\u0007b\n\"'")).toBe("ab\n&quot;&#39;");
  });
});
