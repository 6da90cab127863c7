import { readFileSync } from "node:fs";
import { deflateSync, strToU8 } from "fflate";
import decodeQR from "qr/decode.js";
import { describe, expect, it } from "vitest";
import { PlanFileError, parsePlan } from "../../../src/core/plan/file.ts";
import { fragmentOf, LONGEST_LINK, planFromFragment, qrCodeOf } from "../../../src/core/plan/link.ts";
import { fileFaultInWords } from "../../../src/words/file-faults.ts";

const full = () => parsePlan(readFileSync("tests/fixtures/plans/v1/full.json", "utf8")).plan;
const plain = () => parsePlan(readFileSync("tests/fixtures/plans/v1/plain.json", "utf8")).plan;
const base64Url = (bytes: Uint8Array) => Buffer.from(bytes).toString("base64url");
const saidOf = (deed: () => unknown): string => {
  try {
    deed();
  } catch (error) {
    if (error instanceof PlanFileError) return fileFaultInWords(error.fault, "en");
    throw error;
  }
  return "accepted";
};
const messageOf = (fragment: string): string => saidOf(() => planFromFragment(fragment));

describe("a link", () => {
  it("carries the whole plan, fields that nobody knows included", () => {
    expect(planFromFragment(`#${fragmentOf(full())}`)?.plan).toEqual(full());
    expect(planFromFragment(fragmentOf(plain()))?.plan).toEqual(plain());
  });

  it("uses only characters that need no escaping in an address", () => {
    expect(fragmentOf(full())).toMatch(/^plan=1\.[A-Za-z0-9_-]+$/);
  });

  it("made by the first release reads for ever", () => {
    const kept = readFileSync("tests/fixtures/plans/link-1.txt", "utf8").trim();
    expect(planFromFragment(kept)?.plan).toEqual(full());
  });

  it("of a common plan is short enough for a QR code read by a phone", () => {
    expect(fragmentOf(plain()).length).toBeLessThan(200);
  });

  it("is none when the address is used for something else", () => {
    for (const fragment of ["", "#", "#look", "#plans=1.abc"]) expect(planFromFragment(fragment)).toBeNull();
  });

  it("is refused when part of it is missing, was changed or is of a newer form", () => {
    const whole = fragmentOf(full());
    for (const damaged of [whole.slice(0, -9), whole.slice(0, 40), "plan=1.", "plan=1.%%%", "plan=1.A"])
      expect(messageOf(damaged)).toMatch(/damaged/);
    expect(messageOf("plan=2.abcd")).toMatch(/newer/);
  });

  it("is refused when it would unfold to more than a plan can hold", () => {
    const bomb = deflateSync(new Uint8Array(10_000_000), { level: 9 });
    expect(base64Url(bomb).length).toBeLessThan(LONGEST_LINK);
    expect(messageOf(`plan=1.${base64Url(bomb)}`)).toBe("the link holds more than a plan can");
  });

  it("is refused when it is too long to be one of ours", () => {
    expect(messageOf(`plan=1.${"A".repeat(LONGEST_LINK + 1)}`)).toMatch(/too long/);
  });

  it("holds a plan to the same rules as a file", () => {
    const text = deflateSync(strToU8('{"format":"glintwright-plan","version":1}'));
    expect(messageOf(`plan=1.${base64Url(text)}`)).toMatch(/^name: missing/);
  });

  it("is not made for a plan that is too large, and the length allowed is told", () => {
    let seed = 7;
    const noise = Array.from({ length: 19_000 }, () => {
      seed = (seed * 1103515245 + 12345) % 2 ** 31;
      return String.fromCharCode(33 + Math.floor((seed / 2 ** 31) * 90));
    });
    const notes = noise.join("");
    expect(saidOf(() => fragmentOf({ ...plain(), notes }))).toContain(`at most ${LONGEST_LINK} allowed`);
  });
});

describe("a QR code", () => {
  it("is square, has its quiet border and the three finder marks", () => {
    const { size, path } = qrCodeOf("https://example.org/#plan=1.abc");
    const dark = new Set(path.match(/M\d+ \d+/g));
    const at = (x: number, y: number) => dark.has(`M${x} ${y}`);
    for (let i = 0; i < size; i++) for (const k of [0, 1, 2, 3]) expect(at(i, k) || at(k, i)).toBe(false);
    for (const [x, y] of [
      [4, 4],
      [size - 11, 4],
      [4, size - 11],
    ]) {
      for (let i = 0; i < 7; i++) expect(at(x + i, y) && at(x, y + i)).toBe(true);
      expect(at(x + 1, y + 1)).toBe(false);
      expect(at(x + 3, y + 3)).toBe(true);
    }
  });

  it("gives another program's reader the whole plan back (the decoder of the package qr)", () => {
    const plan = plain();
    const address = `https://example.org/#${fragmentOf(plan)}`;
    const { size, path } = qrCodeOf(address);
    const PIXELS = 4;
    const data = new Uint8Array(4 * (size * PIXELS) ** 2).fill(255);
    for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
      for (let row = 0; row < PIXELS; row++) {
        const first = 4 * ((Number(y) * PIXELS + row) * size * PIXELS + Number(x) * PIXELS);
        for (let column = 0; column < PIXELS; column++) data.set([0, 0, 0], first + 4 * column);
      }
    const read = decodeQR({ width: size * PIXELS, height: size * PIXELS, data });
    expect(read).toBe(address);
    expect(planFromFragment(new URL(read).hash)?.plan).toEqual(plan);
  });

  it("holds up to 2953 bytes (ISO/IEC 18004, version 40-L) and says so beyond", () => {
    expect(qrCodeOf("a".repeat(2953)).size).toBe(177 + 8);
    expect(saidOf(() => qrCodeOf("a".repeat(2954)))).toContain("at most 2953 allowed");
  });
});
