/**
 * With `--lang de` all that the command line says is German: the help of each command, what is wrong with each option, with files
 * and with the system, how far it is, what is told besides the answer. Each line is held against the same in English.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { programIn } from "../../src/cli/program.ts";
import { systemSaid } from "../../src/cli/system-fault.ts";
import { commandLineWords } from "../../src/words/command-line.ts";
import type { Language } from "../../src/words/language.ts";
import { png, raster } from "../core/optics/pictures.ts";
import { plan, tier } from "../core/plan/sample.ts";
import { type Answer, answer } from "./in-process.ts";

const PATIENCE = { timeout: 240_000 };
const folder = mkdtempSync(join(tmpdir(), "german-"));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string) => join(folder, name);
writeFileSync(at("plan.json"), JSON.stringify(plan([tier("a", 0, 12, { rule: "edge", mm: 3 })])));
writeFileSync(
  at("odd.json"),
  JSON.stringify({ ...plan([tier("a", 0, 12, { rule: "edge", mm: 3 })]), mine: 1 }),
);
writeFileSync(at("broken.json"), "{");
writeFileSync(at("binary.json"), new Uint8Array([0xff, 0xfe]));
writeFileSync(at("broken.hdr"), "no light");
writeFileSync(at("ball.png"), png(raster(300, 200, (x) => [x < 0.5 ? 250 : 5, 60, 60, 255])));
writeFileSync(at("damaged.png"), readFileSync(at("ball.png")).subarray(0, 60));
writeFileSync(
  at("wish.json"),
  JSON.stringify({
    format: "glintwright-wish",
    version: 1,
    piece: { diameterMm: 30, glass: "borosilicate" },
    rig: { wheelStops: 96 },
    sides: "front",
    tiers: [1, 2],
    facets: [8, 20],
    limits: { minutes: [0, 0.001] },
    want: { facets: 1 },
    across: "minutes",
    up: "facets",
    mine: 1,
  }),
);
mkdirSync(at("long"));
writeFileSync(at("long/0009.png"), "");

/** Words that stand in nearly every English sentence and in no German one. */
const ENGLISH =
  /(?<!\p{L})(the|is|are|not|must|be|of|and|to|or|with|for|by|this|there|that|needed|allowed|error|unknown|has|have|needs|can)(?!\p{L})/iu;
/** Without what a person typed or has to type: paths, options, quoted words, values to choose from. */
const said = (text: string): string =>
  text
    .replaceAll(folder, "")
    .replace(/"[^"]*"|'[^']*'|--?[a-z][\w-]*|\S*\/\S*|\S+\.\w{3,4}\b/g, " ")
    .trim();

/** Asks in both languages: the same statuses, English words in English only.  @returns the German answer */
async function both(args: readonly string[], part: "out" | "err"): Promise<Answer> {
  const en = await answer(...args, "--lang", "en");
  const de = await answer("--lang=de", ...args);
  expect([args, de.status], en.err + de.err).toEqual([args, en.status]);
  expect(said(en[part]), "English").toMatch(ENGLISH);
  expect(de[part], args.join(" ")).not.toBe("");
  expect(said(de[part]), "German").not.toMatch(ENGLISH);
  expect(de[part]).not.toBe(en[part]);
  return de;
}

