/**
 * A visit: library and autosave joined to the store. Opens the browser's storage, falls back to memory with a named fault,
 * finds what lay on the bench last, and changes plans on the bench without losing any. The store works before and without.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Plan } from "../core/plan/document.ts";
import { type PlanFile, serializePlan } from "../core/plan/file.ts";
import type { FileFault } from "../core/plan/file-fault.ts";
import { freshId } from "./fresh-id.ts";
import { browserShelf, type TextShelf } from "./preferences.ts";
import { type Autosave, createAutosave } from "./storage/autosave.ts";
import { type FaultKind, faultOf } from "./storage/faults.ts";
import { openIdbPort } from "./storage/idb-port.ts";
import { createJournal, type Journal, type JournalShelf, type Left } from "./storage/journal.ts";
import { createLibrary, type Library, type TabChannel } from "./storage/library.ts";
import { memoryPort } from "./storage/memory-port.ts";
import { createPlanLock, isOnlyOne, type Locks, type PlanLock } from "./storage/plan-lock.ts";
import type { StoragePort } from "./storage/port.ts";
import type { PlanStore } from "./store.ts";

export interface StorageHealth {
  /** Why nothing is kept beyond this page, or why the last reading failed; null when all is well. */
  readonly fault: FaultKind | null;
  /** Whether the browser promised not to clear the storage by itself; null while unknown. */
  readonly persistent: boolean | null;
}

/** What a visit takes from its surroundings; tests give their own. */
export interface Surroundings {
  readonly openPort: () => Promise<StoragePort>;
  readonly locks: Locks | null;
  readonly otherTabs: TabChannel | null;
  /** With the part of it that only the journal needs; without that part nothing is written ahead. */
  readonly shelf: (TextShelf & Partial<JournalShelf>) | null;
  readonly persist: () => Promise<boolean>;
  readonly now: () => number;
  /** Reckons a plan ahead of its being laid on the bench, where that takes long. Never rejects. */
  readonly prepare?: (plan: Plan) => Promise<void>;
}

/** What lies on the bench is kept, or could not be: say `evenUnkept` to go on all the same. */
type BenchCleared =
  | { readonly ok: true }
  | { readonly ok: false; readonly why: "bench-unkept"; readonly fault: FaultKind };
type BenchChange =
  | BenchCleared
  /** The plan can't be read; `text` is what is kept of it. */
  | {
      readonly ok: false;
      readonly why: "unreadable";
      readonly fault: FileFault;
      readonly text: string | null;
    };

export interface Session {
  readonly store: PlanStore;
  readonly library: Library;
  readonly autosave: Autosave;
  readonly health: StoreApi<StorageHealth>;
  /** Puts a plan of the library on the bench. */
  readonly openPlan: (id: string, evenUnkept?: boolean) => Promise<BenchChange>;
  /** Puts a plan from a file, a link or an example on the bench; it joins the library with the first change, or at once with `keep`. */
  readonly layPlan: (
    file: PlanFile,
    options?: { readonly keep?: boolean; readonly evenUnkept?: boolean },
  ) => Promise<BenchCleared>;
  /**
   * Keeps pictures that a plan is about to hold: it can then be written down the moment it does. Never rejects: where they can't be
   * kept the plan can't either, and that is told.
   */
  readonly keepAhead: (data: unknown) => Promise<void>;
  /** True while something would be lost if the page were gone now. */
  readonly wouldLose: () => boolean;
  readonly stop: () => void;
}

const BLOCKED_AFTER_MS = 4000;
const LAST_PLAN_KEY = "glintwright-last-plan";

/** What a browser has to offer; null where it hasn't got it or refuses: keeping plans works without. */
function offered<T>(take: () => T | undefined): T | null {
  try {
    return take() ?? null;
  } catch {
    return null;
  }
}

export const browserSurroundings = (): Surroundings => ({
  openPort: () => openIdbPort(BLOCKED_AFTER_MS),
  locks: offered(() => navigator.locks),
  otherTabs: offered(() => new BroadcastChannel("glintwright-library")),
  shelf: browserShelf(),
  persist: async () => (await navigator.storage?.persist?.()) ?? false,
  now: () => Date.now(),
});

