/**
 * At least 20,000 texts that nobody would write: random JSON, plans with one field made strange, fixture files with
 * letters changed. Every one is either a plan that writes and reads back as itself, or is refused with one clear line;
 * none keeps the processor busy for a second. What the accepted ones come to (report, bench sheet, drawings) holds no
 * number that is none and no markup of theirs.
 */
import { readdirSync, readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { reportPlan } from "../../../src/core/check/report.ts";
import { cutBall } from "../../../src/core/geometry/solid.ts";
import { outlinesSvg } from "../../../src/core/models/outlines-svg.ts";
import { skinSvg } from "../../../src/core/models/skin-svg.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { PlanFileError, parsePlan, serializePlan } from "../../../src/core/plan/file.ts";
import { fragmentOf, planFromFragment } from "../../../src/core/plan/link.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { sheetHtml } from "../../../src/sheet/sheet.ts";
import { sheetWordsEn } from "../../../src/words/en/sheet.ts";
import { fileFaultInWords } from "../../../src/words/file-faults.ts";
import { englishLeftIn } from "../../fixtures/english-left.ts";
import { textOf } from "../../fixtures/found.ts";

const SEED = 20261125;
const LEAST_INPUTS = 20_000;
/** Of the two dozen reasons to refuse a file, so many are met. */
const LEAST_CODES = 20;
const FIXTURES = "tests/fixtures/plans";
const texts = ["v1", "broken"].flatMap((folder) =>
  readdirSync(`${FIXTURES}/${folder}`).map((name) => readFileSync(`${FIXTURES}/${folder}/${name}`, "utf8")),
);
const short = texts.filter((text) => text.length < 20_000);
const plans = readdirSync(`${FIXTURES}/v1`).map((name) => readFileSync(`${FIXTURES}/v1/${name}`, "utf8"));

let inputs = 0;
let accepted = 0;
const codes = new Set<string>();
/** Accepted plans that differ from the one before, to be solved and drawn. */
const toDraw: Plan[] = [];
/** So many are drawn, spread over all that were accepted. */
const DRAWN = 40;

/** Longest that one input may keep the processor busy, s: its own work, not what else the machine does meanwhile. */
const HANG_S = 1;
const MICROSECONDS = 1e6;
function unhung<T>(work: () => T): T {
  const before = process.cpuUsage();
  try {
    return work();
  } finally {
    promise(process.cpuUsage(before).user / MICROSECONDS < HANG_S, "kept the processor busy for a second");
  }
}

/** The same for what takes no time at all: only what took long by the clock is done again, by the processor's own. */
function readUnhung(text: string): Plan {
  const begun = performance.now();
  try {
    return parsePlan(text).plan;
  } finally {
    if (performance.now() - begun > 1000 * HANG_S) unhung(() => parsePlan(text));
  }
}

/** Plain comparisons: an assertion library would take longer than the reading. */
function promise(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}

/** Reads a text and holds the outcome to the promise. */
function judge(text: string): void {
  inputs++;
  let plan: Plan;
  try {
    plan = readUnhung(text);
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    const { fault } = error;
    const english = fileFaultInWords(fault, "en");
    const german = fileFaultInWords(fault, "de");
    for (const line of [english, german]) {
      promise(line.length > 0 && line.length < 600, `a line of ${line.length} characters`);
      promise(!/[\n\r\u2028\u2029]/.test(line), "more than one line");
      promise(!/undefined|\[object/.test(line), `a hole in: ${line}`);
    }
    promise(englishLeftIn(german, fault) === null, `not German: ${german}`);
    codes.add(fault.code);
    return;
  }
  accepted++;
  toDraw.push(plan);
  const written = serializePlan(plan);
  promise(isDeepStrictEqual(parsePlan(written).plan, plan), "reads back as another plan");
}

/** Whether a plan says such a word itself, in a name or a field that nobody knows. */
const holdsTheWord = (plan: Plan): boolean => /NaN|Infinity|undefined/.test(serializePlan(plan));
const near = (text: string): string => {
  const at = text.search(/\bNaN\b|\bInfinity\b|undefined/);
  return text.slice(Math.max(0, at - 80), at + 40);
};

type Path = (string | number)[];
/** Every place in a tree of data. */
function places(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  const holder = value as Record<string, unknown>;
  const below = Object.keys(holder).flatMap((key) =>
    places(holder[key], [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length > 0 ? [path, ...below] : below;
}

/** Of each plan, found once. */
const placesOf = new Map<string, readonly Path[]>();

/** Writes a strange value, given as JSON text, at one place of a plan: as text, so that 1e999 and __proto__ get through. */
function planted(plan: string, pick: number, strange: string, how: "put" | "remove" | "rename"): string {
  const data = JSON.parse(plan);
  const all = placesOf.get(plan) ?? places(data);
  placesOf.set(plan, all);
  const path = all[pick % all.length];
  const last = path[path.length - 1];
  const holder = path.slice(0, -1).reduce((at, key) => at[key], data);
  const mark = "a mark that stands nowhere else";
  if (how === "remove") delete holder[last];
  else if (how === "put" || Array.isArray(holder)) holder[last] = mark;
  else {
    holder[mark] = holder[last];
    delete holder[last];
    return JSON.stringify(data).replace(JSON.stringify(mark), () =>
      JSON.stringify(strange.replace(/^"|"$/g, "")),
    );
  }
  return JSON.stringify(data).replace(JSON.stringify(mark), () => strange);
}

const STRANGE = [
  "null",
  "true",
  "0",
  "-0",
  "-1",
  "1e999",
  "-1e999",
  "1e308",
  "5e-324",
  "0.1",
  "2147483648",
  "9007199254740993",
  '""',
  '"__proto__"',
  '"constructor"',
  '"toString"',
  '"NaN"',
  '"front"',
  '"t1"',
  '"belt"',
  '"<img onerror=alert(1)>"',
  "[]",
  "{}",
  "[[]]",
  '{"rule":"touch"}',
  '{"rule":"close","to":"star"}',
  '{"__proto__":{"x":1}}',
  '{"constructor":1}',
  '{"length":1e9}',
  "[null,null]",
  "[1,2,3]",
  '{"toJSON":1}',
  '{"then":1}',
  `"${"x".repeat(2000)}"`,
  `${"[".repeat(40)}${"]".repeat(40)}`,
];

describe("reading survives", () => {
  it("JSON of any shape", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => judge(JSON.stringify(value))),
      { numRuns: 2000, seed: SEED },
    );
  });

  it("text of any kind", () => {
    // halves of pairs too; the library's own strings of all letters take seconds to prepare
    const letter = fc.oneof(fc.nat(0x7f), fc.nat(0xffff), fc.nat(0x10ffff));
    const text = fc.array(letter, { maxLength: 40 }).map((codes) => String.fromCodePoint(...codes));
    fc.assert(fc.property(text, judge), {
      numRuns: 1500,
      seed: SEED,
    });
  });

  it("a plan with anything at all in any one place, a field missing or named otherwise", () => {
    const value = fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom(...STRANGE) },
      { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3 }).map((data) => JSON.stringify(data)) },
      { weight: 1, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }).map(String) },
    );
    const how = fc.constantFrom("put", "put", "put", "remove", "rename");
    fc.assert(
      fc.property(fc.constantFrom(...plans), fc.nat(), value, how, (plan, pick, strange, deed) =>
        judge(planted(plan, pick, strange, deed as "put")),
      ),
      { numRuns: 8000, seed: SEED },
    );
  });

  it("files with letters lost, doubled, swapped or flipped", () => {
    const change = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      length: fc.integer({ min: 0, max: 12 }),
      with: fc.oneof(
        fc.constantFrom("", "0", "-", "e9", "[", "]", "{", "}", '"', ",", ":", "\\", "\\u0000", "null"),
        fc.string({ maxLength: 3 }),
      ),
    });
    fc.assert(
      fc.property(
        fc.constantFrom(...short),
        fc.array(change, { minLength: 1, maxLength: 3 }),
        (text, changes) => {
          const changed = changes.reduce((now, { at, length, with: put }) => {
            const from = Math.floor(at * now.length);
            return now.slice(0, from) + put + now.slice(from + length);
          }, text);
          judge(changed);
        },
      ),
      { numRuns: 7500, seed: SEED },
    );
  });

  it("links with letters lost or changed", () => {
    const whole = fragmentOf(parsePlan(plans[0]).plan);
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.nat(3), fc.string({ maxLength: 4 }), (at, length, put) => {
        inputs++;
        try {
          const file = planFromFragment(whole.slice(0, at) + put + whole.slice(at + length));
          if (file) judge(serializePlan(file.plan));
        } catch (error) {
          if (!(error instanceof PlanFileError)) throw error;
        }
      }),
      { numRuns: 1200, seed: SEED },
    );
  });

  it("what they hold: no number that is none, no markup of theirs, in report, sheet and drawings", () => {
    expect(toDraw.length).toBeGreaterThanOrEqual(DRAWN);
    for (let k = 0; k < DRAWN; k++) {
      const plan = toDraw[Math.floor((k * toDraw.length) / DRAWN)];
      const { said, pages } = unhung(() => {
        const solved = solvePlan(plan);
        const solid = cutBall(solved.planes);
        const { findings, ...numbers } = reportPlan(plan, solved, solid);
        const said = [
          // JSON writes a number that is none as null
          JSON.stringify({ ...numbers, facets: numbers.facets.map(({ wheelStop: _, ...rest }) => rest) })
            .replace(/"with":null/g, "")
            .replace("null", "NaN"),
          findings.map((finding) => textOf(plan, finding)).join(),
        ];
        const pages = [
          sheetHtml(solved, { words: sheetWordsEn, unit: "mm", paper: "a4", face: [] }),
          skinSvg(solved, solid),
          outlinesSvg(solved, solid),
        ];
        return { said, pages };
      });
      for (const text of [...said, ...pages]) {
        promise(
          !/\bNaN\b|\bInfinity\b|undefined/.test(text) || holdsTheWord(plan),
          `a stray number: ${near(text)}`,
        );
        if (pages.includes(text))
          promise(!/<script|<img|<iframe|\son\w+\s*=\s*["']/i.test(text), "markup of its own");
      }
    }
  }, 300_000);

  afterAll(() => {
    expect(inputs).toBeGreaterThanOrEqual(LEAST_INPUTS);
    // the inputs are no good if nearly all of them are refused, or none
    expect(accepted).toBeGreaterThan(inputs / 50);
    expect(accepted).toBeLessThan(inputs / 2);
    // nor if they are all refused for a few reasons
    expect(codes.size).toBeGreaterThanOrEqual(LEAST_CODES);
    expect("x" in {}).toBe(false);
  });
});
