/**
 * A visit: library and autosave joined to the store. Opens the browser's storage, falls back to memory with a named fault,
 * finds what lay on the bench last, and changes plans on the bench without losing any. The store works before and without.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Plan } from "../core/plan/document.ts";
import { type BenchChanges, benchChanges } from "./bench-changes.ts";
import { freshId } from "./fresh-id.ts";
import { lockOfTab, putBackLeft, putBackOnceGone, TAB_LOCK } from "./left-behind.ts";
import { browserShelf, type TextShelf } from "./preferences.ts";
import { type Autosave, createAutosave } from "./storage/autosave.ts";
import { type FaultKind, faultOf } from "./storage/faults.ts";
import type { StorageHealth } from "./storage/health.ts";
import { openIdbPort } from "./storage/idb-port.ts";
import { createJournal, type JournalShelf } from "./storage/journal.ts";
import { createLibrary, type Library, type TabChannel } from "./storage/library.ts";
import { memoryPort } from "./storage/memory-port.ts";
import { createPlanLock, isOnlyOne, type Locks, type PlanLock } from "./storage/plan-lock.ts";
import type { StoragePort } from "./storage/port.ts";
import type { PlanStore } from "./store.ts";
import { createWriteAhead } from "./write-ahead.ts";

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

export interface Session extends BenchChanges {
  readonly store: PlanStore;
  readonly library: Library;
  readonly autosave: Autosave;
  readonly health: StoreApi<StorageHealth>;
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

/** Notes which plan lies on the bench, for the next visit, and asks once not to be cleared. @returns how to stop */
function followBench(
  store: PlanStore,
  { shelf, persist }: Surroundings,
  isDurable: boolean,
  health: StoreApi<StorageHealth>,
): () => void {
  return store.subscribe((state, before) => {
    if (state.planId !== before.planId && state.planId !== null) {
      try {
        shelf?.setItem(LAST_PLAN_KEY, state.planId);
      } catch (error) {
        health.setState({ fault: faultOf(error).kind });
      }
    }
    // the first change is when it is worth asking not to be cleared
    if (state.history !== before.history && health.getState().persistent === null && isDurable) {
      health.setState({ persistent: false });
      // one that refuses to answer has promised nothing; plans are kept all the same
      persist().then(
        (persistent) => health.setState({ persistent }),
        () => health.setState({ persistent: false }),
      );
    }
  });
}

/** Whether plans lie in a library that goes with the page. */
function holdingPlans(port: StoragePort, library: Library): () => boolean {
  let holds = false;
  if (!port.durable)
    library.watch(async () => {
      holds = (await port.all("plans")).some(({ deletedAt }) => deletedAt === null);
    });
  return () => holds;
}

/** Where the storage is full: pictures that nothing names any more go at once, unless another window may be about to name one. */
async function makeRoomFor(library: Library, { shelf, locks }: Surroundings, tab: string): Promise<boolean> {
  if (!isJournalShelf(shelf) || !(await isOnlyOne(locks, TAB_LOCK, lockOfTab(tab)))) return false;
  const { clearOutPicturesNow } = await import("./storage/clear-out.ts");
  return clearOutPicturesNow(library, shelf);
}

/**
 * Begins a visit on a store that shows something already (an example). The plan that lay on the bench last takes its place,
 * unless there is none, it can't be read (`health` says so), or the person has begun to work meanwhile.
 */
export async function startSession(
  store: PlanStore,
  around: Surroundings = browserSurroundings(),
): Promise<Session> {
  const health = createStore<StorageHealth>()(() => ({ fault: null, persistent: null }));
  const failed = (error: unknown): void => health.setState({ fault: faultOf(error).kind });
  const shownFirst = store.getState();
  const tab = freshId();
  const presence = createPlanLock(around.locks);
  presence.hold(lockOfTab(tab)).catch(failed);
  const journal = createJournal(isJournalShelf(around.shelf) ? around.shelf : null, tab, around.now);
  const ahead = createWriteAhead(store, journal, shownFirst);
  const { port, fault } = await openOrRemember(around);
  health.setState({ fault });
  const makeRoom = (): Promise<boolean> => makeRoomFor(library, around, tab);
  const library: Library = createLibrary({ port, otherTabs: around.otherTabs, now: around.now, makeRoom });
  const lock = createPlanLock(around.locks);
  const autosave = createAutosave({ store, library, lock, fault, safe: shownFirst });
  const holdsPlans = holdingPlans(port, library);
  ahead.join(library, autosave);
  const changes = benchChanges({ store, library, autosave, lock, health, prepare: around.prepare });
  const unsubscribe = followBench(store, around, port.durable, health);

  const waits = new Set<PlanLock>();
  let begunWith: Plan | null = null;
  /** Whoever has begun to work by then finds it among the plans. */
  const openLate = async (id: string): Promise<void> => {
    if (store.getState().plan === begunWith && autosave.isSafe()) await changes.openPlan(id);
  };
  let last = lastPlanId(around.shelf);
  if (port.durable) {
    try {
      // where no note could be made of it, it is the one that was kept last
      if (around.shelf === null) last = (await library.list())[0]?.id ?? null;
      const { newest, stillThere } = await putBackLeft(journal, library, around.locks);
      last = newest ?? last;
      for (const of of stillThere)
        putBackOnceGone(journal, library, around.locks, of, waits, openLate).catch(failed);
    } catch (error) {
      failed(error);
    }
  }
  const { plan, history } = store.getState();
  const isUntouched = plan === shownFirst.plan && history === shownFirst.history;
  if (!isUntouched) void autosave.flush();
  else if (last !== null && port.durable) {
    try {
      const opened = await changes.openPlan(last);
      // one that was erased meanwhile is no fault: the visit begins with the example
      if (!opened.ok && opened.why === "unreadable" && opened.text !== null)
        health.setState({ fault: "damaged" });
    } catch (error) {
      failed(error);
    }
  }
  begunWith = store.getState().plan;
  return {
    store,
    library,
    autosave,
    health,
    ...changes,
    // in memory only, nothing is kept however safe it counts while the page is open, and no plan that lay on the bench before
    wouldLose: () =>
      port.durable ? !ahead.isFound() : holdsPlans() || autosave.status.getState().state !== "untouched",
    stop: () => {
      ahead.stop();
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
