/** This visit: where the plans are kept, once that is known. The page shows and works before it. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Plan } from "../core/plan/document.ts";
import { browserShelf } from "../state/preferences.ts";
import { keepWhenHidden, type Session, startSession } from "../state/session.ts";
import type { SaveStatus } from "../state/storage/autosave.ts";
import { clearOut } from "../state/storage/clear-out.ts";
import { type FaultKind, faultOf } from "../state/storage/faults.ts";
import { studio } from "./studio.ts";

export const visit = createStore<{ readonly session: Session | null }>(() => ({ session: null }));
export const useSession = (): Session | null => useStore(visit, (state) => state.session);

const NOT_YET: SaveStatus = { state: "untouched" };
const notYet = createStore<SaveStatus>(() => NOT_YET);
/** How keeping the plan on the bench stands. */
export const useSaveStatus = (): SaveStatus => useStore(useSession()?.autosave.status ?? notYet);

/** Gives each plan its small drawing once it is kept; drawn when the browser has nothing else to do. */
function drawThumbnails({ autosave, library }: Session): void {
  let drawn: Plan | null = null;
  autosave.status.subscribe(({ state }) => {
    const { plan, planId } = studio.getState();
    if (!state.startsWith("kept") || planId === null || plan === drawn) return;
    drawn = plan;
    const draw = async () => {
      const { thumbnailOf } = await import("./library/thumbnail.ts");
      await library.setThumbnail(planId, thumbnailOf(plan));
    };
    // A plan without its drawing is only less pretty: the next change tries again.
    draw().catch(() => {
      drawn = null;
    });
  });
}

/** Joins the store to what is kept on this device. */
export async function beginVisit(): Promise<void> {
  const session = await startSession(studio);
  keepWhenHidden(document, session);
  drawThumbnails(session);
  // a storage that fails here says so on the shelf
  clearOut(session.library, browserShelf(), Date.now()).catch((error: unknown) =>
    session.health.setState({ fault: faultOf(error).kind }),
  );
  visit.setState({ session });
}

/**
 * Lays a plan on the bench; what lay there is kept first.
 * @returns null, or what kept the bench from being cleared: then nothing has changed
 */
export async function layOnBench(
  plan: Plan,
  unknown: readonly string[] = [],
  keep = false,
): Promise<FaultKind | null> {
  const { session } = visit.getState();
  if (!session) {
    studio.getState().open({ plan, unknown });
    return null;
  }
  const laid = await session.layPlan({ plan, unknown }, { keep });
  return laid.ok ? null : laid.fault;
}
