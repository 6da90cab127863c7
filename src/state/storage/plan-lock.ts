/** One tab writes a plan at a time: a Web Lock named after the plan, held as long as the plan lies on this tab's bench. */

/** The part of `navigator.locks` that is needed. */
export type Locks = Pick<LockManager, "request"> & Partial<Pick<LockManager, "query">>;

/** How the lock of a plan, or of whatever else is held like one, is called. */
const nameOf = (planId: string): string => `glintwright-plan-${planId}`;

/** Whether no lock whose name begins so is held but this one; false where the browser doesn't tell. */
export async function isOnlyOne(locks: Locks | null, beginning: string, mine: string): Promise<boolean> {
  const { held } = (await locks?.query?.()) ?? {};
  if (!held) return false;
  return held.every(({ name = "" }) => !name.startsWith(nameOf(beginning)) || name === nameOf(mine));
}

export interface PlanLock {
  /**
   * Takes the lock of this plan, letting go of the one before. Waits a moment for a tab that is just closing or reloading.
   * @returns false when another tab keeps it
   */
  hold(planId: string): Promise<boolean>;
  release(): void;
}

/** A tab that closes or reloads lets go well within this, ms. */
const PATIENCE_MS = 1500;

/** One wish for one lock: waiting, then held or not, until it is let go. */
interface Wish {
  readonly planId: string;
  readonly granted: Promise<boolean>;
  readonly letGo: () => void;
}

function wishFor(locks: Locks, planId: string, patienceMs: number): Wish {
  const giveUp = new AbortController();
  const timer = Number.isFinite(patienceMs) ? setTimeout(() => giveUp.abort(), patienceMs) : undefined;
  let letGo = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const granted = new Promise<boolean>((answer, fail) => {
    const options = { signal: giveUp.signal };
    locks
      .request(nameOf(planId), options, () => {
        clearTimeout(timer);
        answer(true);
        // the lock lasts until this promise is kept
        return held;
      })
      .catch((error: unknown) => (giveUp.signal.aborted ? answer(false) : fail(error)));
  });
  return {
    planId,
    granted,
    letGo: () => {
      clearTimeout(timer);
      giveUp.abort();
      letGo();
    },
  };
}

/**
 * Without locks in the browser every hold is granted: revisions alone keep tabs from overwriting each other.
 * @param patienceMs how long another tab is waited for; may be infinite
 */
export function createPlanLock(locks: Locks | null, patienceMs = PATIENCE_MS): PlanLock {
  let wish: Wish | null = null;
  const release = (): void => {
    wish?.letGo();
    wish = null;
  };
  return {
    release,
    hold: async (planId) => {
      if (!locks) return true;
      if (wish?.planId !== planId) {
        release();
        wish = wishFor(locks, planId, patienceMs);
      }
      const mine = wish;
      const granted = await mine.granted;
      // one that was not granted may be asked for again
      if (!granted && wish === mine) wish = null;
      return granted;
    },
  };
}
