import { readFileSync } from "node:fs";
import { apply } from "mutative";
import { describe, expect, it } from "vitest";
import { InexactCut } from "../../src/core/geometry/inexact-cut.ts";
import { parsePlan, serializePlan } from "../../src/core/plan/file.ts";
import { solid } from "../../src/state/derived.ts";
import { difference } from "../../src/state/difference.ts";
import { historyFromData, LONGEST_HISTORY } from "../../src/state/history.ts";
import {
  DEFAULT_PREFERENCES,
  loadPreferences,
  preferencesFromData,
  savePreferences,
} from "../../src/state/preferences.ts";
import { createPlanStore, type Outcome } from "../../src/state/store.ts";
import { fileFaultInWords } from "../../src/words/file-faults.ts";
import { samplePlan } from "./sample-plan.ts";

const DEPTHS: Record<string, number> = { belt: 0.5, crown: 1.25, star: 2.5 };
const storeWith = (plan = samplePlan()) => createPlanStore({ plan, depthOf: (_plan, id) => DEPTHS[id] ?? 0 });
const state = (store: ReturnType<typeof storeWith>) => store.getState();
const messageOf = (outcome: Outcome) => {
  if (outcome.ok) return "";
  return outcome.fault ? fileFaultInWords(outcome.fault, "en") : outcome.message;
};

describe("commands", () => {
  it("change one field, leave every other part the same object, and are named by what they change", () => {
    const store = storeWith();
    const before = state(store).plan;
    const change = { depth: { rule: "width", mm: 4 } } as const;
    expect(state(store).dispatch({ type: "change-tier", tierId: "crown", change }).ok).toBe(true);
    const after = state(store).plan;
    expect(after.tiers[1].depth).toEqual(change.depth);
    expect(after.tiers[0]).toBe(before.tiers[0]);
    expect(after.piece).toBe(before.piece);
    expect(before.tiers[1].depth).toEqual({ rule: "close", to: "belt" });
    expect(state(store).history.undo[0].label).toEqual({ about: "tier", tier: 2, field: "depth" });
  });

  it("are refused with the field and what is allowed, and change nothing then", () => {
    const store = storeWith();
    const before = state(store).plan;
    const outcome = state(store).dispatch({
      type: "change-tier",
      tierId: "crown",
      change: { armAngleDeg: 95 },
    });
    expect(messageOf(outcome)).toBe("tiers[1].armAngleDeg: 95 is out of range, 0 to 90 allowed");
    expect(state(store).plan).toBe(before);
    expect(state(store).history.undo).toHaveLength(0);
    // the person is told, until the next thing that is done
    const path = ["tiers", 1, "armAngleDeg"];
    expect(state(store).notes).toMatchObject([{ key: "refused", fault: { code: "out-of-range", path } }]);
    state(store).dispatch({ type: "set-name", name: "and on" });
    expect(state(store).notes).toEqual([]);
  });

  it("refuse NaN, a missing tier, a later tier and a path into a prototype", () => {
    const { dispatch } = state(storeWith());
    const angle = { armAngleDeg: Number.NaN };
    expect(messageOf(dispatch({ type: "change-tier", tierId: "belt", change: angle }))).toContain(
      "armAngleDeg",
    );
    expect(messageOf(dispatch({ type: "remove-tier", tierId: "nowhere" }))).toContain("nowhere");
    const later = { depth: { rule: "corners", of: "star" } } as const;
    expect(messageOf(dispatch({ type: "change-tier", tierId: "belt", change: later }))).toContain(
      "only an earlier",
    );
    for (const path of [["__proto__", "x"], ["piece", "__proto__"], ["constructor", "x"], []])
      expect(dispatch({ type: "set-field", path, value: 1 }).ok).toBe(false);
  });

  it("make no step when nothing changes", () => {
    const store = storeWith();
    const before = state(store).plan;
    state(store).dispatch({ type: "set-name", name: before.name });
    state(store).dispatch({ type: "set-piece", change: { glass: "borosilicate" } });
    expect(state(store).plan).toBe(before);
    expect(state(store).history.undo).toHaveLength(0);
  });

  it("freeze the plan all the way down and never the caller's own objects", () => {
    const store = storeWith();
    const tint = { rgb: [0.2, 0.5, 0.9] as [number, number, number], atMm: 10 };
    state(store).dispatch({ type: "set-piece", change: { tint } });
    expect(Object.isFrozen(state(store).plan.piece.tint?.rgb)).toBe(true);
    expect(Object.isFrozen(tint)).toBe(false);
  });

  it("remove an optional field that is given as undefined", () => {
    const store = storeWith();
    state(store).dispatch({ type: "set-tolerance", toleranceMm: 0.1 });
    expect(state(store).plan.toleranceMm).toBe(0.1);
    state(store).dispatch({ type: "set-tolerance", toleranceMm: undefined });
    expect("toleranceMm" in state(store).plan).toBe(false);
  });

  it("reach any field by its path, in lists too", () => {
    const store = storeWith();
    const stage = { id: "s1", name: "Grind", grainUm: 40 };
    state(store).dispatch({ type: "set-field", path: ["rig", "stages"], value: [] });
    state(store).dispatch({ type: "set-field", path: ["rig", "stages", 0], value: stage });
    state(store).dispatch({ type: "set-field", path: ["rig", "stages", 0, "discMm"], value: 1.5 });
    expect(state(store).plan.rig.stages).toEqual([{ ...stage, discMm: 1.5 }]);
    state(store).dispatch({ type: "set-field", path: ["rig", "stages", 0], value: undefined });
    expect(state(store).plan.rig.stages).toEqual([]);
  });

  it("take a mend as one step that is undone as one", () => {
    const store = storeWith();
    const before = state(store).plan;
    state(store).dispatch({
      type: "apply-mend",
      code: "uneven",
      commands: [
        { type: "change-tier", tierId: "belt", change: { count: 16 } },
        { type: "change-tier", tierId: "crown", change: { count: 16, armAngleDeg: 41.5 } },
      ],
    });
    expect(state(store).plan.tiers.map((tier) => tier.count)).toEqual([16, 16, 6]);
    state(store).undo();
    expect(state(store).plan).toEqual(before);
  });

  it("put a mend back entirely when one of its commands is refused", () => {
    const store = storeWith();
    const before = state(store).plan;
    const outcome = state(store).dispatch({
      type: "apply-mend",
      code: "uneven",
      commands: [
        { type: "change-tier", tierId: "belt", change: { count: 16 } },
        { type: "change-tier", tierId: "crown", change: { count: 0 } },
      ],
    });
    expect(outcome.ok).toBe(false);
    expect(state(store).plan).toBe(before);
  });
});

