import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { decode } from "fast-png";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { renderOptions } from "../../src/cli/render-options.ts";
import { renderPicture } from "../../src/cli/render-threads.ts";
import { cameraFrom } from "../../src/core/optics/camera.ts";
import { LIGHT_SETTINGS } from "../../src/core/optics/light-settings.ts";
import { plainMaterial } from "../../src/core/optics/materials.ts";
import { makeScene } from "../../src/core/optics/scene.ts";
import { clearPiece, tieredPlanes } from "../core/optics/helpers.ts";
import { answer } from "./in-process.ts";

/** Starting the command line takes a while on a busy machine. */
const PATIENCE = { timeout: 240_000 };

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "look-"));
});
afterAll(() => rm(folder, { recursive: true }));

const plan = (glass: object, tiers: readonly object[] = []) => ({
  format: "glintwright-plan",
  version: 1,
  name: "look",
  piece: { diameterMm: 24, glass },
  rig: { wheelStops: 96 },
  tiers,
});
const own = (nd: number) => ({ name: "own", nd, vd: 50, densityGcm3: 2.5 });
const crown = {
  id: "crown",
  name: "crown",
  side: "front",
  armAngleDeg: 40,
  count: 8,
  startDeg: 0,
  depth: { rule: "depth", mm: 1.5 },
};

async function save(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, content);
  return path;
}

const render = (...words: string[]) => answer("render", ...words);

/** A Portable FloatMap with its rows turned to run from the top. */
async function readPfm(path: string): Promise<{ size: number; at: (x: number, y: number) => number[] }> {
  const bytes = await readFile(path);
  const head = /^PF\n(\d+) (\d+)\n-1\.0\n/.exec(bytes.toString("latin1", 0, 40));
  if (!head) throw new Error("not a colour PFM");
  const size = Number(head[1]);
  const start = head[0].length;
  expect(bytes.length).toBe(start + 12 * size * size);
  const at = (x: number, y: number) =>
    [0, 1, 2].map((c) => bytes.readFloatLE(start + 4 * (3 * (size * (size - 1 - y) + x) + c)));
  return { size, at };
}

/** An .hdr picture all around whose colour tells the direction: red grows towards +x, green towards +y, blue towards +z. */
function directionLight(): Uint8Array {
  const [width, height] = [128, 64];
  const pixels: number[] = [];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const azimuth = ((x + 0.5) / width - 0.5) * 2 * Math.PI;
      const elevation = (0.5 - (y + 0.5) / height) * Math.PI;
      const d = [
        Math.cos(elevation) * Math.cos(azimuth),
        Math.sin(elevation),
        Math.cos(elevation) * Math.sin(azimuth),
      ];
      // Exponent 129: mantissa / 128.
      pixels.push(...d.map((v) => Math.round(64 + 60 * v)), 129);
    }
  const head = `#?RADIANCE\nFORMAT=32-bit_rle_rgbe\n\n-Y ${height} +X ${width}\n`;
  return Uint8Array.from([...new TextEncoder().encode(head), ...pixels]);
}

