import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { PlanFileError, parsePlan, serializePlan } from "../../../src/core/plan/file.ts";
import { COUNTS, FILE } from "../../../src/core/plan/limits.ts";
import { migrate } from "../../../src/core/plan/migrate.ts";
import { fileFaultInWords } from "../../../src/words/file-faults.ts";

const FIXTURES = "tests/fixtures/plans";
const textOf = (path: string) => readFileSync(`${FIXTURES}/${path}`, "utf8");
const plain = () => JSON.parse(textOf("v1/plain.json"));

function refusal(text: string): PlanFileError {
  try {
    parsePlan(text);
  } catch (error) {
    if (error instanceof PlanFileError) return error;
    throw error;
  }
  throw new Error("the plan was accepted");
}
const refusalText = (text: string): string => fileFaultInWords(refusal(text).fault, "en");

describe("a plan file", () => {
  it("of every past version reads, and writes back with all its fields", () => {
    for (const name of readdirSync(`${FIXTURES}/v1`)) {
      const { plan } = parsePlan(textOf(`v1/${name}`));
      expect(JSON.parse(serializePlan(plan))).toEqual(JSON.parse(textOf(`v1/${name}`)));
      expect(parsePlan(serializePlan(plan)).plan).toEqual(plan);
    }
  });

  it("keeps fields that nobody knows and reports them by path", () => {
    const { unknown, plan } = parsePlan(textOf("v1/full.json"));
    expect(unknown).toEqual(["workshopShelf", "tiers[0].colourOfTape"]);
    expect(JSON.parse(serializePlan(plan)).workshopShelf).toEqual({ row: 3, boxes: [7, 8] });
  });

  it("reports unknown fields inside designs, depth rules and measured facets, whatever their names", () => {
    const plan = plain();
    plan.piece.inside = [{ kind: "bubble", diameterMm: 2, shine: 1 }];
    plan.tiers[0].depth.firmly = true;
    plan.tiers[0].asCut = { facets: { "t1/2": { widthMm: 3, by: "eye" } } };
    plan.constructor = "someone";
    plan["two words"] = 1;
    const text = JSON.stringify(plan);
    expect(parsePlan(text).unknown).toEqual([
      "piece.inside[0].shine",
      "tiers[0].depth.firmly",
      'tiers[0].asCut.facets["t1/2"].by',
      "constructor",
      '["two words"]',
    ]);
    expect(JSON.parse(serializePlan(parsePlan(text).plan))).toEqual(JSON.parse(text));
  });

  it("is frozen all the way down", () => {
    const { plan } = parsePlan(textOf("v1/full.json"));
    const frozen = (value: unknown): boolean =>
      typeof value !== "object" ||
      value === null ||
      (Object.isFrozen(value) && Object.values(value).every(frozen));
    expect(frozen(plan)).toBe(true);
  });

  it("may begin with a byte order mark and may hold no tier at all", () => {
    expect(parsePlan(`\uFEFF${JSON.stringify({ ...plain(), tiers: [] })}`).plan.tiers).toEqual([]);
  });

  it("may carry any text as a name, kept letter by letter", () => {
    for (const name of ["", "<script>alert(1)</script>", "Kugel Nº 7 \u0000\u2028 \ud800", "名前 🪩"]) {
      const text = JSON.stringify({ ...plain(), name });
      expect(parsePlan(serializePlan(parsePlan(text).plan)).plan.name).toBe(name);
    }
  });

  it("takes the ends of every range, and a start counted over many turns", () => {
    const plan = plain();
    plan.piece.diameterMm = 300;
    plan.rig.wheelStops = null;
    plan.tiers = [0, 90].map((armAngleDeg, i) => ({
      ...plan.tiers[0],
      id: `t${i}`,
      armAngleDeg,
      count: i ? 120 : 1,
      startDeg: i ? -1e9 : 1e300,
      depth: { rule: "depth", mm: 0 },
    }));
    expect(() => parsePlan(JSON.stringify(plan))).not.toThrow();
  });
});

describe("a broken plan file", () => {
  const expected: Record<string, string> = JSON.parse(textOf("broken/expected.json"));
  const names = readdirSync(`${FIXTURES}/broken`).filter((name) => name !== "expected.json");

  it("is in the collection with the line that it deserves", () => {
    expect(names.sort()).toEqual(Object.keys(expected).sort());
  });

  it.each(names)("is refused with one clear line: %s", (name) => {
    const message = refusalText(textOf(`broken/${name}`));
    expect(message.startsWith(expected[name])).toBe(true);
    expect(message).not.toMatch(/[\n\r]/);
    expect(message.length).toBeLessThan(300);
  });

  it("is refused by size before it is parsed", () => {
    expect(refusalText(" ".repeat(FILE.characters + 1))).toContain(`at most ${FILE.characters} allowed`);
  });

  it("is told the number of facets allowed", () => {
    const plan = plain();
    plan.tiers = Array.from({ length: 10 }, (_, i) => ({ ...plan.tiers[0], id: `t${i}`, count: 120 }));
    expect(refusalText(JSON.stringify(plan))).toContain(String(COUNTS.facets));
  });

  it("doesn't reach the prototype of anything", () => {
    refusal(textOf("broken/prototype.json"));
    expect("isAdmin" in {}).toBe(false);
  });
});

describe("migration", () => {
  const steps = {
    1: (document: Readonly<Record<string, unknown>>) => ({ ...document, title: document.name }),
    2: (document: Readonly<Record<string, unknown>>) => ({ ...document, title: `${document.title}!` }),
  };

  it("walks from any past version to the present one, keeping fields it doesn't know", () => {
    expect(migrate({ version: 1, name: "a", own: 1 }, 3, steps)).toEqual({
      version: 3,
      name: "a",
      own: 1,
      title: "a!",
    });
    expect(migrate({ version: 2, title: "b" }, 3, steps)).toEqual({ version: 3, title: "b!" });
  });

  it("leaves a present document the very same object and never changes its input", () => {
    const document = Object.freeze({ version: 1, name: "a" });
    expect(migrate(document)).toBe(document);
    migrate(document, 3, steps);
    expect(document).toEqual({ version: 1, name: "a" });
  });
});
