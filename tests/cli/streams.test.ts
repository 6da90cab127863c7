/**
 * What stands under a name, or behind standard output, may be anything: a command always ends, with its answer or with one
 * clear line. Several plans need one start.
 */
import { execFile, execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endingOf } from "../../src/cli/usage-error.ts";
import { BrokenMesh } from "../../src/core/geometry/broken-mesh.ts";
import { InexactCut } from "../../src/core/geometry/inexact-cut.ts";
import { plan, tier } from "../core/plan/sample.ts";
import { answer } from "./in-process.ts";

const folder = mkdtempSync(join(tmpdir(), "glintwright-streams-"));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string) => join(folder, name);

/** Its report fills a pipe several times over. */
const large = plan([
  tier("a", 0, 60, { rule: "depth", mm: 0.2 }),
  tier("b", 12, 60, { rule: "depth", mm: 0.2 }),
]);
writeFileSync(at("large.json"), JSON.stringify(large));
writeFileSync(at("small.json"), JSON.stringify(plan([tier("a", 0, 12, { rule: "edge", mm: 3 })])));
writeFileSync(at("broken.json"), "{");
mkdirSync(at("folder"));
symlinkSync(at("round"), at("about"));
symlinkSync(at("about"), at("round"));
symlinkSync("/dev/full", at("full.stl"));
symlinkSync("/dev/full", at("full.pfm"));
writeFileSync(at("sparse.json"), "");
truncateSync(at("sparse.json"), 1e12);
// a pipe for each test of its own, since they run side by side
execFileSync("mkfifo", ["silent", "held", "endless", "unread", "late"].map(at));