describe("render", PATIENCE, () => {
  it("gives uniform light back as exactly 1 through a faceted piece in a person's own glass", async () => {
    const file = await save("own.json", JSON.stringify(plan(own(1.6), [crown])));
    const out = join(folder, "own.pfm");
    const { status, out: said } = await render(
      file,
      "--out",
      out,
      "--size",
      "16",
      "--samples",
      "4",
      "--light",
      "uniform",
    );
    expect(status).toBe(0);
    expect(said).toBe("");
    const { at } = await readPfm(out);
    for (let y = 0; y < 16; y++)
      for (let x = 0; x < 16; x++) for (const v of at(x, y)) expect(Math.abs(v - 1)).toBeLessThan(1e-6);
  });

  it("shows the light's directions where they belong, +x right and +y up from the front, +y up from the side", async () => {
    // Glass with the index of air: the picture is the light itself.
    const file = await save("air.json", JSON.stringify(plan(own(1), [crown])));
    const hdr = await save("directions.hdr", directionLight());
    const out = join(folder, "air.pfm");
    const look = async (...words: string[]) => {
      const run = await render(
        file,
        "--out",
        out,
        "--size",
        "9",
        "--samples",
        "64",
        "--light",
        hdr,
        "--field",
        "60",
        ...words,
      );
      expect(run.err.replace(/\d+ %\n/g, "")).toBe("");
      const { at } = await readPfm(out);
      return (x: number, y: number) => at(x, y).map((v) => (v * 128 - 64) / 60);
    };
    // The outermost pixels' centres lie at 8/9 of the edge.
    const side = (Math.tan(Math.PI / 6) * 8) / 9;
    const slant = side / Math.hypot(1, side);
    const front = await look();
    expect(front(4, 4)[2]).toBeCloseTo(-1, 1);
    expect(front(8, 4)[0]).toBeCloseTo(slant, 1);
    expect(front(0, 4)[0]).toBeCloseTo(-slant, 1);
    expect(front(4, 0)[1]).toBeCloseTo(slant, 1);
    const fromSide = await look("--from", "side", "--no-dispersion");
    expect(fromSide(4, 4)[0]).toBeCloseTo(-1, 1);
    expect(fromSide(4, 0)[1]).toBeCloseTo(slant, 1);
    // Seen from +x with +y up, the right hand is -z.
    expect(fromSide(8, 4)[2]).toBeCloseTo(-slant, 1);
    const below = await look("--from", "-90,0");
    expect(below(4, 4)[1]).toBeCloseTo(1, 1);
    expect(below(4, 0)[2]).toBeCloseTo(slant, 1);
  });

  it("writes a square PNG in its own light", async () => {
    const file = await save("boro.json", JSON.stringify(plan("borosilicate" as never, [crown])));
    const out = join(folder, "boro.png");
    expect((await render(file, "--out", out, "--size", "24", "--samples", "2")).status).toBe(0);
    const png = decode(await readFile(out));
    expect([png.width, png.height, png.channels]).toEqual([24, 24, 3]);
    expect(new Set(png.data).size).toBeGreaterThan(20);
  });

  it("leaves the background out: nothing beside the piece, the design in it nearly whole, the glass seen through", async () => {
    const inside = [{ kind: "core", diameterMm: 12, rgb: [0.8, 0.2, 0.1] }];
    const clear = plan(own(1.5));
    const file = await save("core.json", JSON.stringify({ ...clear, piece: { ...clear.piece, inside } }));
    const out = join(folder, "core.png");
    const words = [
      "--size",
      "33",
      "--samples",
      "8",
      "--transparent",
      "--from",
      "side",
      "--light",
      "overcast",
    ];
    const { status, err } = await render(file, "--out", out, ...words);
    expect(err.replace(/\d+ %\n/g, "")).toBe("");
    expect(status).toBe(0);
    const { channels, data } = decode(await readFile(out));
    expect(channels).toBe(4);
    const at = (x: number, y: number) => [...data.slice(4 * (33 * y + x), 4 * (33 * y + x) + 4)];
    expect(at(0, 0)).toEqual([0, 0, 0, 0]);
    const core = at(16, 16);
    // Some of what it scatters finds its way to what is behind.
    expect(core[3]).toBeGreaterThan(230);
    expect(core[0]).toBeGreaterThan(core[2] + 50);
    // Beside the core one looks through the glass.
    expect(at(16, 5)[3]).toBeGreaterThan(10);
    expect(at(16, 5)[3]).toBeLessThan(128);
  });

  it("lays the piece on a table that throws its light back: a white one under even light is white everywhere", async () => {
    const file = await save("table.json", JSON.stringify(plan(own(1.6), [crown])));
    const out = join(folder, "table.pfm");
    const words = ["--size", "12", "--samples", "4", "--light", "uniform", "--rest", "crown/1"];
    expect((await render(file, "--out", out, "--stage", "1,1,1", ...words)).status).toBe(0);
    const white = await readPfm(out);
    for (let i = 0; i < 144; i++)
      for (const v of white.at(i % 12, Math.floor(i / 12))) expect(Math.abs(v - 1)).toBeLessThan(1e-6);
    expect((await render(file, "--out", out, "--stage", "0.5,0.25,0", ...words)).status).toBe(0);
    const dyed = await readPfm(out);
    // In a corner only the table is seen, hardly shaded.
    const [r, g, b] = dyed.at(0, 0);
    expect(r).toBeCloseTo(0.5, 1);
    expect(r / g).toBeCloseTo(2, 1);
    expect(b).toBeCloseTo(0, 6);
  });

  it("refuses what it can't do in one plain line that names the option", async () => {
    const file = await save("fine.json", JSON.stringify(plan(own(1.5))));
    const hdr = await save("broken.hdr", "not a picture\n");
    const out = join(folder, "x.png");
    const png = ["--out", out];
    for (const [words, named] of [
      [[...png, "--light", hdr], "--light"],
      [["--out", join(folder, "no/such/folder.png"), "--size", "2", "--samples", "1"], "--out"],
      [[...png, "--stage", "1,1,1", "--from", "-90,10"], "below the table"],
      [[...png, "--stage", "1,1,1", "--rest", "back", "--from", "front"], "along the table's normal"],
      [[...png, "--stage", "1,1,1", "--rest", "crown/1"], "--rest"],
    ] as const) {
      const { status, err } = await render(file, ...words);
      expect(status).toBe(2);
      const lines = err.split("\n").filter((line) => line !== "" && !line.endsWith(" %"));
      expect(lines).toHaveLength(1);
      expect(lines[0]).toContain(named);
    }
  });
});