describe("tiers", () => {
  it("leave the depth they had to rules that named a tier now gone, and say so", () => {
    const store = storeWith();
    const outcome = state(store).dispatch({ type: "remove-tier", tierId: "crown" });
    expect(state(store).plan.tiers[1].depth).toEqual({ rule: "depth", mm: 2.5 });
    const note = {
      key: "reference-became-depth",
      tierId: "star",
      tierName: "Star",
      named: "Crown",
      namedAt: 1,
      mm: 2.5,
    };
    expect(outcome).toEqual({ ok: true, notes: [note] });
    expect(state(store).notes).toEqual([note]);
  });

  it("keep references valid when moved, and restore them on undo", () => {
    const store = storeWith();
    const before = state(store).plan;
    state(store).dispatch({ type: "move-tier", tierId: "crown", to: 0 });
    expect(state(store).plan.tiers.map((tier) => tier.id)).toEqual(["crown", "belt", "star"]);
    expect(state(store).plan.tiers[0].depth).toEqual({ rule: "depth", mm: 1.25 });
    expect(state(store).plan.tiers[2].depth).toEqual({ rule: "corners", of: "crown" });
    expect(() => parsePlan(serializePlan(state(store).plan))).not.toThrow();
    state(store).undo();
    expect(state(store).plan).toEqual(before);
  });

  it("get ids of their own when added or duplicated, without the measurements of the other", () => {
    const store = storeWith();
    const measured = { asCut: { widthMm: 4.2, facets: { "belt/3": { widthMm: 4.1 } } } };
    state(store).dispatch({ type: "change-tier", tierId: "belt", change: measured });
    const change = { name: "Belt, again", startDeg: 15 };
    state(store).dispatch({ type: "duplicate-tier", tierId: "belt", change });
    const copy = state(store).plan.tiers[1];
    expect(copy).toMatchObject({ ...change, count: 12, depth: { rule: "touch" } });
    expect(copy.asCut).toBeUndefined();
    expect(new Set(state(store).plan.tiers.map((tier) => tier.id)).size).toBe(4);
  });

  it("drop measurements of facets that a smaller count takes away, and say so", () => {
    const store = storeWith();
    const asCut = { facets: { "belt/3": { widthMm: 4 }, "belt/12": { widthMm: 5 } } };
    state(store).dispatch({ type: "change-tier", tierId: "belt", change: { asCut } });
    const outcome = state(store).dispatch({ type: "change-tier", tierId: "belt", change: { count: 8 } });
    expect(state(store).plan.tiers[0].asCut?.facets).toEqual({ "belt/3": { widthMm: 4 } });
    expect(outcome.ok && outcome.notes[0]).toMatchObject({ key: "measurements-dropped", facets: 1 });
    state(store).undo();
    expect(state(store).plan.tiers[0].asCut).toEqual(asCut);
  });

  it("stay selected as long as they exist", () => {
    const store = storeWith();
    state(store).select({ facetId: "star/6" });
    expect(state(store).selection).toEqual({ tierId: "star", facetId: "star/6" });
    state(store).dispatch({ type: "change-tier", tierId: "star", change: { count: 4 } });
    expect(state(store).selection).toEqual({ tierId: "star", facetId: null });
    state(store).dispatch({ type: "remove-tier", tierId: "star" });
    expect(state(store).selection).toEqual({ tierId: null, facetId: null });
  });
});