const PLAN = at("plan.json");
/** Arguments with which each command would do its work. */
const SOUND: Readonly<Record<string, readonly string[]>> = {
  report: [PLAN],
  solve: [PLAN],
  measure: [PLAN],
  bench: [PLAN],
  fit: [PLAN],
  offer: [PLAN],
  sheet: [PLAN, "--out", at("sheet.html")],
  export: [PLAN, "--out", at("piece.svg")],
  show: [PLAN, "--out", at("show.html")],
  render: [PLAN, "--out", at("look.pfm")],
  film: [PLAN, "--out", at("film")],
  ideas: [at("wish.json")],
  photo: [at("ball.png"), "--plan", PLAN, "--circle", "150,100,90", "--out", at("new.json")],
};
const TABLE = "--stage=1,1,1";
const PICTURED = {
  stage: ["--stage=lava"],
  rest: ["--rest=nose", TABLE],
  size: ["--size=0"],
  samples: ["--samples=few"],
  light: ["--light=sun"],
  field: ["--field=180"],
  distance: ["--distance=1"],
  aperture: ["--aperture=0"],
  bounces: ["--bounces=-1"],
  transparent: ["--transparent"],
  "no-dispersion": null,
  seed: ["--seed=-1"],
} as const;
const NOWHERE = "--out=/nowhere/at/all";
/** For each option what can't be used; null where any text is taken, or nothing can be wrong. */
const WRONG: Readonly<Record<string, Readonly<Record<string, readonly string[] | null>>>> = {
  report: {},
  solve: {},
  measure: {},
  bench: {},
  fit: {},
  offer: { json: null },
  // whoever asks for a language that is none of ours is told in English
  sheet: { out: [NOWHERE], language: null, unit: ["--unit=ell"], paper: ["--paper=a9"] },
  export: { out: ["--out=piece.doc"], drawing: ["--drawing=nothing"] },
  show: {
    stage: PICTURED.stage,
    rest: ["--rest=back"],
    out: [`--out=${folder}`],
    caption: null,
    price: null,
    light: ["--light=sun"],
    pictures: ["--pictures=0"],
    size: ["--size=1"],
    "with-recipe": null,
  },
  render: { ...PICTURED, out: ["--out=look.doc"], from: ["--from=above"] },
  film: {
    ...PICTURED,
    // its pictures hold transparency
    transparent: null,
    out: [`--out=${PLAN}`, "--frames=1"],
    frames: ["--frames=0"],
    elevation: ["--elevation=90"],
  },
  ideas: { tries: ["--tries=0"], seed: ["--seed=-1"], threads: ["--threads=0"], out: [NOWHERE] },
  photo: {
    plan: ["--plan=nowhere.json"],
    circle: ["--circle=1,2"],
    out: [NOWHERE],
    distance: ["--distance=1"],
    diameter: ["--diameter=0"],
    depth: ["--depth=99"],
    shape: ["--shape=cube"],
    side: ["--side=left"],
  },
};

const program = programIn("en", () => {});
const commands = program.commands.map((command) => ({
  name: command.name(),
  options: command.options.map(({ long, required }) => ({
    name: long?.slice(2) ?? "",
    takesValue: required === true,
  })),
}));

describe("every command", () => {
  it("is known here with every option", () => {
    const known = Object.fromEntries(
      Object.entries(WRONG).map(([name, own]) => [name, Object.keys(own).sort()]),
    );
    expect(known).toEqual(
      Object.fromEntries(commands.map(({ name, options }) => [name, options.map((o) => o.name).sort()])),
    );
  });

  it.each(["", ...commands.map(({ name }) => name)])("has its help in German: %s", async (name) => {
    const { out, err, status } = await both([...name.split(" ").filter(Boolean), "--help"], "out");
    expect([status, err]).toEqual([0, ""]);
    expect(out).toContain("Aufruf:");
  });

  it.each(commands)("tells in German what is missing or too much: $name", async ({ name, options }) => {
    for (const { name: option, takesValue } of options)
      if (takesValue) expect((await both([name, PLAN, `--${option}`], "err")).status).toBe(2);
    for (const args of [
      [name],
      [name, ...SOUND[name], "--nope"],
      [name, ...SOUND[name].slice(0, 1), "--ou=x"],
    ])
      expect((await both(args, "err")).status).toBe(2);
    const isOfMany = ["report", "solve", "measure"].includes(name);
    if (!isOfMany) await both([name, ...SOUND[name], "another"], "err");
  });

  it.each(commands)("refuses in German what an option can't be: $name", PATIENCE, async ({ name }) => {
    for (const [option, wrong] of Object.entries(WRONG[name])) {
      if (wrong === null) continue;
      const { status, out, err } = await both([name, ...SOUND[name], ...wrong], "err");
      expect([option, status, out]).toEqual([option, 2, ""]);
      expect(err.trim().split("\n")).toHaveLength(1);
    }
  });

  it.each(commands)("tells in German of a file that can't be read: $name", async ({ name }) => {
    const rest = SOUND[name].slice(1);
    for (const path of ["nowhere", folder, "/dev/zero", at("binary.json"), at("broken.json")])
      expect((await both([name, path, ...rest], "err")).status).toBe(2);
  });
});