/** The id of the plan that lay on the bench last. */
const lastPlanId = (shelf: TextShelf | null): string | null => {
  try {
    return shelf?.getItem(LAST_PLAN_KEY) ?? null;
  } catch {
    return null; // refused: the visit begins with the example
  }
};

interface Opened {
  readonly port: StoragePort;
  readonly fault: FaultKind | null;
}

async function openOrRemember({ openPort }: Surroundings): Promise<Opened> {
  try {
    return { port: await openPort(), fault: null };
  } catch (error) {
    return { port: memoryPort(), fault: faultOf(error).kind };
  }
}

const isJournalShelf = (shelf: Surroundings["shelf"]): shelf is JournalShelf =>
  shelf !== null && "removeItem" in shelf && "key" in shelf;

interface PutBack {
  /** The id of the last plan that was put back; null when there was nothing. */
  readonly newest: string | null;
  /** Windows that are still there, as far as can be told: they keep their own. */
  readonly stillThere: readonly string[];
}

/** @throws StorageFault; what was not put back yet stays written down */
async function putBackLine(journal: Journal, library: Library, { tab, entry, raw }: Left): Promise<string> {
  const id = entry ? await library.putBack(entry) : await library.add(raw);
  journal.dropLeft(tab);
  return id;
}

/**
 * Puts into the library what windows that are gone wrote down and couldn't keep any more.
 * @throws StorageFault; what was not put back yet stays written down
 */
async function putBackLeft(journal: Journal, library: Library, locks: Locks | null): Promise<PutBack> {
  let newest: string | null = null;
  const stillThere: string[] = [];
  for (const left of journal.left()) {
    const theirs = createPlanLock(locks);
    if (await theirs.hold(lockOfTab(left.tab))) newest = await putBackLine(journal, library, left);
    else stillThere.push(left.tab);
    theirs.release();
  }
  return { newest, stillThere };
}

/** The name of the lock that a window holds as long as it is there. */
const TAB_LOCK = "tab-";
const lockOfTab = (tab: string): string => TAB_LOCK + tab;

/**
 * Begins a visit on a store that shows something already (an example). The plan that lay on the bench last takes its place,
 * unless there is none, it can't be read (`health` says so), or the person has begun to work meanwhile.
 */