describe("drags", () => {
  const label = { about: "tier", tier: 1, field: "armAngleDeg" } as const;
  const drag = (store: ReturnType<typeof storeWith>, angles: number[]) => {
    state(store).beginDrag(label);
    for (const armAngleDeg of angles)
      state(store).dragTo({ type: "change-tier", tierId: "belt", change: { armAngleDeg } });
  };

  it("are one step however many moves they took", () => {
    const store = storeWith();
    const before = state(store).plan;
    drag(store, [11, 12, 13, 14.5]);
    state(store).endDrag();
    expect(state(store).plan.tiers[0].armAngleDeg).toBe(14.5);
    expect(state(store).history.undo).toHaveLength(1);
    expect(state(store).history.undo[0].patches).toEqual([
      { op: "replace", path: ["tiers", 0, "armAngleDeg"], value: 14.5 },
    ]);
    state(store).undo();
    expect(state(store).plan).toEqual(before);
    state(store).redo();
    expect(state(store).plan.tiers[0].armAngleDeg).toBe(14.5);
  });

  it("bring back the very same document when cancelled", () => {
    const store = storeWith();
    const before = state(store).plan;
    drag(store, [20, 30]);
    state(store).dragTo({ type: "change-tier", tierId: "star", change: { count: 8 } });
    state(store).cancelDrag();
    expect(state(store).plan).toBe(before);
    expect(state(store).history.undo).toHaveLength(0);
  });

  it("leave no step and the very same document when they end where they began", () => {
    const store = storeWith();
    const before = state(store).plan;
    drag(store, [20, 10]);
    state(store).endDrag();
    expect(state(store).plan).toBe(before);
    expect(state(store).history.undo).toHaveLength(0);
  });

  it("pass over a move that is not allowed", () => {
    const store = storeWith();
    drag(store, [20, 120, 30]);
    state(store).endDrag();
    expect(state(store).plan.tiers[0].armAngleDeg).toBe(30);
  });
});

describe("history", () => {
  it("goes 200 steps back and forward to equal plans", () => {
    const store = storeWith();
    const plans = [state(store).plan];
    for (let i = 1; i <= 200; i++) {
      const kind = i % 4;
      if (kind === 0) state(store).dispatch({ type: "duplicate-tier", tierId: "belt" });
      else if (kind === 1)
        state(store).dispatch({ type: "change-tier", tierId: "crown", change: { armAngleDeg: 20 + i / 10 } });
      else if (kind === 2) state(store).dispatch({ type: "move-tier", tierId: "belt", to: i % 3 });
      else
        state(store).dispatch({
          type: "remove-tier",
          tierId: state(store).plan.tiers.find((t) => t.id.startsWith("t"))?.id ?? "star",
        });
      plans.push(state(store).plan);
    }
    const steps = state(store).history.undo.length;
    while (state(store).undo());
    expect(state(store).plan).toEqual(plans[0]);
    let redone = 0;
    while (state(store).redo()) redone++;
    expect(redone).toBe(steps);
    expect(state(store).plan).toEqual(plans[200]);
  });

  it("survives being written as text and read back", () => {
    const store = storeWith();
    state(store).dispatch({ type: "set-name", name: "Lighthouse" });
    state(store).dispatch({ type: "remove-tier", tierId: "crown" });
    state(store).undo();
    const kept = JSON.stringify(state(store).history);
    const history = historyFromData(JSON.parse(kept));
    const again = storeWith(parsePlan(serializePlan(state(store).plan)).plan);
    state(again).open({ plan: state(again).plan, history: history ?? undefined });
    expect(state(again).redo()).toBe(true);
    expect(state(again).plan.tiers).toHaveLength(2);
    while (state(again).undo());
    expect(state(again).plan).toEqual(samplePlan());
  });

  it("is set aside with a note when a kept step doesn't fit the plan", () => {
    const store = storeWith();
    const step = {
      label: { about: "name" },
      patches: [],
      inverse: [{ op: "replace", path: ["tiers", 7, "count"], value: 3 }],
    } as const;
    state(store).open({ plan: samplePlan(), history: { undo: [step as never], redo: [] } });
    expect(state(store).undo()).toBe(false);
    expect(state(store).plan).toEqual(samplePlan());
    expect(state(store).notes).toEqual([{ key: "history-unreadable" }]);
  });

  it("forgets the oldest steps beyond its length", () => {
    const store = storeWith();
    for (let i = 0; i <= LONGEST_HISTORY; i++) state(store).dispatch({ type: "set-name", name: `n${i}` });
    expect(state(store).history.undo).toHaveLength(LONGEST_HISTORY);
    while (state(store).undo());
    expect(state(store).plan.name).toBe("n0");
  });
});

