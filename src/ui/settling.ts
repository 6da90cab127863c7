/**
 * The plan whose report is known. A plan of few facets is that at once, within the edit; one of many is reported on in a worker
 * while the hand goes on: the last edit wins, and pictures and numbers stay at the plan that they belong to until then.
 */
import type { Report } from "../core/check/report.ts";
import type { Plan } from "../core/plan/document.ts";
import { report } from "../state/derived.ts";

/** A report on so many facets takes less than a frame's share on a phone; it grows with the square of their number. */
export const FEW_FACETS = 200;

export const facetCount = ({ tiers }: Plan): number => tiers.reduce((sum, { count }) => sum + count, 0);

export interface Settling {
  /** The plan to be shown: the one on the bench, or an earlier one while that is reported on. */
  readonly plan: Plan;
  /** Whether the plan on the bench is still being reported on. */
  readonly isLate: boolean;
}

export interface Bench {
  readonly plan: Plan;
  readonly laid: number;
}

/**
 * @param ask reports on a plan off this thread
 * @param show called with what is to be shown, whenever that changes
 * @returns to be called with the plan on the bench whenever it changes
 */
export function createSettling(
  first: Bench,
  ask: (plan: Plan) => Promise<Report>,
  show: (settling: Settling) => void,
): (now: Bench) => void {
  let shown = first.plan;
  let laid = first.laid;
  let wanted = first.plan;
  let isAsking = false;
  const settle = (plan: Plan): void => {
    shown = plan;
    show({ plan, isLate: false });
  };
  /** One question at a time; what came and went while another was under way is never asked. */
  async function askUntilSettled(): Promise<void> {
    isAsking = true;
    while (wanted !== shown) {
      const asked = wanted;
      try {
        report.learn(asked, await ask(asked));
      } catch {
        // without a worker it is reckoned here, by whoever shows it
      }
      if (wanted === asked) settle(asked);
    }
    isAsking = false;
  }
  return (now) => {
    const isOther = now.laid !== laid;
    laid = now.laid;
    wanted = now.plan;
    // another piece is never shown with the pictures of the one before
    if (isOther || facetCount(wanted) <= FEW_FACETS || report.isKnown(wanted)) return settle(wanted);
    show({ plan: shown, isLate: true });
    if (!isAsking) void askUntilSettled();
  };
}
