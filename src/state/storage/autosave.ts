/**
 * Keeps the plan on the bench in the library, a moment after each change, and says in one word how that stands. A plan
 * that another tab has open or has changed since is never overwritten: this tab's work goes on as a copy.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Plan } from "../../core/plan/document.ts";
import type { History } from "../history.ts";
import type { PlanStore } from "../store.ts";
import { type FaultKind, faultOf } from "./faults.ts";
import type { Library } from "./library.ts";
import type { PlanLock } from "./plan-lock.ts";

export type SaveStatus =
  /** Nothing to keep yet: an example, or a plan just opened. */
  | { readonly state: "untouched" }
  /** Changed; will be kept in a moment. */
  | { readonly state: "waiting" }
  | { readonly state: "keeping" }
  /** Written and read back. */
  | { readonly state: "kept"; readonly at: number }
  /** Another tab had this plan: the work is kept as a plan of its own. */
  | { readonly state: "kept-as-copy"; readonly at: number; readonly of: string }
  /** The browser keeps nothing: the work lasts as long as the page. */
  | { readonly state: "in-memory"; readonly fault: FaultKind }
  /** Not kept, still on the bench; tried again with the next change, when something was thrown out, and after a while. */
  | { readonly state: "failed"; readonly fault: FaultKind; readonly message: string };

export interface Safe {
  readonly plan: Plan;
  readonly history: History;
}
export interface AutosaveOptions {
  readonly store: PlanStore;
  readonly library: Library;
  readonly lock: PlanLock;
  /** Why the library's port is only memory, when it is. */
  readonly fault?: FaultKind | null;
  /** The state that needs no keeping: an example, or a plan just read. Default: what lies on the bench. */
  readonly safe?: Safe;
  /** How long the work rests before it is kept, ms. */
  readonly delayMs?: number;
}

export interface Autosave {
  readonly status: StoreApi<SaveStatus>;
  /** Keeps at once what is not yet kept. Never rejects: what went wrong is the status. */
  readonly flush: () => Promise<SaveStatus>;
  /** Keeps also a plan that nobody has changed, if the library doesn't have it yet. Never rejects. */
  readonly keepAll: () => Promise<SaveStatus>;
  /** Forgets that the plan on the bench was changed: it was just opened, or is the person's no longer. */
  readonly settle: () => void;
  /** Whether nothing on the bench waits to be kept. */
  readonly isSafe: () => boolean;
  readonly stop: () => void;
}

const REST_MS = 500;
/** What could not be kept is tried again after this long, then after twice as long, and so on up to the longest, ms. */
const FIRST_RETRY_MS = 2000;
const LONGEST_RETRY_MS = 60_000;

/**
 * Writes the state of the bench; as a copy where the plan is another tab's.
 * @param onKept gets what is kept by now
 */
async function keepBench(
  { store, library, lock, fault = null }: AutosaveOptions,
  onKept: (kept: Safe) => void,
): Promise<SaveStatus> {
  const { plan, planId, history } = store.getState();
  const mayWrite = planId === null || (await lock.hold(planId));
  let keeping = mayWrite ? await library.keep(planId, plan, history) : ({ kept: false } as const);
  const isCopy = !keeping.kept;
  if (!keeping.kept) keeping = await library.keep(null, plan, history);
  if (!keeping.kept) throw new Error("a new plan has nobody to conflict with");
  onKept({ plan, history });
  // the bench may hold another plan by now
  if (store.getState().planId === planId && keeping.planId !== planId) {
    store.getState().setPlanId(keeping.planId);
    await lock.hold(keeping.planId);
  }
  if (fault !== null) return { state: "in-memory", fault };
  if (isCopy && planId !== null) return { state: "kept-as-copy", at: keeping.at, of: planId };
  return { state: "kept", at: keeping.at };
}

export function createAutosave(options: AutosaveOptions): Autosave {
  const { store, library, delayMs = REST_MS, safe: shownFirst = store.getState() } = options;
  const status = createStore<SaveStatus>()(() => ({ state: "untouched" }));
  /** The state that is safe: kept, or opened and not yet touched; null when nothing counts as that. */
  let safe: Safe | null = shownFirst;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let retryMs = FIRST_RETRY_MS;
  let isStopped = false;
  let running: Promise<SaveStatus> | null = null;
  const say = (next: SaveStatus): SaveStatus => {
    status.setState(next, true);
    return next;
  };
  const isSafe = (): boolean => {
    const { plan, history } = store.getState();
    return plan === safe?.plan && history === safe.history;
  };

  async function keepUntilSafe(): Promise<SaveStatus> {
    let said = status.getState();
    while (!isSafe() && store.getState().drag === null) {
      // what was not kept stays so in words until it is
      if (status.getState().state !== "failed") say({ state: "keeping" });
      try {
        said = say(
          await keepBench(options, (kept) => {
            safe = kept;
          }),
        );
        retryMs = FIRST_RETRY_MS;
      } catch (error) {
        const { kind, message } = faultOf(error);
        if (kind !== "unreadable") retryLater();
        return say({ state: "failed", fault: kind, message });
      }
    }
    return said;
  }

  function retryLater(): void {
    if (isStopped) return;
    clearTimeout(timer);
    timer = setTimeout(flush, retryMs);
    retryMs = Math.min(2 * retryMs, LONGEST_RETRY_MS);
  }

  const flush = (): Promise<SaveStatus> => {
    clearTimeout(timer);
    running ??= keepUntilSafe().finally(() => {
      running = null;
    });
    return running;
  };

  const unsubscribe = store.subscribe((state, before) => {
    const changed = state.plan !== before.plan || state.history !== before.history;
    const dragEnded = before.drag !== null && state.drag === null;
    if ((!changed && !dragEnded) || state.drag !== null || isSafe()) return;
    clearTimeout(timer);
    if (!running) say({ state: "waiting" });
    timer = setTimeout(flush, delayMs);
  });

  // what the library has let go of may be the room that was missing
  const unwatch = library.watch(() => {
    if (status.getState().state === "failed" && !running) void flush();
  });

  return {
    status,
    flush,
    keepAll: () => {
      if (store.getState().planId === null) safe = null;
      return flush();
    },
    isSafe,
    settle: () => {
      clearTimeout(timer);
      safe = store.getState();
      say({ state: "untouched" });
    },
    stop: () => {
      isStopped = true;
      clearTimeout(timer);
      unsubscribe();
      unwatch();
    },
  };
}