export async function startSession(
  store: PlanStore,
  around: Surroundings = browserSurroundings(),
): Promise<Session> {
  const health = createStore<StorageHealth>()(() => ({ fault: null, persistent: null }));
  const shownFirst = store.getState();
  const tab = freshId();
  const presence = createPlanLock(around.locks);
  presence.hold(lockOfTab(tab)).catch((error: unknown) => health.setState({ fault: faultOf(error).kind }));
  const journal = createJournal(isJournalShelf(around.shelf) ? around.shelf : null, tab, around.now);
  let kept: { readonly library: Library; readonly autosave: Autosave } | null = null;
  /** Whether what lies on the bench and isn't kept is at least written down. */
  let isWritten = false;
  const isSafe = (): boolean => {
    const { plan, history } = store.getState();
    return kept ? kept.autosave.isSafe() : plan === shownFirst.plan && history === shownFirst.history;
  };
  const writeAhead = (): void => {
    const state = store.getState();
    const base = state.planId === null ? null : (kept?.library.revisionOf(state.planId) ?? null);
    isWritten = journal.write({ ...state, base });
  };
  const hasPictures = (): boolean => {
    const { plan, history } = store.getState();
    return kept?.library.pictures.hasAllOf({ plan, history }) ?? false;
  };
  /** What is written ahead names its pictures only: they are kept apart from it, and at once. */
  async function keepPictures(): Promise<void> {
    const { plan, history } = store.getState();
    if (!kept || hasPictures()) return;
    try {
      await kept.library.pictures.packData({ plan, history });
    } catch {
      return; // the plan can't be kept then either, and that is told
    }
    if (store.getState().drag === null && !isSafe()) writeAhead();
  }
  const stopWriting = store.subscribe((state, before) => {
    const changed = state.plan !== before.plan || state.history !== before.history || before.drag !== null;
    if (!changed || state.drag !== null || isSafe()) return;
    writeAhead();
    void keepPictures();
  });
  const { port, fault } = await openOrRemember(around);
  health.setState({ fault });
  /** Where the storage is full: pictures that nothing names any more go at once, unless another window may be about to name one. */
  const makeRoom = async (): Promise<boolean> => {
    if (!isJournalShelf(around.shelf) || !(await isOnlyOne(around.locks, TAB_LOCK, lockOfTab(tab))))
      return false;
    const { clearOutPicturesNow } = await import("./storage/clear-out.ts");
    return clearOutPicturesNow(library, around.shelf);
  };
  const library: Library = createLibrary({ port, otherTabs: around.otherTabs, now: around.now, makeRoom });
  const lock = createPlanLock(around.locks);
  const autosave = createAutosave({ store, library, lock, fault, safe: shownFirst });

  /** Whether plans lie in a library that goes with the page. */
  let holdsPlans = false;
  if (!port.durable)
    library.watch(async () => {
      holdsPlans = (await port.all("plans")).some(({ deletedAt }) => deletedAt === null);
    });

  kept = { library, autosave };
  if (!isSafe()) void keepPictures();
  autosave.status.subscribe(({ state }) => {
    // in memory only: what is written down is all that the next visit will find
    if (state !== "kept" && state !== "kept-as-copy" && state !== "untouched") return;
    if (autosave.isSafe()) journal.drop();
  });

  /** Makes sure that nothing on the bench is lost when another plan takes its place. */
  async function clearBench(evenUnkept: boolean): Promise<BenchCleared> {
    store.getState().endDrag();
    const status = await autosave.flush();
    return status.state === "failed" && !evenUnkept
      ? { ok: false, why: "bench-unkept", fault: status.fault }
      : { ok: true };
  }

  async function openPlan(id: string, evenUnkept = false): Promise<BenchChange> {
    // kept first, so that reopening the plan on the bench reads its last state
    const cleared = await clearBench(evenUnkept);
    if (!cleared.ok) return cleared;
    const opening = await library.open(id);
    if (!opening.ok) return { ok: false, why: "unreadable", fault: opening.fault, text: opening.text };
    await around.prepare?.(opening.file.plan);
    // whatever was changed meanwhile is kept too
    const clearedAgain = await clearBench(evenUnkept);
    if (!clearedAgain.ok) return clearedAgain;
    const fault = store.getState().open({ ...opening.file, planId: id, history: opening.history });
    if (fault) return { ok: false, why: "unreadable", fault, text: serializePlan(opening.file.plan) };
    autosave.settle();
    // asked for early; whether it was granted matters with the first change
    lock.hold(id).catch((error: unknown) => health.setState({ fault: faultOf(error).kind }));
    return { ok: true };
  }

  const keepAhead = (data: unknown): Promise<void> =>
    library.pictures.packData(data).then(
      () => undefined,
      () => undefined,
    );

  async function layPlan(
    file: PlanFile,
    { keep = false, evenUnkept = false }: { keep?: boolean; evenUnkept?: boolean } = {},
  ): Promise<BenchCleared> {
    await Promise.all([around.prepare?.(file.plan), keepAhead(file.plan)]);
    const cleared = await clearBench(evenUnkept);
    if (!cleared.ok) return cleared;
    // an object of its own: the same example laid twice is two plans
    const fault = store.getState().open({ ...file, plan: { ...file.plan }, planId: null });
    // what can't be reckoned has left the bench as it was, and the store says so
    if (fault) return { ok: true };
    lock.release();
    if (keep) await autosave.flush();
    else autosave.settle();
    return { ok: true };
  }

  const unsubscribe = store.subscribe((state, before) => {
    if (state.planId !== before.planId && state.planId !== null) {
      try {
        around.shelf?.setItem(LAST_PLAN_KEY, state.planId);
      } catch (error) {
        health.setState({ fault: faultOf(error).kind });
      }
    }
    // the first change is when it is worth asking not to be cleared
    if (state.history !== before.history && health.getState().persistent === null && port.durable) {
      health.setState({ persistent: false });
      // one that refuses to answer has promised nothing; plans are kept all the same
      around.persist().then(
        (persistent) => health.setState({ persistent }),
        () => health.setState({ persistent: false }),
      );
    }
  });

  /** A busy machine may take long to end a window that was loaded anew: what it wrote down comes as soon as it is gone. */
  async function putBackOnceGone(of: string): Promise<void> {
    const theirs = createPlanLock(around.locks, Number.POSITIVE_INFINITY);
    waits.add(theirs);
    try {
      if (!(await theirs.hold(lockOfTab(of)))) return;
      const left = journal.left().find((line) => line.tab === of);
      if (!left) return;
      const id = await putBackLine(journal, library, left);
      // whoever has begun to work finds it among the plans
      if (store.getState().plan === begunWith && autosave.isSafe()) await openPlan(id);
    } catch (error) {
      health.setState({ fault: faultOf(error).kind });
    } finally {
      theirs.release();
      waits.delete(theirs);
    }
  }
  const waits = new Set<PlanLock>();
  let begunWith: Plan | null = null;

  let last = lastPlanId(around.shelf);
  if (port.durable) {
    try {
      // where no note could be made of it, it is the one that was kept last
      if (around.shelf === null) last = (await library.list())[0]?.id ?? null;
      const { newest, stillThere } = await putBackLeft(journal, library, around.locks);
      last = newest ?? last;
      for (const tab of stillThere) void putBackOnceGone(tab);
    } catch (error) {
      health.setState({ fault: faultOf(error).kind });
    }
  }
  const { plan, history } = store.getState();
  const isUntouched = plan === shownFirst.plan && history === shownFirst.history;
  if (!isUntouched) void autosave.flush();
  else if (last !== null && port.durable) {
    try {
      const opened = await openPlan(last);
      // one that was erased meanwhile is no fault: the visit begins with the example
      if (!opened.ok && opened.why === "unreadable" && opened.text !== null)
        health.setState({ fault: "damaged" });
    } catch (error) {
      health.setState({ fault: faultOf(error).kind });
    }
  }
  begunWith = store.getState().plan;
  return {
    store,
    library,
    autosave,
    health,
    openPlan,
    layPlan,
    keepAhead,
    // in memory only, nothing is kept however safe it counts while the page is open, and no plan that lay on the bench before
    wouldLose: () =>
      port.durable
        ? !(isSafe() || (isWritten && hasPictures()))
        : holdsPlans || autosave.status.getState().state !== "untouched",
    stop: () => {
      stopWriting();
      for (const wait of waits) wait.release();
      presence.release();
      autosave.stop();
      unsubscribe();
      lock.release();
      around.otherTabs?.close();
      port.close();
    },
  };
}

