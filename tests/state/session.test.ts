/** A visit: what it begins with, what it keeps, and what the next one finds. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { freshId } from "../../src/state/fresh-id.ts";
import { browserSurroundings, type Session, startSession } from "../../src/state/session.ts";
import { faultOf, StorageFault } from "../../src/state/storage/faults.ts";
import { samplePlan } from "./sample-plan.ts";
import { browser, flush, freshStore, rename, shelfNames, status } from "./visits.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("a visit", () => {
  it("keeps nothing of an example that nobody changed", async () => {
    const tab = await browser().visit();
    await vi.advanceTimersByTimeAsync(5000);
    expect(status(tab)).toEqual({ state: "untouched" });
    expect(await shelfNames(tab)).toEqual([]);
  });

  it("keeps an example that nobody changed once the work on it begins", async () => {
    const tab = await browser().visit();
    expect(await tab.autosave.keepAll()).toMatchObject({ state: "kept" });
    expect(await shelfNames(tab)).toEqual([samplePlan().name]);
    const { planId } = tab.store.getState();
    expect(planId).not.toBeNull();
    await tab.autosave.keepAll();
    expect(await shelfNames(tab)).toHaveLength(1);
  });

  it("keeps the plan a moment after a change and says so", async () => {
    const tab = await browser().visit();
    rename(tab, "Mine");
    expect(status(tab).state).toBe("waiting");
    await vi.advanceTimersByTimeAsync(1000);
    expect(status(tab)).toEqual({ state: "kept", at: expect.any(Number) });
    expect(await shelfNames(tab)).toEqual(["Mine"]);
    expect(tab.health.getState()).toEqual({ fault: null, persistent: true });
  });

  it("doesn't keep the middle of a drag", async () => {
    const tab = await browser().visit();
    const { beginDrag, dragTo, endDrag } = tab.store.getState();
    beginDrag({ about: "tier", tier: 1, field: "armAngleDeg" });
    dragTo({ type: "change-tier", tierId: "belt", change: { armAngleDeg: 33 } });
    await vi.advanceTimersByTimeAsync(5000);
    expect(await shelfNames(tab)).toEqual([]);
    endDrag();
    await vi.advanceTimersByTimeAsync(5000);
    expect(status(tab).state).toBe("kept");
  });

  it("begins again where the last one ended, undo steps included", async () => {
    const there = browser();
    const first = await there.visit();
    rename(first, "One");
    rename(first, "Two");
    await first.autosave.flush();
    first.stop();
    const again = await there.visit();
    expect(again.store.getState().plan.name).toBe("Two");
    again.store.getState().undo();
    expect(again.store.getState().plan.name).toBe("One");
    again.store.getState().undo();
    expect(again.store.getState().plan).toEqual(samplePlan());
  });

  it("leaves alone what the person began before the storage was open, and keeps it", async () => {
    const there = browser();
    const first = await there.visit();
    rename(first, "Last time");
    await first.autosave.flush();
    first.stop();
    const kept = first.library.port;
    const store = freshStore();
    const again = await there.visit(async () => {
      store.getState().dispatch({ type: "set-name", name: "Quick hand" });
      return kept;
    }, store);
    expect(await again.autosave.flush()).toMatchObject({ state: "kept" });
    expect(store.getState().plan.name).toBe("Quick hand");
    expect((await shelfNames(again)).sort()).toEqual(["Last time", "Quick hand"]);
  });

  it("changes plans on the bench without losing the one before", async () => {
    const tab = await browser().visit();
    rename(tab, "First");
    await tab.layPlan({ plan: { ...samplePlan(), name: "Second" }, unknown: [] }, { keep: true });
    expect((await shelfNames(tab)).sort()).toEqual(["First", "Second"]);
    const first = (await tab.library.list("out", "First"))[0].id;
    rename(tab, "Second, changed");
    expect(await tab.openPlan(first)).toEqual({ ok: true });
    expect(tab.store.getState().plan.name).toBe("First");
    expect((await shelfNames(tab)).sort()).toEqual(["First", "Second, changed"]);
  });

  it("says why a plan can't be opened and leaves the bench as it is", async () => {
    const tab = await browser().visit();
    const id = await tab.library.add("garbage");
    expect(await tab.openPlan(id)).toMatchObject({ ok: false, why: "unreadable", text: "garbage" });
    expect(tab.store.getState().plan).toEqual(samplePlan());
  });
});

/** The page is gone from one moment to the next: nothing that it began comes to its end. */
const tornAway = ({ stop }: Session) => stop();