interface Said {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** A line of the shell, in which `glint` is the command line and the folder is where it stands. */
function shell(line: string): Promise<Said> {
  // a fault that never ends is not to go on after the test
  const cli = `glint() { timeout 60 node ${process.cwd()}/src/cli/run.mjs "$@"; }; cd ${folder}; ${line}`;
  return new Promise((resolve) => {
    const options = { timeout: 120_000, maxBuffer: 2 ** 26 };
    execFile("bash", ["-c", cli], options, (error, out, err) => {
      resolve({ status: error ? Number(error.code ?? -1) : 0, out, err });
    });
  });
}

// the sources are bundled by the first start: many at once would each do it
beforeAll(async () => {
  expect(await shell("glint --help > /dev/null")).toEqual({ status: 0, out: "", err: "" });
});

// much of it is waiting
it.concurrent.each([
  ["a pipe that nobody fills", "report silent", /^silent: nothing came from it for 5 seconds\n$/],
  [
    "a pipe that stays silent",
    "report held & exec 3> held; wait $!",
    /^held: nothing came from it for 5 seconds\n$/,
  ],
  [
    "an endless pipe",
    "report endless & (yes > endless) 2> /dev/null; wait $!",
    /^endless: the file is too large: .*\n$/,
  ],
  ["a full disk", "report small.json > /dev/full", /^standard output can't be written: the disk is full\n$/],
  ["a full disk for help", "--help > /dev/full", /^standard output can't be written: the disk is full\n$/],
  [
    "a full disk for many",
    "solve small.json small.json > /dev/full",
    /^standard output .* the disk is full\n$/,
  ],
  [
    "a pipe without a reader",
    "sheet small.json --out unread",
    /^--out: can't write unread: nobody is at .*\n$/,
  ],
  [
    "a place that takes no folder",
    "film small.json --frames 1 --size 8 --samples 1 --out /proc/films/one",
    /^--out: can't write .*\/proc\/films\/one: there is no such file or folder\n$/,
  ],
])("ends with one line and status 2 on %s", async (_, line, said) => {
  const { status, out, err } = await shell(`glint ${line}`);
  expect(err).toMatch(said);
  expect({ status, out }).toEqual({ status: 2, out: "" });
});

/** Words of a command line; a name of the folder's begins with a dot and a slash. */
const inFolder = (line: string) => line.split(" ").map((word) => word.replace(/^\.\//, `${folder}/`));
const PROGRESS = /^\d+ %\n/gm;

// no stream is in play: the program need not be started for each
it.each([
  ["a loop of links", "report ./about", /^\.\/about: the link leads round in a circle\n$/],
  ["an endless device", "report /dev/zero", /^\/dev\/zero: this is a device, a file is needed\n$/],
  ["a folder", "report ./folder", /^\.\/folder: this is a folder, a file is needed\n$/],
  ["an endless file", "solve ./sparse.json", /^\.\/sparse.json: the file is too large: .*\n$/],
  [
    "a full disk for a sheet",
    "sheet ./small.json --out /dev/full",
    /^--out: can't write \/dev\/full: the disk is full\n$/,
  ],
  [
    "a full disk for a model",
    "export ./small.json --out ./full.stl",
    /^--out: can't write \.\/full.stl: the disk is full\n$/,
  ],
  [
    "a full disk for a picture",
    "render ./small.json --size 8 --samples 1 --out ./full.pfm",
    /^--out: can't write \.\/full.pfm: the disk is full\n$/,
  ],
  [
    "a folder to write to",
    "sheet ./small.json --out ./folder",
    /^--out: can't write \.\/folder: this is a folder, .*\n$/,
  ],
  ["a folder for a picture", "render ./small.json --out ./folder", /^--out .*\n$/],
  [
    "a loop to write to",
    "sheet ./small.json --out ./about",
    /^--out: can't write \.\/about: the link leads .*\n$/,
  ],
])("ends with one line and status 2 on %s", async (_, line, said) => {
  const { status, out, err } = await answer(...inFolder(line));
  expect(err.replaceAll(folder, ".").replace(PROGRESS, "")).toMatch(said);
  expect({ status, out }).toEqual({ status: 2, out: "" });
});

it.each([
  "report large.json | head -c 5",
  "report large.json large.json large.json | head -c 5",
  "report large.json | true",
  "--help | true",
])("is quiet when nobody reads on: %s", async (line) => {
  const { err, out } = await shell(`glint ${line}; exit \${PIPESTATUS[0]}`);
  expect(err).toBe("");
  expect(out.length).toBeLessThanOrEqual(5);
});

it("keeps its status when nobody can hear the line", async () => {
  expect(await shell("glint report nowhere 2> /dev/full")).toMatchObject({ status: 2, out: "" });
});

it("reads a plan that comes through a pipe, also from a writer that is late", async () => {
  const { out: told } = await shell("glint solve small.json");
  expect(JSON.parse(told).tiers).toHaveLength(1);
  for (const line of [
    "glint solve <(cat small.json)",
    "cat small.json | glint solve /dev/stdin",
    "(sleep 1; cat small.json > late) & glint solve late",
  ])
    expect(await shell(line), line).toEqual({ status: 0, out: told, err: "" });
});

it.each(["report", "solve"])(
  "answers %s of several plans with a line each, in order, from one start",
  async (what) => {
    const names = ["large.json", "broken.json", "small.json", "nowhere", "folder"];
    const { status, out, err } = await shell(`glint ${what} ${names.join(" ")}`);
    const lines = out.trimEnd().split("\n");
    expect(lines).toHaveLength(names.length);
    const answers = lines.map((line) => JSON.parse(line));
    for (const i of [0, 2]) {
      const alone = JSON.parse((await shell(`glint ${what} ${names[i]}`)).out);
      expect(answers[i]).toEqual(alone);
    }
    for (const i of [1, 3, 4]) {
      expect(Object.keys(answers[i])).toEqual(["error"]);
      expect(answers[i].error).toContain(`${names[i]}: `);
    }
    expect(status).toBe(2);
    expect(err.trimEnd().split("\n")).toEqual([1, 3, 4].map((i) => answers[i].error));
    expect((await shell(`glint ${what} large.json small.json`)).status).toBe(0);
  },
);

it("names the one of several plans whose picture is damaged", async () => {
  // the head says one pixel, and no pixel follows
  const head = Buffer.from("89504e470d0a1a0a0000000d4948445200000001000000010806000000", "hex").toString(
    "base64",
  );
  const eye = { kind: "picture", shape: "disc", diameterMm: 5, atMm: [0, 0, 0], picture: "eye" } as const;
  const damaged = plan([], { inside: [eye] });
  const pictures = { eye: `data:image/png;base64,${head}` };
  writeFileSync(at("damaged.json"), JSON.stringify({ ...damaged, pictures }));
  const { status, out, err } = await answer("measure", at("small.json"), at("damaged.json"));
  expect(status).toBe(2);
  expect(err).toMatch(/damaged\.json: pictures\.eye: [^\n]+\n$/);
  expect(JSON.parse(out.trimEnd().split("\n")[1])).toEqual({ error: err.trimEnd() });
});

it("tells a model that would not be whole by the same status, in one line", () => {
  expect(endingOf(new BrokenMesh("open"))).toEqual({
    status: 3,
    line: "no sound model can be made of this plan: its surface would not be closed",
  });
});

it("tells a plan that can't be reckoned exactly by a status of its own", () => {
  const { status, line } = endingOf(new InexactCut("closed-skin")) ?? {};
  expect(status).toBe(3);
  expect(line).toMatch(/^this plan can't be reckoned exactly: [^\n]+$/);
  expect(endingOf(new Error("a fault of ours"))).toBeNull();
});
