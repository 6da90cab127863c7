/** The plan in the address itself, where nothing else keeps it; and the address kept true to where the lap stands. */
import type { Plan } from "../core/plan/document.ts";
import { PlanFileError } from "../core/plan/file.ts";
import { fragmentOf } from "../core/plan/link.ts";
import type { Session } from "../state/session.ts";
import { addressOf, putAddress } from "./address.ts";
import { isAgreed, isLapOpen } from "./lap/lap-open.ts";
import type { Studio } from "./studio.ts";

/** The plan for the address; null for one that is too long for it: then a file is the only way, and the page says so. */
function fitting(plan: Plan): string | null {
  try {
    return fragmentOf(plan);
  } catch (error) {
    if (error instanceof PlanFileError) return null;
    throw error;
  }
}

/** What the address has to carry now: nothing where the library has the plan, or nobody has touched it. */
function planToCarry(studio: Studio, session: Session | null): string | null {
  const { plan, planId } = studio.getState();
  const state = session?.autosave.status.getState().state ?? "untouched";
  const isKept = session?.library.port.durable === true && planId !== null && state !== "failed";
  return isKept || (planId === null && state === "untouched") ? null : fitting(plan);
}

/** The plan on the bench for the address, kept or not; null when it is too long. */
export const carriedPlan = (studio: Studio): string | null => fitting(studio.getState().plan);

const followed = new WeakSet<Session>();

/**
 * From now on the address says what a reload has to open: when the keeping of the plan has come to an end, and at the lap, where a
 * step takes its time, with each change.
 */
export function followAddress(studio: Studio, session: Session): void {
  const follow = (): void => {
    const { state } = session.autosave.status.getState();
    if (!isLapOpen() && (state === "waiting" || state === "keeping")) return;
    const { lap } = addressOf(location.hash);
    const { planId } = studio.getState();
    putAddress({
      lap: lap && isAgreed(studio) ? { planId: planId ?? "" } : lap,
      plan: planToCarry(studio, session),
    });
  };
  if (!followed.has(session)) {
    session.autosave.status.subscribe(follow);
    studio.subscribe(({ plan, drag }, before) => {
      if (plan !== before.plan && drag === null && isLapOpen()) follow();
    });
  }
  followed.add(session);
  follow();
}
