/** `photo` on the command line: what it writes, and in which words it refuses. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { png, raster } from "../core/optics/pictures.ts";
import { answer } from "./in-process.ts";

const PATIENCE = { timeout: 240_000 };
let folder = "";
const at = (name: string) => join(folder, name);
const plan = {
  format: "glintwright-plan",
  version: 1,
  name: "ball",
  piece: { diameterMm: 24, glass: "soda-lime" },
  rig: { wheelStops: 96 },
  tiers: [],
  kept: 7,
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "photo-"));
  await writeFile(at("plan.json"), JSON.stringify(plan));
  await writeFile(at("ball.png"), png(raster(300, 200, (x) => [x < 0.5 ? 250 : 5, 60, 60, 255])));
  await writeFile(at("text.png"), "no picture");
});
afterAll(() => rm(folder, { recursive: true }));

const photo = (...words: string[]) =>
  answer("photo", at("ball.png"), "--plan", at("plan.json"), "--out", at("new.json"), ...words);

it("puts the picture into the plan and keeps all else", PATIENCE, async () => {
  const { status, out, err } = await photo("--circle", "150,100,90", "--depth", "-2", "--diameter", "8");
  expect([status, out, err]).toEqual([0, "", ""]);
  const made = JSON.parse(await readFile(at("new.json"), "utf8"));
  const { pictures, piece, ...rest } = made;
  expect(piece.inside).toEqual([
    { kind: "picture", shape: "disc", diameterMm: 8, atMm: [0, 0, -2], picture: "photo-1" },
  ]);
  expect(pictures["photo-1"]).toMatch(/^data:image\/png;base64,/);
  expect({ ...rest, piece: plan.piece }).toEqual(plan);
  const rendered = await answer(
    "render",
    at("new.json"),
    "--out",
    at("look.png"),
    "--size",
    "8",
    "--samples",
    "1",
  );
  expect(rendered.status).toBe(0);
});

it.each([
  ["no circle", ["--circle", "1,2"], /--circle must be X,Y,R/],
  ["a circle beyond the photograph", ["--circle", "500,100,90"], /--circle: .*300 by 200/],
  [
    "a camera in the glass",
    ["--circle", "150,100,90", "--distance", "12"],
    /--distance must be .*between 12 and/,
  ],
  [
    "a disc that sticks out",
    ["--circle", "150,100,90", "--depth", "6", "--diameter", "22"],
    /--diameter must be/,
  ],
  ["a shape that isn't one", ["--circle", "150,100,90", "--shape", "cube"], /--shape must be disc or core/],
])("refuses %s in words", PATIENCE, async (_, words, said) => {
  const { status, out, err } = await photo(...words);
  expect([status, out]).toEqual([2, ""]);
  expect(err).toMatch(said);
  expect(err.trim().split("\n")).toHaveLength(1);
});

it("refuses what is no picture", PATIENCE, async () => {
  const { status, err } = await answer(
    "photo",
    at("text.png"),
    "--plan",
    at("plan.json"),
    "--circle",
    "1,1,1",
    "--out",
    at("x.json"),
  );
  expect(status).toBe(2);
  expect(err).toContain("neither a PNG nor a JPEG");
});
