/** What is wrong with a file, link or backup is said in German too, whole: nothing of the English line is left in it. */
import { readdirSync, readFileSync } from "node:fs";
import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { PlanFileError, parsePlan } from "../../src/core/plan/file.ts";
import { planFromFragment } from "../../src/core/plan/link.ts";
import { restoreBackup } from "../../src/state/storage/backup.ts";
import { createLibrary } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import { fileErrorInGerman, fileErrorInWords } from "../../src/ui/messages/file-errors.ts";
import { samplePlan } from "../state/sample-plan.ts";

const BROKEN = "tests/fixtures/plans/broken";
const ENGLISH =
  /\b(the|is|not|needed|allowed|missing|text|number|list|object|characters|too|from|least|more|problems?)\b/;
/** What a file says itself may be in any language. */
const withoutQuotes = (line: string) =>
  line.replace(/"(?:[^"\\]|\\.)*"/g, "").replace(/[A-Za-z_]\w*(?:\[\d+\]|\.\w+)+/g, "");

function refusalOf(deed: () => unknown): string {
  try {
    deed();
  } catch (error) {
    if (error instanceof PlanFileError) return error.message;
    throw error;
  }
  throw new Error("was not refused");
}

const planWith = (change: object) =>
  refusalOf(() => parsePlan(JSON.stringify({ ...samplePlan(), ...change })));

describe("in German", () => {
  it.each(readdirSync(BROKEN))("says what is wrong with %s", (name) => {
    const english = refusalOf(() => parsePlan(readFileSync(`${BROKEN}/${name}`, "utf8")));
    const german = fileErrorInGerman(english);
    expect(german).not.toBeNull();
    expect(withoutQuotes(german ?? "")).not.toMatch(ENGLISH);
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
  ])("says for %j: %s", (change, german) => {
    expect(fileErrorInGerman(planWith(change))).toBe(german);
  });

  it.each(["#plan=1.!!!", "#plan=9.abc", "#plan=1.AAAA"])("says what is wrong with the link %s", (hash) => {
    expect(fileErrorInGerman(refusalOf(() => planFromFragment(hash)))).not.toBeNull();
  });

  it.each([
    new TextEncoder().encode("no zip"),
    zipSync({ "other.txt": new Uint8Array([1]) }),
    zipSync({ "library.json": new TextEncoder().encode('{"format":"x"}') }),
    zipSync({ "library.json": new TextEncoder().encode("{ torn") }),
  ])("says what is wrong with a backup", async (bytes) => {
    const library = createLibrary({ port: memoryPort() });
    const error = await restoreBackup(library, new Uint8Array(bytes)).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(PlanFileError);
    expect(fileErrorInGerman((error as PlanFileError).message)).not.toBeNull();
  });

  it("leaves English as it is, and a line that it does not know too", () => {
    expect(fileErrorInWords("name: missing, text needed", "en")).toBe("name: missing, text needed");
    expect(fileErrorInWords("something new", "de")).toBe("something new");
  });
});