/** What a figure can be typed on: a field, or a handle of the profile. */
const TYPED_ON = "input, textarea, [role=slider]";

/** What is typed and not entered yet counts: leaving what it is typed on enters it. */
function enterTyped(page: Document): void {
  const { activeElement: focused } = page;
  if (!focused?.matches(TYPED_ON)) return;
  if (focused instanceof HTMLElement || focused instanceof SVGElement) focused.blur();
}

/** Enters what is typed when the page is left, also before the visit has begun: what is entered then is written down at once. */
export function enterWhenLeft(page: Document, store: PlanStore): void {
  const takeAll = (): void => {
    enterTyped(page);
    store.getState().endDrag();
  };
  page.defaultView?.addEventListener("beforeunload", takeAll);
  page.defaultView?.addEventListener("pagehide", takeAll);
}

/**
 * Keeps the work when the page is hidden or left, with what is typed and not entered. The browser asks before it leaves only
 * while something is really not kept.
 * @returns how to stop
 */
export function keepWhenHidden(page: Document, { store, autosave, wouldLose }: Session): () => void {
  const takeAll = (): void => {
    enterTyped(page);
    store.getState().endDrag();
  };
  const onHide = (): void => {
    if (page.visibilityState !== "hidden") return;
    takeAll();
    void autosave.flush();
  };
  const onLeave = (event: BeforeUnloadEvent): void => {
    takeAll();
    if (wouldLose()) event.preventDefault();
  };
  const view = page.defaultView;
  page.addEventListener("visibilitychange", onHide);
  view?.addEventListener("pagehide", takeAll);
  view?.addEventListener("beforeunload", onLeave);
  return () => {
    page.removeEventListener("visibilitychange", onHide);
    view?.removeEventListener("pagehide", takeAll);
    view?.removeEventListener("beforeunload", onLeave);
  };
}
