/** A visit where storage fails, is slow, or is only half there. */
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { startSession } from "../../src/state/session.ts";
import { StorageFault } from "../../src/state/storage/faults.ts";
import type { Faults } from "./faulty-port.ts";
import { samplePlan } from "./sample-plan.ts";
import { browser, flush, freshStore, rename, shelfNames, status } from "./visits.ts";

// fetched by a visit whose storage is full: a clock that stands still does not wait for it
beforeAll(() => import("../../src/state/storage/clear-out.ts"));

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("storage that fails", () => {
  it.each(["missing", "denied", "blocked", "damaged"] as const)(
    "at the start (%s) leaves a full library in memory and names the cause",
    async (kind) => {
      const tab = await browser().visit(async () => {
        throw new StorageFault(kind, "injected");
      });
      expect(tab.health.getState().fault).toBe(kind);
      rename(tab, "In memory");
      expect(await tab.autosave.flush()).toEqual({ state: "in-memory", fault: kind });
      expect(await shelfNames(tab)).toEqual(["In memory"]);
    },
  );

  it.each(["full", "lost", "damaged"] as const)(
    "while writing (%s) names the cause, keeps the work on the bench and keeps it once it can",
    async (kind) => {
      const faults: Faults = { onWrite: kind };
      const tab = await browser(faults).visit();
      rename(tab, "Precious");
      await vi.advanceTimersByTimeAsync(1000);
      expect(status(tab)).toEqual({ state: "failed", fault: kind, message: `injected: ${kind}` });
      expect(tab.store.getState().plan.name).toBe("Precious");
      expect(await tab.layPlan({ plan: samplePlan(), unknown: [] })).toMatchObject({
        ok: false,
        why: "bench-unkept",
      });
      faults.onWrite = undefined;
      rename(tab, "Precious, again");
      await vi.advanceTimersByTimeAsync(1000);
      expect(status(tab).state).toBe("kept");
      expect(await shelfNames(tab)).toEqual(["Precious, again"]);
    },
  );

  it("and has room again later keeps the work by itself, after longer and longer waits", async () => {
    const faults: Faults = { onWrite: "full" };
    const there = browser(faults);
    const tab = await there.visit();
    rename(tab, "Patient");
    await vi.advanceTimersByTimeAsync(1000);
    const tried: number[] = [];
    tab.autosave.status.subscribe(({ state }) => tried.push(state === "failed" ? Date.now() : Number.NaN));
    await vi.advanceTimersByTimeAsync(300_000);
    const waits = tried.slice(1).map((at, i) => at - tried[i]);
    // said to be kept, or on its way, at no time between
    expect(tried.every(Number.isFinite)).toBe(true);
    expect(waits.slice(0, 3)).toEqual([4000, 8000, 16_000]);
    expect(Math.max(...waits)).toBe(60_000);
    faults.onWrite = undefined;
    await vi.advanceTimersByTimeAsync(60_000);
    expect(status(tab).state).toBe("kept");
    expect(await shelfNames(tab)).toEqual(["Patient"]);
  });

  it("and has room after something was thrown out keeps the work right then", async () => {
    const faults: Faults = {};
    const tab = await browser(faults).visit();
    const old = await tab.library.add("something old");
    faults.onWrite = "full";
    rename(tab, "Next");
    await vi.advanceTimersByTimeAsync(40_000);
    expect(status(tab).state).toBe("failed");
    faults.onWrite = undefined;
    await tab.library.erase(old);
    await vi.advanceTimersByTimeAsync(1);
    expect(status(tab).state).toBe("kept");
  });

  it("no longer tries when the visit is over", async () => {
    const faults: Faults = { onWrite: "full" };
    const tab = await browser(faults).visit();
    rename(tab, "Over");
    await vi.advanceTimersByTimeAsync(1000);
    tab.stop();
    faults.onWrite = undefined;
    await vi.advanceTimersByTimeAsync(300_000);
    expect(await shelfNames(tab)).toEqual([]);
  });

  it("by silently losing a part is noticed by reading back", async () => {
    const tab = await browser({ silentDamage: true }).visit();
    rename(tab, "Precious");
    expect(await tab.autosave.flush()).toMatchObject({ state: "failed", fault: "damaged" });
  });

  it("while the last plan is read begins with the example and names the cause", async () => {
    const faults: Faults = {};
    const there = browser(faults);
    const first = await there.visit();
    rename(first, "Kept");
    await first.autosave.flush();
    first.stop();
    faults.onRead = "damaged";
    const again = await there.visit();
    expect(again.health.getState().fault).toBe("damaged");
    expect(again.store.getState().plan).toEqual(samplePlan());
  });
});