it.each([
  ["an unknown command", ["nope"]],
  ["a command that was nearly hit", ["reprot"]],
  ["a plan that asks for nothing", ["offer", PLAN]],
  ["a camera below the table", ["film", ...SOUND.film, "--elevation=-20", TABLE]],
  ["a view along the table's normal", ["render", ...SOUND.render, "--from=front", "--rest=back", TABLE]],
  ["a way to lie without a table", ["render", ...SOUND.render, "--rest=back"]],
  ["a light that is none", ["render", ...SOUND.render, `--light=${at("broken.hdr")}`]],
  ["a light that is not there", ["render", ...SOUND.render, "--light=nowhere.hdr"]],
  ["a folder of a longer film", ["film", PLAN, "--out", at("long"), "--frames=2"]],
  ["a damaged photograph", ["photo", at("damaged.png"), ...SOUND.photo.slice(1)]],
  ["a circle beyond the photograph", ["photo", ...SOUND.photo, "--circle=900,100,90"]],
])("tells in German of %s", PATIENCE, async (_, args) => {
  const { status, out, err } = await both(args, "err");
  expect([status, out]).toEqual([2, ""]);
  expect(err.trim().split("\n")).toHaveLength(1);
});

it("tells in German how far it is, and what is told besides the answer", PATIENCE, async () => {
  const small = ["--size=8", "--samples=1"];
  await both(["film", ...SOUND.film, "--frames=2", ...small], "err");
  await both(["render", ...SOUND.render, "--bounces=0", ...small], "err");
  await both(["show", ...SOUND.show, "--pictures=1", "--size=16"], "err");
  const { err } = await both(["ideas", ...SOUND.ideas, "--tries=20", "--threads=1"], "err");
  expect(err.trim().split("\n")).toHaveLength(2);
});

it("has the texts of an answer in German", async () => {
  const { out } = await answer("report", at("odd.json"), "--lang", "de");
  const texts: string[] = JSON.parse(out).findings.map(({ text }: { readonly text: string }) => text);
  expect(texts).toContainEqual(expect.stringContaining("Das Feld mine kennt diese Fassung nicht"));
  for (const text of texts) expect(text).not.toMatch(ENGLISH);
});

it("says every fault of the system in German", () => {
  const CODES = [
    "ENOENT",
    "ENOTDIR",
    "EISDIR",
    "EACCES",
    "EPERM",
    "EROFS",
    "ENAMETOOLONG",
    "ELOOP",
    "ENOSPC",
  ];
  for (const code of [...CODES, "EDQUOT", "ENXIO", "EPIPE", "EMFILE", "EIO"]) {
    const inWords = (language: Language) =>
      systemSaid(Object.assign(new Error(code), { code }))?.(commandLineWords(language), language) ?? "";
    expect(said(inWords("en"))).toMatch(ENGLISH);
    expect(said(inWords("de"))).not.toMatch(ENGLISH);
  }
});

/** All that can be said: words as they are, sentences with something in them. */
function leavesOf(words: unknown): string[] {
  if (typeof words === "string") return [words];
  if (typeof words === "function") return [String(words("x", "y", "z"))];
  return Object.values(words as object).flatMap(leavesOf);
}

it("has no English sentence among the German ones, whether a test comes by it or not", () => {
  const de = leavesOf(commandLineWords("de"));
  expect(de.length).toBe(leavesOf(commandLineWords("en")).length);
  expect(de.filter((text) => ENGLISH.test(said(text)))).toEqual([]);
});

it("answers in English without a language, and where the language is none of ours", async () => {
  expect((await answer("report", "nowhere")).err).toBe("nowhere: there is no such file or folder\n");
  const { status, err } = await answer("report", PLAN, "--lang", "xx");
  expect([status, err]).toEqual([2, '--lang must be en or de, not "xx"\n']);
});
