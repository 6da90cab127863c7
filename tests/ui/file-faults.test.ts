import { readdirSync, readFileSync } from "node:fs";
import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { PlanFileError, parsePlan } from "../../src/core/plan/file.ts";
import type { FaultCode, FaultData, FileFault } from "../../src/core/plan/file-fault.ts";
import { planFromFragment } from "../../src/core/plan/link.ts";
import { restoreBackup } from "../../src/state/storage/backup.ts";
import { createLibrary } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import { fileFaultInWords } from "../../src/words/file-faults.ts";
import { englishLeftIn } from "../fixtures/english-left.ts";
import { samplePlan } from "../state/sample-plan.ts";

const BROKEN = "tests/fixtures/plans/broken";

function faultOf(deed: () => unknown): FileFault {
  try {
    deed();
  } catch (error) {
    if (error instanceof PlanFileError) return error.fault;
    throw error;
  }
  throw new Error("was not refused");
}
const faultWith = (change: object) =>
  faultOf(() => parsePlan(JSON.stringify({ ...samplePlan(), ...change })));

const number = { kind: "number", range: { min: 3, max: 300 } } as const;
/** One of each; a new code doesn't compile before it stands here. */
const EVERY: { readonly [C in FaultCode]: FaultData[C] } = {
  missing: { allowed: number },
  "wrong-kind": { found: {}, allowed: { kind: "word", words: ["front", "back"] } },
  "out-of-range": { found: 7, allowed: { kind: "range-or-free", range: { min: 2, max: 9, integer: true } } },
  "too-short": { found: "", least: 1, most: 100 },
  "too-long": { found: "xx", least: 0, most: 1 },
  "too-many-entries": { most: 60 },
  "least-above-greatest": {},
  "id-forbidden": {},
  "name-forbidden": {},
  "number-too-large": {},
  "no-such-field": {},
  "id-used-twice": { id: "t1" },
  "no-such-tier": { id: "t1" },
  "names-no-tier": { id: "t1" },
  "names-itself": {},
  "picture-too-large": { width: 4000, height: 3000, most: 2048 },
  "pictures-too-long": { characters: 4_000_000, most: 3_145_728 },
  "not-reckoned": {},
  "names-later-tier": { id: "t1" },
  "no-such-facet": { id: "t1/9", first: "t1/1", last: "t1/8" },
  "too-many-facets": { count: 1080, most: 1000 },
  "other-format": { found: [] },
  "no-version": { found: 1.5, allowed: { kind: "version", range: { min: 1, max: 3 } } },
  "newer-version": { found: 7, allowed: { kind: "version", range: { min: 1, max: 1 } } },
  "no-object": { found: null },
  "file-unreadable": {},
  "file-too-heavy": { bytes: 7_000_000, most: 6_000_000 },
  "file-not-text": {},
  "file-too-long": { characters: 2_000_001, most: 2_000_000 },
  "file-empty": {},
  "too-deep": { most: 32 },
  "json-cut-off": { line: 3, column: 5 },
  "json-broken": { line: 3, column: 5 },
  "link-damaged": {},
  "link-too-full": {},
  "link-newer": {},
  "link-too-long": { characters: 17_000, most: 16_000 },
  "plan-too-long-for-link": { characters: 17_000, most: 16_000 },
  "link-too-long-for-code": { characters: 3000, most: 2953 },
  "not-in-library": {},
  "backup-too-large": {},
  "backup-no-zip": {},
  "backup-no-list": {},
  "backup-list-broken": { place: "plans[0].id" },
  "not-in-backup": {},
};
const figures = (line: string) => line.match(/\d+/g)?.sort();

describe("a fault of a file", () => {
  it.each(Object.entries(EVERY))("%s has German of its own that tells the same figures", (code, data) => {
    const fault = { code, data, path: ["tiers", 2, "name"], more: 4 } as FileFault;
    const [english, german] = [fileFaultInWords(fault, "en"), fileFaultInWords(fault, "de")];
    expect(englishLeftIn(german, fault)).toBeNull();
    expect(englishLeftIn(english, fault)).not.toBeNull();
    expect(figures(german)).toEqual(figures(english));
    expect(german).not.toMatch(/undefined|\[object/);
  });

  it.each(readdirSync(BROKEN))("is told in German for %s", (name) => {
    const fault = faultOf(() => parsePlan(readFileSync(`${BROKEN}/${name}`, "utf8")));
    expect(englishLeftIn(fileFaultInWords(fault, "de"), fault)).toBeNull();
  });

  it("carries its code, the field, what was found and what is allowed", () => {
    expect(faultWith({ piece: { diameterMm: -4 } })).toEqual({
      code: "out-of-range",
      data: { found: -4, allowed: { kind: "range", range: { min: 3, max: 300 } } },
      path: ["piece", "diameterMm"],
      more: 1,
    });
  });

  it.each([
    [
      { piece: { diameterMm: -4 } },
      "piece.diameterMm: -4 liegt außerhalb, erlaubt ist 3 bis 300 (und 1 weiterer Fehler)",
    ],
    [{ tiers: {} }, "tiers: hier steht ein Objekt, nötig ist eine Liste"],
    [
      { rig: { wheelStops: "x" } },
      'rig.wheelStops: hier steht "x", nötig ist eine Zahl (eine ganze Zahl von 2 bis 400) oder null',
    ],
    [
      { version: 7 },
      "version: den Plan hat eine neuere Fassung von Glintwright geschrieben (Planversion 7), diese liest 1",
    ],
    [{ toleranceMm: 0 }, "toleranceMm: 0 liegt außerhalb, erlaubt ist mehr als 0, höchstens 10"],
    [{ format: "spreadsheet" }, 'format: hier steht "spreadsheet", nötig ist "glintwright-plan"'],
  ])("says in German for %j: %s", (change, german) => {
    expect(fileFaultInWords(faultWith(change), "de")).toBe(german);
  });

  it.each([
    ["#plan=1.!!!", "link-damaged"],
    ["#plan=9.abc", "link-newer"],
    ["#plan=1.AAAA", "link-damaged"],
  ])("of the link %s is %s", (hash, code) => {
    expect(faultOf(() => planFromFragment(hash)).code).toBe(code);
  });

  it.each([
    [
      new TextEncoder().encode("no zip"),
      "diese Datei ist keine Sicherung von Plänen (nötig ist eine ZIP-Datei)",
    ],
    [
      zipSync({ "other.txt": new Uint8Array([1]) }),
      "diese Datei ist keine Sicherung von Plänen (library.json fehlt)",
    ],
    [
      zipSync({ "library.json": new TextEncoder().encode('{"format":"x"}') }),
      "die Liste der Pläne in dieser Sicherung ist nicht lesbar (format)",
    ],
    [
      zipSync({ "library.json": new TextEncoder().encode("[]") }),
      "die Liste der Pläne in dieser Sicherung ist nicht lesbar (library.json)",
    ],
    [
      zipSync({ "library.json": new TextEncoder().encode("{ torn") }),
      "die Datei ist kein gültiges JSON: Zeile 1, Spalte 3",
    ],
  ])("of a backup is told in German", async (bytes, german) => {
    const library = createLibrary({ port: memoryPort() });
    const error = await restoreBackup(library, new Uint8Array(bytes)).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(PlanFileError);
    expect(fileFaultInWords((error as PlanFileError).fault, "de")).toBe(german);
  });
});
