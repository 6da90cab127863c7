import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NO_HISTORY } from "../../src/state/history.ts";
import { clearOut, KEPT_AFTER_REMOVAL_DAYS } from "../../src/state/storage/clear-out.ts";
import { createLibrary } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import { samplePlan } from "./sample-plan.ts";

const DAY_MS = 86_400_000;
const TODAY = Date.UTC(2026, 10, 25);

/** Notes of a browser, as a page sees them. */
function notes() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  };
}

/** A library with one plan thrown out on the device's day `day`, and visits on any day. */
async function thrownOut(day = 0) {
  const library = createLibrary({ port: memoryPort(), now: () => TODAY + day * DAY_MS });
  const keeping = await library.keep(null, samplePlan(), NO_HISTORY);
  if (!keeping.kept) throw new Error("not kept");
  const id = keeping.planId;
  await library.addVersion(id, "first", samplePlan());
  await library.remove(id);
  const shelf = notes();
  const visit = (on: number) => clearOut(library, shelf, TODAY + on * DAY_MS);
  const isThere = async () => (await library.list("deleted")).some((plan) => plan.id === id);
  return { library, id, shelf, visit, isThere };
}

describe("clearing out", () => {
  it("erases a plan with all that belongs to it once it was seen thrown out for thirty days, and not a day before", async () => {
    const { library, id, visit, isThere } = await thrownOut();
    for (const day of [0, 7, 14, 21, 29]) expect(await visit(day)).toBe(0);
    expect(await isThere()).toBe(true);
    expect(await visit(KEPT_AFTER_REMOVAL_DAYS)).toBe(1);
    expect(await isThere()).toBe(false);
    for (const table of ["plans", "histories", "versions"] as const)
      expect((await library.port.all(table)).filter((row) => row.id.startsWith(id))).toEqual([]);
  });

  it("leaves alone what is on the shelf or put away", async () => {
    const { library, id, visit } = await thrownOut();
    await library.restore(id);
    await library.archive(id);
    for (let day = 0; day < 100; day += 5) await visit(day);
    expect((await library.list("archived")).map((plan) => plan.id)).toEqual([id]);
  });

  it.each([
    ["ahead by seventy years", [0, 1, 25_000, 25_000, 2]],
    ["ahead for good", [0, 25_000, 25_001, 25_002, 25_003]],
    ["back to 1970 and forth", [0, -20_000, 1, -20_000, 2]],
  ])("does not believe a clock that jumps %s", async (_what, days) => {
    const { visit, isThere } = await thrownOut();
    for (const day of days) expect(await visit(day)).toBe(0);
    expect(await isThere()).toBe(true);
  });

  it("does not count the years of a plan that was thrown out under a clock that stood wrong", async () => {
    const { visit, isThere } = await thrownOut(-20_000);
    for (const day of [-20_000, 0, 1, 2]) await visit(day);
    expect(await isThere()).toBe(true);
  });

  it("never erases before the third visit after the first look, whatever the clock says", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: -1e5, max: 1e5 }), { minLength: 3, maxLength: 3 }),
        async (days) => {
          const { visit, isThere } = await thrownOut();
          for (const day of days) await visit(day);
          expect(await isThere()).toBe(true);
        },
      ),
      { numRuns: 100, seed: 4 },
    );
  });

  it("waits anew for a plan that was taken back and thrown out again", async () => {
    const { library, id, visit, isThere } = await thrownOut();
    for (const day of [0, 10, 20]) await visit(day);
    await library.restore(id);
    await visit(25);
    await library.remove(id);
    for (const day of [29, 35, 45]) expect(await visit(day)).toBe(0);
    expect(await isThere()).toBe(true);
  });

  it("erases nothing where the browser keeps no notes, or keeps torn ones", async () => {
    const { library, shelf, isThere } = await thrownOut();
    const refusing = {
      getItem: () => null,
      setItem: () => {
        throw new DOMException("refused", "SecurityError");
      },
    };
    for (let day = 0; day < 100; day += 5) {
      expect(await clearOut(library, refusing, TODAY + day * DAY_MS)).toBe(0);
      expect(await clearOut(library, null, TODAY + day * DAY_MS)).toBe(0);
    }
    shelf.setItem("glintwright-thrown-out", '{"a":{"goneMs":"long"},"torn');
    expect(await clearOut(library, shelf, TODAY)).toBe(0);
    expect(await isThere()).toBe(true);
  });
});
