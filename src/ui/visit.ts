/** This visit: where the plans are kept, once that is known. The page shows and works before it. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Plan } from "../core/plan/document.ts";
import { browserShelf } from "../state/preferences.ts";
import {
  browserSurroundings,
  enterWhenLeft,
  keepWhenHidden,
  type Session,
  type Surroundings,
  startSession,
} from "../state/session.ts";
import type { SaveStatus } from "../state/storage/autosave.ts";
import { type FaultKind, faultOf, StorageFault } from "../state/storage/faults.ts";
import { shellWords } from "./messages/shell.ts";
import { pieceSettled } from "./piece/use-canvas.ts";
import { prepare, settledPlan, settlingOf } from "./settled.ts";
import { screenOf, tell } from "./shared/screen.ts";
import { languageNow, perStudio, type Studio, useStudioStore } from "./studio.ts";

interface Visit {
  readonly session: Session | null;
  /** Whether the plan that the address or the last visit asks for has been looked for. */
  readonly hasBegun: boolean;
}

export const visitOf = perStudio(() => createStore<Visit>(() => ({ session: null, hasBegun: false })));
export const useSession = (): Session | null => useStore(visitOf(useStudioStore()), (state) => state.session);

const NOT_YET: SaveStatus = { state: "untouched" };
const notYet = createStore<SaveStatus>(() => NOT_YET);
/** How keeping the plan on the bench stands. */
export const useSaveStatus = (): SaveStatus => useStore(useSession()?.autosave.status ?? notYet);

/** Gives each plan its small drawing once it is kept and reckoned. */
function drawThumbnails(studio: Studio, { autosave, library }: Session): void {
  let drawn: Plan | null = null;
  const follow = (): void => {
    const { plan, planId } = studio.getState();
    const { state } = autosave.status.getState();
    if (!state.startsWith("kept") || planId === null || plan === drawn || plan !== settledPlan(studio))
      return;
    drawn = plan;
    const draw = async () => {
      const { thumbnailOf } = await import("./library/thumbnail.ts");
      await library.setThumbnail(planId, thumbnailOf(plan));
    };
    // A plan without its drawing is only less pretty: the next change tries again.
    draw().catch(() => {
      drawn = null;
    });
  };
  autosave.status.subscribe(follow);
  settlingOf(studio).subscribe(follow);
}

/** What was thrown out long ago waits until the piece stands. */
async function clearOutWhenSettled({ library, health }: Session): Promise<void> {
  await pieceSettled;
  try {
    const { clearOut, clearOutPictures } = await import("../state/storage/clear-out.ts");
    await clearOut(library, browserShelf(), Date.now());
    await clearOutPictures(library, browserShelf());
  } catch (error) {
    // a storage that fails here says so on the shelf
    health.setState({ fault: faultOf(error).kind });
  }
}

/** Where no visit could begin for a reason that nobody foresaw: all in memory, and said. */
const inMemory = (why: unknown): Surroundings => ({
  openPort: () => Promise.reject(new StorageFault("unforeseen", faultOf(why).message, why)),
  locks: null,
  otherTabs: null,
  shelf: null,
  persist: async () => false,
  now: () => Date.now(),
});

/** What nothing keeps, the address carries: a reload then finds it again. */
function carryUnkept(studio: Studio, session: Session): void {
  const stop = session.autosave.status.subscribe(({ state }) => {
    if (state !== "in-memory" && state !== "failed") return;
    stop();
    import("./carried-plan.ts").then(
      ({ followAddress }) => followAddress(studio, session),
      // without it nothing is lost that the page hasn't said is not kept
      () => carryUnkept(studio, session),
    );
  });
}

/** Why something is not kept, and what then helps, in words that only a page in trouble fetches; none where they can't be had. */
export async function whyUnkept(
  studio: Studio,
  fault: FaultKind,
  staysOnBench = false,
): Promise<readonly string[]> {
  try {
    const { storageWords } = await import("./messages/storage.ts");
    const { faults, addressCarries, benchUnkept } = storageWords[languageNow(studio)];
    return [faults[fault], staysOnBench ? benchUnkept : addressCarries];
  } catch {
    return []; // that it is not kept has been said
  }
}

/** Says that what the address or the last visit asks for could not be looked for, which nobody foresaw. */
export async function sayUnbegun(studio: Studio): Promise<void> {
  const [why] = await whyUnkept(studio, "unforeseen");
  tell(studio, { tone: "stop", text: shellWords[languageNow(studio)].notRead, details: [why ?? ""] });
}

/** Joins a studio to what is kept on this device. Never rejects: what stands against it is said where keeping is. */
export async function beginVisit(studio: Studio): Promise<void> {
  enterWhenLeft(document, studio);
  const session = await startSession(studio, { ...browserSurroundings(), prepare }).catch((why: unknown) =>
    startSession(studio, inMemory(why)),
  );
  const wouldLose = () => session.wouldLose() || screenOf(studio).getState().isMaking;
  keepWhenHidden(document, { ...session, wouldLose });
  drawThumbnails(studio, session);
  carryUnkept(studio, session);
  void clearOutWhenSettled(session);
  visitOf(studio).setState({ session });
}

/**
 * Lays a plan on the bench (opens a document); what lay there is kept first.
 * @returns null, or what kept the bench from being cleared: then nothing has changed
 */
export async function layOnBench(
  studio: Studio,
  plan: Plan,
  unknown: readonly string[] = [],
  keep = false,
): Promise<FaultKind | null> {
  const { session } = visitOf(studio).getState();
  if (!session) {
    studio.getState().open({ plan, unknown });
    return null;
  }
  const laid = await session.layPlan({ plan, unknown }, { keep });
  return laid.ok ? null : laid.fault;
}

/** German was wanted and its words could not be fetched: English is spoken instead, and that is said. */
export const sayNoGerman = (studio: Studio): void =>
  tell(studio, { tone: "stop", text: shellWords[languageNow(studio)].noGerman });
