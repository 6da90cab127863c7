import { describe, expect, it } from "vitest";
import { FIRST_EXAMPLE } from "../../../src/ui/examples.ts";
import { loadDone, saveDone, workName } from "../../../src/ui/lap/progress.ts";
import { loadScale, saveScale } from "../../../src/ui/lap/screen-scale.ts";

const shelf = (start: Record<string, string> = {}) => {
  const kept = new Map(Object.entries(start));
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
};
const full = {
  getItem: () => null,
  setItem: () => {
    throw new DOMException("full", "QuotaExceededError");
  },
};

describe("progress at the lap", () => {
  it("comes back as it was kept, for each work its own", () => {
    const where = shelf();
    expect(saveDone(where, "one", ["a", "b"])).toBe(true);
    expect(saveDone(where, "two", ["c"])).toBe(true);
    expect(loadDone(where, "one")).toEqual(["a", "b"]);
    expect(loadDone(where, "two")).toEqual(["c"]);
    expect(loadDone(where, "three")).toEqual([]);
  });

  it("says when the browser is full or refuses", () => {
    expect(saveDone(full, "one", ["a"])).toBe(false);
    expect(saveDone(null, "one", ["a"])).toBe(false);
  });

  it("begins anew when what is kept can't be read, and can be kept again", () => {
    for (const broken of ["{", "7", '[{"work":1}]', '[{"work":"one","done":[3]}]', "null"]) {
      const where = shelf({ "glintwright-lap": broken });
      expect(loadDone(where, "one")).toEqual([]);
      expect(saveDone(where, "one", ["a"])).toBe(true);
      expect(loadDone(where, "one")).toEqual(["a"]);
    }
  });

  it("is the same work when depths are solved again, another when facets or stages change", () => {
    const plan = FIRST_EXAMPLE;
    const name = workName(plan, "finish-each");
    const deeper = plan.tiers.map((tier) => ({ ...tier, depth: { rule: "depth", mm: 1 } as const }));
    expect(workName({ ...plan, tiers: deeper }, "finish-each")).toBe(name);
    expect(workName({ ...plan, tiers: plan.tiers.slice(1) }, "finish-each")).not.toBe(name);
    expect(workName(plan, "rough-all")).not.toBe(name);
  });
});

describe("the size of the screen", () => {
  it("is kept, and forgotten when it can't be that of a screen", () => {
    const where = shelf();
    expect(loadScale(where)).toBeNull();
    expect(saveScale(where, 5.25)).toBe(true);
    expect(loadScale(where)).toBe(5.25);
    for (const odd of ["0", "-3", "1000", "abc", ""])
      expect(loadScale(shelf({ "glintwright-screen-scale": odd }))).toBeNull();
  });
});
