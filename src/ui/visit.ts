/** This visit: where the plans are kept, once that is known. The page shows and works before it. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Plan } from "../core/plan/document.ts";
import { keepWhenHidden, type Session, startSession } from "../state/session.ts";
import type { SaveStatus } from "../state/storage/autosave.ts";
import { studio } from "./studio.ts";

export const visit = createStore<{ readonly session: Session | null }>(() => ({ session: null }));
export const useSession = (): Session | null => useStore(visit, (state) => state.session);

const NOT_YET: SaveStatus = { state: "untouched" };
const notYet = createStore<SaveStatus>(() => NOT_YET);
/** How keeping the plan on the bench stands. */
export const useSaveStatus = (): SaveStatus => useStore(useSession()?.autosave.status ?? notYet);

/** Joins the store to what is kept on this device. */
export async function beginVisit(): Promise<void> {
  const session = await startSession(studio);
  keepWhenHidden(document, session.autosave);
  visit.setState({ session });
}

/**
 * Lays a plan on the bench; what lay there is kept first.
 * @returns null, or one line why the bench could not be cleared: then nothing has changed
 */
export async function layOnBench(
  plan: Plan,
  unknown: readonly string[] = [],
  keep = false,
): Promise<string | null> {
  const { session } = visit.getState();
  if (!session) {
    studio.getState().open({ plan, unknown });
    return null;
  }
  const laid = await session.layPlan({ plan, unknown }, { keep });
  return laid.ok ? null : laid.message;
}