describe("difference", () => {
  it("turns one plan into the other and back", () => {
    const a = samplePlan();
    const store = storeWith(a);
    state(store).dispatch({
      type: "change-tier",
      tierId: "belt",
      change: { finish: "ground", depth: { rule: "gap", mm: 1 } },
    });
    state(store).dispatch({ type: "duplicate-tier", tierId: "star" });
    const b = state(store).plan;
    expect(apply(a, difference(a, b))).toEqual(b);
    expect(apply(b, difference(b, a))).toEqual(a);
  });
});

describe("preferences", () => {
  it("take every field that is readable and the default for every other", () => {
    const mixed = { units: "inch", theme: "purple", snapping: "yes", language: "de", extra: 1 };
    expect(preferencesFromData(mixed)).toEqual({ ...DEFAULT_PREFERENCES, units: "inch", language: "de" });
    for (const odd of [null, 7, "x", []]) expect(preferencesFromData(odd)).toEqual(DEFAULT_PREFERENCES);
  });

  it("are the defaults when the browser refuses its shelf, and saving says so", () => {
    const refusing = {
      getItem: () => {
        throw new DOMException("no", "SecurityError");
      },
      setItem: () => {
        throw new DOMException("no", "QuotaExceededError");
      },
    };
    expect(loadPreferences(refusing)).toEqual(DEFAULT_PREFERENCES);
    expect(savePreferences(refusing, DEFAULT_PREFERENCES)).toBe(false);
    expect(savePreferences(null, DEFAULT_PREFERENCES)).toBe(false);
  });
});

describe("a plan that can't be reckoned", () => {
  const text = readFileSync("tests/fixtures/plans/not-reckoned.json", "utf8");
  const { plan } = parsePlan(text);
  const careful = () => createPlanStore({ plan: samplePlan(), depthOf: () => 0, reckon: solid });

  it("is one that doubles can't tell how its planes meet", () => {
    expect(() => solid(plan)).toThrow(InexactCut);
  });

  it("stays off the bench, and a note says why", () => {
    const store = careful();
    const before = store.getState().plan;
    expect(store.getState().open({ plan })).toMatchObject({ code: "not-reckoned" });
    expect(store.getState().plan).toBe(before);
    expect(store.getState().notes).toMatchObject([{ key: "refused", fault: { code: "not-reckoned" } }]);
  });

  it("can't come from an edit, and what was there stays", () => {
    const store = careful();
    const outcome = store.getState().dispatch({ type: "replace-plan", plan });
    expect(outcome.ok).toBe(false);
    expect(messageOf(outcome)).toContain("can't be reckoned exactly");
    expect(store.getState().plan.tiers).toHaveLength(samplePlan().tiers.length);
    expect(store.getState().history.undo).toHaveLength(0);
  });

  it("found out after an edit leaves the bench again: back by that step, or, without one, to the plan before", () => {
    const store = storeWith();
    const first = state(store).plan;
    state(store).dispatch({ type: "set-name", name: "good" });
    const good = state(store).plan;
    state(store).dispatch({ type: "set-name", name: "bad" });
    state(store).takeBack(first);
    expect(state(store).plan).toEqual(good);
    expect(state(store).notes).toMatchObject([{ key: "refused", fault: { code: "not-reckoned" } }]);

    state(store).beginDrag({ about: "name" });
    state(store).dragTo({ type: "set-name", name: "worse" });
    state(store).takeBack(first);
    expect(state(store).plan).toEqual(good);
    expect(state(store).drag).toBeNull();

    const fresh = storeWith({ ...samplePlan(), name: "no step is known" });
    state(fresh).takeBack(first);
    expect(state(fresh).plan).toEqual(first);
  });

  it("is let on it for a moment where the reckoning is left for later, and never when a plan is laid", () => {
    const asked: boolean[] = [];
    const store = createPlanStore({
      plan: samplePlan(),
      depthOf: () => 0,
      reckon: (_plan, isEdit) => asked.push(isEdit),
    });
    store.getState().dispatch({ type: "set-name", name: "edited" });
    store.getState().open({ plan: samplePlan() });
    expect(asked).toEqual([true, false]);
  });
});