describe("render's options", () => {
  it("have defaults that show the whole piece", () => {
    expect(renderOptions({ out: "a.png" }, 15)).toEqual({
      out: "a.png",
      format: "png",
      size: 512,
      samples: 64,
      light: "north-window",
      azimuthDeg: 0,
      elevationDeg: 90,
      fieldDeg: 14,
      distanceMm: 150,
      bounces: null,
      dispersion: true,
      seed: 1,
      table: null,
      transparent: false,
      fNumber: null,
    });
  });

  it("put the piece on a table and look at it from where that shows", () => {
    const facets = () => new Map([["ring/1", [1, 0, 0] as const]]);
    const view = (words: Record<string, string>) => {
      const { azimuthDeg, elevationDeg, table } = renderOptions({ out: "a.png", ...words }, 15, facets);
      return [azimuthDeg, elevationDeg, table?.rest.down];
    };
    const stage = "0.8,0,1";
    expect(renderOptions({ out: "a.png", stage }, 15).table?.material).toEqual(plainMaterial([0.8, 0, 1]));
    expect(view({ stage })).toEqual([25, 60, [0, -1, 0]]);
    expect(view({ stage, rest: "side" })).toEqual([25, 60, [0, -1, 0]]);
    expect(view({ stage, rest: "back" })).toEqual([30, 25, [0, 0, -1]]);
    expect(view({ stage, rest: "front" })).toEqual([30, -25, [0, 0, 1]]);
    expect(view({ stage, rest: "back", from: "10,20" })).toEqual([10, 20, [0, 0, -1]]);
    expect(view({ stage, rest: "ring/1" })[2]).toEqual([1, 0, 0]);
  });

  it("leave the background out of a PNG only", () => {
    expect(renderOptions({ out: "a.png", transparent: true }, 15).transparent).toBe(true);
    expect(() => renderOptions({ out: "a.pfm", transparent: true }, 15)).toThrow("--transparent");
  });

  it("take views by name and by angles, negative ones too", () => {
    const view = (from: string) => {
      const { azimuthDeg, elevationDeg } = renderOptions({ out: "a.pfm", from }, 15);
      return [azimuthDeg, elevationDeg];
    };
    expect(view("back")).toEqual([0, -90]);
    expect(view("side")).toEqual([0, 0]);
    expect(view("-30,-12.5")).toEqual([-30, -12.5]);
  });

  it("are refused by name when they are out of range", () => {
    for (const [name, value] of [
      ["out", "a.jpg"],
      ["size", "0"],
      ["size", "12.5"],
      ["samples", "many"],
      ["samples", ""],
      ["light", "moon"],
      ["light", "toString"],
      ["from", "above"],
      ["from", "10"],
      ["from", "10,91"],
      ["from", "1,2,3"],
      ["field", "180"],
      ["field", "0"],
      ["distance", "15"],
      ["bounces", "-1"],
      ["seed", "-3"],
      ["stage", "0.5"],
      ["stage", "1,1,1.1"],
      ["stage", "1,,1"],
      ["stage", "-0.1,0,0"],
      ["rest", "back"],
    ])
      expect(() => renderOptions({ out: "a.png", [name]: value }, 15), `--${name} ${value}`).toThrow(
        `--${name}`,
      );
  });
});

describe("render's threads", PATIENCE, () => {
  it("give the same picture whatever their number, and another one for another seed", async () => {
    const scene = makeScene({
      piece: clearPiece(1.6),
      planes: tieredPlanes(6),
      roughness: tieredPlanes(6).map((_, i) => (i % 2 ? 0.1 : 0)),
      light: { kind: "setting", setting: LIGHT_SETTINGS["showroom-spots"], turnRad: 0.3 },
    });
    // Large enough that threads are really started.
    const settings = { size: 48, samples: 24, seed: 9, dispersion: true, bounces: 3 };
    const job = { scene, camera: cameraFrom(10, 60, 10, 14), settings };
    const quiet = () => undefined;
    const one = await renderPicture(job, quiet, 1);
    const two = await renderPicture(job, quiet, 2);
    expect(two.rows).toEqual(one.rows);
    expect(two.lost).toBe(one.lost);
    expect(one.lost).toBeGreaterThan(0);
    const rough = (seed: number) =>
      renderPicture({ ...job, settings: { ...settings, samples: 1, seed } }, quiet, 1);
    expect((await rough(10)).rows).not.toEqual((await rough(9)).rows);
  });
});
