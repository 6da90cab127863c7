/**
 * Writes down at once what the library can't have kept yet (a write-ahead log), from before the library is there: a page gone a
 * moment later loses nothing.
 */
import type { Autosave } from "./storage/autosave.ts";
import type { Journal } from "./storage/journal.ts";
import type { Library } from "./storage/library.ts";
import type { PlanState, PlanStore } from "./store.ts";

/** @param shownFirst what the store began with, which needs no keeping */
export function createWriteAhead(
  store: PlanStore,
  journal: Journal,
  shownFirst: Pick<PlanState, "plan" | "history">,
) {
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

  return {
    /** From now on the library keeps: what is written down is dropped once that has all of it. */
    join: (library: Library, autosave: Autosave): void => {
      kept = { library, autosave };
      if (!isSafe()) void keepPictures();
      autosave.status.subscribe(({ state }) => {
        // in memory only: what is written down is all that the next visit will find
        if (state !== "kept" && state !== "kept-as-copy" && state !== "untouched") return;
        if (autosave.isSafe()) journal.drop();
      });
    },
    /** Whether the next visit finds what lies on the bench. */
    isFound: (): boolean => isSafe() || (isWritten && hasPictures()),
    stop: stopWriting,
  };
}
