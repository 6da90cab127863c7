/** One tab writes a plan at a time: a Web Lock named after the plan, held as long as the plan lies on this tab's bench. */

/** The part of `navigator.locks` that is needed. */
export type Locks = Pick<LockManager, "request">;

export interface PlanLock {
  /** Takes the lock of this plan, letting go of the one before. @returns false when another tab has it */
  hold(planId: string): Promise<boolean>;
  release(): void;
}

/** Without locks in the browser every hold is granted: revisions alone keep tabs from overwriting each other. */
export function createPlanLock(locks: Locks | null): PlanLock {
  let held: { readonly planId: string; readonly letGo: () => void } | null = null;
  const release = (): void => {
    held?.letGo();
    held = null;
  };
  return {
    release,
    hold: async (planId) => {
      if (!locks || held?.planId === planId) return true;
      release();
      return new Promise<boolean>((answer, fail) => {
        locks
          .request(`glintwright-plan-${planId}`, { ifAvailable: true }, (lock) => {
            answer(lock !== null);
            if (lock === null) return undefined;
            // the lock lasts until this promise is kept
            return new Promise<void>((letGo) => {
              held = { planId, letGo };
            });
          })
          .catch(fail);
      });
    },
  };
}
