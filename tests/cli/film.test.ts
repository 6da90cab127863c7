/** `film`: a full turn of pictures, each the one that `render` makes from there. */
import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { decode } from "fast-png";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { turnAbout } from "../../src/core/optics/camera.ts";
import { plan, tier } from "../core/bench/plans.ts";
import { answer } from "./in-process.ts";

const PATIENCE = { timeout: 240_000 };
let folder = "";
let file = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "film-"));
  file = join(folder, "plan.json");
  // nothing about it is alike from two sides
  const tiers = [
    tier({ count: 5, armAngleDeg: 10, startDeg: 12, depth: { rule: "depth", mm: 1 } }),
    tier({ id: "top", count: 3, armAngleDeg: 50, startDeg: 40, depth: { rule: "depth", mm: 2 } }),
  ];
  await writeFile(file, JSON.stringify(plan(tiers)));
});
afterAll(() => rm(folder, { recursive: true }));

const SMALL = ["--size", "24", "--samples", "4"];
const at = (...names: string[]): string => join(folder, ...names);
const pixels = async (path: string): Promise<number[]> => [...decode(await readFile(path)).data];
/** Mean difference of two pictures' bytes. */
const unlike = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + Math.abs(v - b[i]), 0) / a.length;

describe("film", PATIENCE, () => {
  it("makes the numbered pictures of one turn about +y, from the front on towards +x", async () => {
    const film = await answer(
      "film",
      file,
      "--out",
      at("turn"),
      "--frames",
      "4",
      "--elevation",
      "0",
      ...SMALL,
    );
    expect(film.status).toBe(0);
    expect(JSON.parse(film.out)).toMatchObject({ frames: 4, first: "0000.png", last: "0003.png" });
    expect(film.err).toMatch(/3 of 4, about \d+ s left\n4 of 4\n$/);
    expect((await readdir(at("turn"))).sort()).toEqual(["0000.png", "0001.png", "0002.png", "0003.png"]);
    const frames = await Promise.all([0, 1, 2, 3].map((k) => pixels(at("turn", `000${k}.png`))));
    for (const [k, from] of [
      [0, "front"],
      [1, "0,0"],
      [3, "180,0"],
    ] as const) {
      await answer("render", file, "--out", at("one.png"), "--from", from, ...SMALL);
      expect(unlike(frames[k], await pixels(at("one.png")))).toBe(0);
    }
    expect(unlike(frames[0], frames[2])).toBeGreaterThan(1);
  });

  it("turns about the table's normal, from the usual bearing on, so far above the table as asked", async () => {
    const stage = ["--stage", "0.6,0.6,0.6", "--rest", "back"];
    const words = ["--frames", "4", "--elevation", "35", ...stage, ...SMALL];
    expect((await answer("film", file, "--out", at("table"), ...words)).status).toBe(0);
    await answer("render", file, "--out", at("one.png"), "--from", "120,35", ...stage, ...SMALL);
    const second = await pixels(at("table", "0001.png"));
    expect(unlike(second, await pixels(at("one.png")))).toBeLessThan(0.5);
    expect(unlike(await pixels(at("table", "0000.png")), second)).toBeGreaterThan(1);
  });

  it("is refused in words below the table, and where pictures of a longer film would stay", async () => {
    const below = await answer("film", file, "--out", at("below"), "--elevation", "-20", "--stage", "1,1,1");
    expect([below.status, below.err]).toEqual([2, "--elevation: the camera would stand below the table\n"]);
    await writeFile(at("0009.png"), "");
    const longer = await answer("film", file, "--out", folder, "--frames", "9");
    expect(longer.status).toBe(2);
    expect(longer.err).toMatch(/it holds 0009\.png of a longer film/);
    const pile = await answer("film", file, "--out", file, "--frames", "2");
    expect([pile.status, pile.err]).toEqual([2, expect.stringMatching(/this is a file, a folder is needed/)]);
  });
});

describe("a turn of views", () => {
  it("steps evenly, keeps its height, and ends one step before it began", () => {
    const views = turnAbout([0, 1, 0], [0, 0.4, 1], 30, 12);
    expect(views).toHaveLength(12);
    for (const [i, [x, y, z]] of views.entries()) {
      expect(y).toBeCloseTo(0.5, 12);
      // counter-clockwise from above: from +z towards +x
      expect(Math.atan2(x, z)).toBeCloseTo(((i > 6 ? i - 12 : i) * Math.PI) / 6, 12);
    }
  });
});