describe("a page that is gone before the library could keep the work", () => {
  it("finds the last edit again at the next visit, with its steps, and writes it down no longer", async () => {
    const there = browser();
    const first = await there.visit();
    rename(first, "One");
    await flush(first);
    rename(first, "Two");
    tornAway(first);
    const again = await there.visit();
    expect(again.store.getState().plan.name).toBe("Two");
    expect(await shelfNames(again)).toEqual(["Two"]);
    again.store.getState().undo();
    expect(again.store.getState().plan.name).toBe("One");
    await flush(again);
    expect([...there.shelf.keys()].filter((key) => key.includes("journal"))).toEqual([]);
  });

  it("finds a plan again that the library never had", async () => {
    const there = browser();
    const first = await there.visit();
    rename(first, "Quick");
    tornAway(first);
    const again = await there.visit();
    expect(again.store.getState().plan.name).toBe("Quick");
    expect(again.store.getState().planId).not.toBeNull();
  });

  it("finds what was done before the storage answered at all", async () => {
    const there = browser();
    const store = freshStore();
    void there.visit(() => new Promise(() => undefined), store);
    store.getState().dispatch({ type: "set-name", name: "Too early" });
    // the page that waits is gone, and with it the lock that says that it is there
    for (const key of [...there.shelf.keys()].filter((one) => one.includes("journal"))) {
      const line = there.shelf.get(key) ?? "";
      there.shelf.delete(key);
      there.shelf.set("glintwright-journal-gone", line);
    }
    expect((await there.visit()).store.getState().plan.name).toBe("Too early");
  });

  it("leaves to a window that is still there what it has written down", async () => {
    const there = browser();
    const one = await there.visit();
    rename(one, "Mine");
    const waiting = there.visit();
    await vi.advanceTimersByTimeAsync(3000);
    expect(await shelfNames(await waiting)).toEqual(["Mine"]);
  });

  it("puts it beside what another window has kept since", async () => {
    const there = browser();
    const one = await there.visit();
    rename(one, "Shared");
    await flush(one);
    rename(one, "by one");
    tornAway(one);
    const lines = [...there.shelf].filter(([key]) => key.includes("journal"));
    for (const [key] of lines) there.shelf.delete(key);
    const two = await there.visit();
    rename(two, "by two");
    await flush(two);
    two.stop();
    for (const [key, line] of lines) there.shelf.set(key, line);
    expect((await shelfNames(await there.visit())).sort()).toEqual(["by one", "by two"]);
  });

  it("keeps the text of a line that can't be read", async () => {
    const there = browser();
    there.shelf.set("glintwright-journal-x", "{ torn");
    const tab = await there.visit();
    const [row] = await tab.library.list();
    expect(row.about).toBeNull();
    expect(await tab.library.open(row.id)).toMatchObject({ ok: false, text: "{ torn" });
  });

  it("would lose something only while nothing has it", async () => {
    const there = browser();
    const tab = await there.visit();
    expect(tab.wouldLose()).toBe(false);
    rename(tab, "Written down");
    expect(tab.wouldLose()).toBe(false);
    await flush(tab);
    there.faults.onWrite = "full";
    there.shelf.set = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    rename(tab, "Nowhere");
    await flush(tab);
    expect(tab.wouldLose()).toBe(true);
    const inMemory = await browser().visit(async () => {
      throw new StorageFault("denied", "no");
    });
    rename(inMemory, "Memory");
    await flush(inMemory);
    expect(inMemory.wouldLose()).toBe(true);
  });

  it("would lose what is in memory only, also while it waits for another window", async () => {
    const there = browser();
    const tab = await startSession(freshStore(), {
      ...there.around(async () => {
        throw new StorageFault("denied", "no");
      }),
      locks: { request: (() => new Promise(() => undefined)) as LockManager["request"] },
    });
    expect(tab.wouldLose()).toBe(false);
    rename(tab, "Memory");
    void tab.autosave.flush();
    await vi.advanceTimersByTimeAsync(10);
    expect(status(tab).state).toBe("keeping");
    expect(tab.autosave.isSafe()).toBe(true);
    expect(tab.wouldLose()).toBe(true);
  });
});

describe("a browser with surprises", () => {
  it("that refuses channel and locks still gives surroundings", () => {
    vi.stubGlobal("BroadcastChannel", () => {
      throw new DOMException("no", "SecurityError");
    });
    vi.stubGlobal("navigator", {
      get locks() {
        throw new DOMException("no", "SecurityError");
      },
    });
    try {
      expect(browserSurroundings()).toMatchObject({ locks: null, otherTabs: null });
    } finally {
      vi.unstubAllGlobals();
    }
  });

  it("that has no randomUUID names plans all the same, each differently", () => {
    vi.stubGlobal("crypto", { getRandomValues: crypto.getRandomValues.bind(crypto) });
    try {
      expect(freshId()).toMatch(/^[0-9a-f]{32}$/);
      expect(freshId()).not.toBe(freshId());
    } finally {
      vi.unstubAllGlobals();
    }
  });

  it("that has a newer storage says so", () => {
    expect(faultOf(new DOMException("less than the existing version", "VersionError")).kind).toBe("newer");
  });
});

describe("two tabs on one plan", () => {
  async function twoTabs() {
    const there = browser();
    const one = await there.visit();
    rename(one, "Shared");
    await flush(one);
    const two = await there.visit();
    expect(two.store.getState().planId).toBe(one.store.getState().planId);
    return { one, two };
  }

  it("never overwrite each other: the second one's work goes on as a copy", async () => {
    const { one, two } = await twoTabs();
    const shared = one.store.getState().planId;
    rename(two, "by two");
    expect(await flush(two)).toMatchObject({ state: "kept-as-copy", of: shared });
    rename(one, "by one");
    expect(await flush(one)).toMatchObject({ state: "kept" });
    expect((await shelfNames(one)).sort()).toEqual(["by one", "by two"]);
    expect(two.store.getState().planId).not.toBe(shared);
    rename(two, "by two again");
    expect(await flush(two)).toMatchObject({ state: "kept" });
  });

  it("let the plan go when one of them opens another", async () => {
    const { one, two } = await twoTabs();
    const shared = one.store.getState().planId ?? "";
    await one.layPlan({ plan: samplePlan(), unknown: [] });
    await two.openPlan(shared);
    rename(two, "handed over");
    expect(await flush(two)).toMatchObject({ state: "kept" });
    expect(await shelfNames(two)).toEqual(["handed over"]);
  });
});
