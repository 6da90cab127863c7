import { describe, expect, it } from "vitest";
import type { Plan } from "../../../src/core/plan/document.ts";
import { PlanFileError } from "../../../src/core/plan/file.ts";
import { LONGEST_LINK, packedText, unpackedText } from "../../../src/core/plan/link.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { showFragment, shownInFragment } from "../../../src/core/show/show-link.ts";
import { showPiece } from "../../../src/core/show/show-piece.ts";
import { plan, tier } from "../bench/plans.ts";

const own: Plan = {
  ...plan([
    tier({ id: "belt", name: "Secret belt", count: 12, depth: { rule: "touch" } }),
    tier({
      id: "top",
      name: "Top",
      count: 1,
      armAngleDeg: 90,
      depth: { rule: "width", mm: 8 },
      finish: "ground",
    }),
  ]),
  name: `Quay </script>"`,
  notes: "mine alone",
  maker: { name: "Kiln Lane", mark: "data:image/png;base64,AAAA" },
  offer: { currency: "EUR", hourly: 40 },
  piece: {
    diameterMm: 30,
    glass: "soda-lime",
    tint: { rgb: [0.6, 0.8, 0.9], atMm: 20 },
    dop: { side: "back", diameterMm: 12 },
    inkMarkDeg: 33,
    inside: [{ kind: "core", diameterMm: 9, rgb: [0.1, 0.2, 0.5] }],
  },
};
const texts = { caption: "A <b>ring</b>", price: "210 €", light: "north-window" } as const;
const solved = solvePlan(own);
const fragment = showFragment(solved, texts);
const dataIn = (text: string) => JSON.parse(unpackedText(text.slice("show=1.".length)));

describe("a link for a customer", () => {
  it("brings the piece, its glass, inside and words back", () => {
    const read = shownInFragment(`#${fragment}`);
    expect(read).toMatchObject(texts);
    expect(read.plan.name).toBe(own.name);
    expect(read.plan.maker).toEqual({ name: "Kiln Lane" });
    const [was, is] = [showPiece(solved), read.piece];
    expect(is.planes).toHaveLength(was.planes.length);
    // rounded as they are, planes that lie level may stand in another order
    const rows = (planes: readonly number[]) =>
      Array.from({ length: planes.length / 5 }, (_, k) => planes.slice(5 * k, 5 * k + 5));
    for (const row of rows(was.planes)) {
      const off = rows(is.planes).map((other) => Math.max(...row.map((x, i) => Math.abs(x - other[i]))));
      expect(Math.min(...off)).toBeLessThan(2e-6);
    }
    expect({ ...is, planes: [] }).toEqual({ ...was, planes: [] });
  });

  it("holds nothing of how it is cut, nor what the maker keeps", () => {
    const text = unpackedText(fragment.slice("show=1.".length));
    for (const secret of [
      "Secret",
      "armAngle",
      "count",
      "mine alone",
      "hourly",
      'wheelStops":96',
      "mark",
      "dop",
      "inkMark",
    ])
      expect(text).not.toContain(secret);
    expect(dataIn(fragment).plan.tiers).toEqual([]);
    // 13 facets in an order by themselves, five numbers each
    expect(dataIn(fragment).planes).toHaveLength(65);
  });

  it("carries the table that the piece lies on, to a millionth; a link from before there was one is of a piece in the hand", () => {
    const up = [0.6, 0, 0.8] as const;
    const table = { material: "oak", up, floor: -0.912345678, onRing: true } as const;
    const read = shownInFragment(showFragment(solved, { ...texts, table }));
    expect(read.table).toMatchObject({ material: "oak", onRing: true });
    expect(read.table?.floor).toBe(-0.912346);
    read.table?.up.forEach((x, k) => {
      expect(x).toBeCloseTo(up[k], 6);
    });
    expect("table" in dataIn(fragment)).toBe(false);
    expect(shownInFragment(fragment).table).toBeUndefined();
  });

  it("refuses a table that is none", () => {
    const good = dataIn(fragment);
    const table = { material: "oak", up: [0, 1, 0], floor: -1, onRing: false };
    const reading = (laid: unknown) =>
      shownInFragment(`show=1.${packedText(JSON.stringify({ ...good, table: laid }))}`);
    expect(reading(table).table).toEqual(table);
    const broken: unknown[] = [
      null,
      "oak",
      [],
      { ...table, material: "toString" },
      { ...table, material: 5 },
      { ...table, up: [0, 2, 0] },
      { ...table, up: [0, 1] },
      { ...table, up: [0, "1", 0] },
      { ...table, up: [0, null, 1] },
      { ...table, floor: -1.5 },
      { ...table, floor: "low" },
      { ...table, floor: 1 },
      { ...table, onRing: 1 },
    ];
    for (const laid of broken) expect(() => reading(laid), JSON.stringify(laid)).toThrow(PlanFileError);
  });

  it("refuses what is damaged, whatever stands in it, in the words of a link", () => {
    const good = dataIn(fragment);
    const broken: unknown[] = [
      { ...good, planes: good.planes.slice(1) },
      { ...good, planes: [0, 0, 2, 0.5, 0] },
      { ...good, planes: [0, 0, 1, 1, 0] },
      { ...good, planes: [0, 0, 1, 0.5, 3] },
      { ...good, planes: [0, 0, 1, 0.5, "constructor"] },
      { ...good, planes: "many" },
      { ...good, light: "toString" },
      { ...good, caption: 5 },
      { ...good, price: "x".repeat(501) },
      { ...good, plan: { ...good.plan, piece: { diameterMm: -1 } } },
      { planes: [] },
      null,
      [],
    ];
    for (const data of broken)
      expect(() => shownInFragment(`show=1.${packedText(JSON.stringify(data))}`)).toThrow(PlanFileError);
    for (const bad of ["show=", "show=2.abc", "show=1.", "show=1.!!", `show=1.${packedText("no json")}`])
      expect(() => shownInFragment(bad)).toThrow(PlanFileError);
    expect(() => shownInFragment(`show=1.${"A".repeat(LONGEST_LINK + 1)}`)).toThrow(PlanFileError);
  });

  it("is refused for a piece that is too long for an address, and for one of which nothing is left", () => {
    const many = Array.from({ length: 52 }, (_, k) =>
      tier({
        id: `t${k}`,
        side: k % 2 ? "back" : "front",
        armAngleDeg: 1.49 * k + 0.137,
        count: 19,
        startDeg: 1.713 * k,
        depth: { rule: "depth", mm: 0.02 * (1 + k / 97) },
      }),
    );
    // words that nothing packs: 500 signs of three bytes, each another one
    const long = Array.from({ length: 500 }, (_, k) =>
      String.fromCharCode(0x4e00 + ((k * 7919) % 20000)),
    ).join("");
    const fits = solvePlan(plan(many, { wheelStops: null }, 80));
    expect(shownInFragment(showFragment(fits, texts)).piece.planes).toHaveLength(5 * 988);
    expect(() => showFragment(fits, { ...texts, caption: long, price: long })).toThrow(PlanFileError);
    const gone = [tier({ count: 2, armAngleDeg: 0, depth: { rule: "depth", mm: 15.5 } })];
    expect(() => showFragment(solvePlan(plan(gone)), texts)).toThrow(/nothing/);
  });
});