describe("a plan that takes long to reckon", () => {
  it("is reckoned before it is laid on the bench, and the one that lies there stays meanwhile", async () => {
    const { around } = browser();
    const seen: [string, string][] = [];
    const store = freshStore();
    const prepare = async ({ name }: Plan) => void seen.push([name, store.getState().plan.name]);
    const tab = await startSession(store, { ...around(), prepare });
    const laid = await tab.layPlan({ plan: { ...samplePlan(), name: "many" }, unknown: [] }, { keep: true });
    expect(laid).toEqual({ ok: true });
    const id = store.getState().planId ?? "";
    await tab.layPlan({ plan: { ...samplePlan(), name: "another" }, unknown: [] });
    await tab.openPlan(id);
    expect(seen).toEqual([
      ["many", samplePlan().name],
      ["another", "many"],
      ["many", "another"],
    ]);
  });
});

describe("where the browser has only one of its two storages", () => {
  it("and no small shelf, the plan that was kept last is the one that lies on the bench again", async () => {
    const { around } = browser();
    const without = { ...around(), shelf: null };
    const tab = await startSession(freshStore(), without);
    for (const name of ["first", "second"]) {
      await tab.layPlan({ plan: { ...samplePlan(), name }, unknown: [] }, { keep: true });
    }
    tab.stop();
    const next = await startSession(freshStore(), without);
    expect(next.store.getState().plan.name).toBe("second");
  });

  it("and no library, leaving asks as long as any plan of the visit would be gone, also one that was put aside", async () => {
    const { around } = browser();
    const nowhere = { ...around(), openPort: () => Promise.reject(new StorageFault("missing", "none")) };
    const tab = await startSession(freshStore(), nowhere);
    expect(tab.wouldLose()).toBe(false);
    await tab.layPlan({ plan: { ...samplePlan(), name: "mine" }, unknown: [] }, { keep: true });
    await tab.layPlan({ plan: samplePlan(), unknown: [] });
    expect(status(tab)).toEqual({ state: "untouched" });
    expect(tab.wouldLose()).toBe(true);
    const [{ id }] = await tab.library.list();
    await tab.library.remove(id);
    await vi.advanceTimersByTimeAsync(1);
    expect(tab.wouldLose()).toBe(false);
  });
});

describe("a window that a busy machine takes long to end", () => {
  /** It has only written down what was done last, and still stands when the next one begins. */
  async function reloaded() {
    const { visit, faults } = browser();
    const old = await visit();
    // it has no time left to keep it
    faults.onWrite = "full";
    rename(old, "written down");
    const opening = visit();
    await vi.advanceTimersByTimeAsync(1600);
    return { old, next: await opening, faults };
  }

  it("leaves what it wrote down to the next as soon as it is gone, on a bench where nobody has begun to work", async () => {
    const { old, next, faults } = await reloaded();
    expect(next.store.getState().plan.name).toBe(samplePlan().name);
    faults.onWrite = undefined;
    old.stop();
    await vi.advanceTimersByTimeAsync(100);
    expect(next.store.getState().plan.name).toBe("written down");
    expect(await shelfNames(next)).toEqual(["written down"]);
  });

  it("puts it among the plans of a bench where somebody works", async () => {
    const { old, next, faults } = await reloaded();
    rename(next, "at work");
    faults.onWrite = undefined;
    old.stop();
    await vi.advanceTimersByTimeAsync(100);
    expect(next.store.getState().plan.name).toBe("at work");
    await flush(next);
    expect((await shelfNames(next)).sort()).toEqual(["at work", "written down"]);
  });
});
