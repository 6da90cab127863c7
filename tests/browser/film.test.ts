/** A film of the piece, read back by a parser of MP4 files that shares nothing with what wrote it, and by the browser's player. */
import { createFile, MP4BoxBuffer } from "mp4box";
import { describe, expect, it } from "vitest";
import { plan, tier } from "../core/bench/plans.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

const PIECE = JSON.stringify(
  plan([
    tier({ count: 3, armAngleDeg: 30, depth: { rule: "depth", mm: 4 } }),
    tier({ id: "b", name: "B", side: "back", count: 2, armAngleDeg: 60, depth: { rule: "depth", mm: 3 } }),
  ]),
);
const film = sharedThing(
  () => openPage("tests/browser/film-page.html"),
  ({ close }) => close(),
);
const make = (
  loop: "turn" | "walk" | "work",
  pictures: number,
  size: readonly [number, number],
  { table = "none", partsLight = false }: { table?: "none" | "linen" | "slate"; partsLight?: boolean } = {},
) =>
  film().page.evaluate(
    ([piece, which, count, pixels, lain, parts]) =>
      window.filmBench.make(piece, which, count, pixels, lain, parts),
    [PIECE, loop, pictures, size, table, partsLight] as const,
  );

/** Tracks of an MP4 file by mp4box (GPAC, BSD-3). */
function tracksOf(bytes: string) {
  const data = Buffer.from(bytes, "base64");
  const copy = new Uint8Array(data).buffer;
  const file = createFile();
  let info: Parameters<NonNullable<typeof file.onReady>>[0] | null = null;
  file.onReady = (read) => {
    info = read;
  };
  file.onError = (_module, message) => {
    throw new Error(message);
  };
  file.appendBuffer(MP4BoxBuffer.fromArrayBuffer(copy, 0));
  file.flush();
  if (!info) throw new Error("no film was read");
  return (info as Parameters<NonNullable<typeof file.onReady>>[0]).tracks;
}

describe("a film", () => {
  it("is an MP4 file of one track with each picture once, as long and as large as was wished, that closes on itself", async () => {
    const pictures = 24;
    const { kind, type, told, bytes } = await make("turn", pictures, [96, 72], { partsLight: true });
    expect(kind).toBe("mp4");
    expect(told).toEqual(Array.from({ length: pictures }, (_, k) => k + 1));
    const [track, ...others] = tracksOf(bytes);
    expect(others).toEqual([]);
    expect(track.codec).toMatch(/^avc1\./);
    expect(track.nb_samples).toBe(pictures);
    expect(track.duration / track.timescale).toBeCloseTo(1, 3);
    expect([track.video?.width, track.video?.height]).toEqual([96, 72]);
    const { seconds, steps } = await film().page.evaluate(
      ([data, of, count]) => window.filmBench.steps(data, of, count),
      [bytes, type, pictures] as const,
    );
    expect(seconds).toBeCloseTo(1, 2);
    // from the last to the first is a step like the others: neither none (the first twice) nor a jump
    const last = steps[pictures - 1];
    const others2 = steps.slice(0, -1).sort((a, b) => a - b);
    expect(last).toBeGreaterThan(0.4 * others2[0]);
    expect(last).toBeLessThan(2.5 * others2[others2.length - 1]);
    expect(others2[Math.floor(pictures / 2)]).toBeGreaterThan(0.5);
  });

  it("goes once round the table that the piece lies on, which is in each of its pictures", async () => {
    const pictures = 8;
    const { kind, type, bytes } = await make("turn", pictures, [64, 48], { table: "linen" });
    expect(kind).toBe("mp4");
    const [track] = tracksOf(bytes);
    expect(track.nb_samples).toBe(pictures);
    expect([track.video?.width, track.video?.height]).toEqual([64, 48]);
    const read = (data: string, count: number) =>
      film().page.evaluate(([film, of, n]) => window.filmBench.steps(film, of, n), [
        data,
        type,
        count,
      ] as const);
    const { seconds, steps, corners } = await read(bytes, pictures);
    expect(seconds).toBeCloseTo(pictures / 24, 2);
    const others = steps.slice(0, -1);
    expect(steps[pictures - 1]).toBeGreaterThan(0.4 * Math.min(...others));
    expect(steps[pictures - 1]).toBeLessThan(2.5 * Math.max(...others));
    // linen's stated reflectance is (0.6, 0.51, 0.4), slate's 0.09: what else stands in the same light is the same in both
    const slate = await read((await make("turn", 2, [64, 48], { table: "slate" })).bytes, 2);
    for (const [red, , blue] of corners) {
      expect(red - blue).toBeGreaterThan(10);
      for (const dark of slate.corners) expect(red).toBeGreaterThan(1.5 * dark[0]);
    }
  });

  it("shows the work from the uncut ball to the finished piece, tall for a story", async () => {
    const { bytes } = await make("work", 12, [36, 64]);
    const [track] = tracksOf(bytes);
    expect(track.nb_samples).toBe(12);
    expect([track.video?.width, track.video?.height]).toEqual([36, 64]);
  });

  it("ends at once when it is stopped", async () => {
    const stopped = await film().page.evaluate((piece) => window.filmBench.stopped(piece), PIECE);
    expect(stopped).toEqual({ made: 1, end: "AbortError" });
  });

  it("is WebM where the browser has no H.264, and pictures in a ZIP file where it has no encoder at all", async () => {
    const { page } = film();
    const kinds = await page.evaluate(async () => {
      const own = VideoEncoder.isConfigSupported;
      VideoEncoder.isConfigSupported = async (config) =>
        config.codec.startsWith("avc") ? { supported: false, config } : own.call(VideoEncoder, config);
      const webm = await window.filmBench.kind();
      const encoder = globalThis.VideoEncoder;
      Object.assign(globalThis, { VideoEncoder: undefined });
      const none = await window.filmBench.kind();
      Object.assign(globalThis, { VideoEncoder: encoder });
      return { webm, none };
    });
    expect(kinds).toEqual({ webm: "webm", none: "zip" });
    const { type, bytes } = await make("walk", 12, [32, 32]);
    expect(type).toBe("video/webm");
    // EBML, and a DocType of webm (RFC 8794, Matroska)
    const data = Buffer.from(bytes, "base64");
    expect(data.readUInt32BE(0)).toBe(0x1a45dfa3);
    expect(data.subarray(0, 64).toString("latin1")).toContain("webm");
    const { seconds } = await page.evaluate(([film, of]) => window.filmBench.steps(film, of, 12), [
      bytes,
      type,
    ] as const);
    expect(seconds).toBeCloseTo(0.5, 1);
  });
});
