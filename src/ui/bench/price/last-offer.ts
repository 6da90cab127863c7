/** What was asked for last, so that a new plan need not be told again. Kept in this browser, apart from any plan. */
import type { Offer } from "../../../core/plan/document.ts";
import { offer as offerSchema } from "../../../core/plan/schema.ts";
import { browserShelf } from "../../../state/preferences.ts";

const KEY = "glintwright-offer";

/** Null where nothing readable is kept, or the browser refuses. */
export function lastOffer(): Offer | null {
  try {
    const read = offerSchema.safeParse(JSON.parse(browserShelf()?.getItem(KEY) ?? "null"));
    return read.success ? (read.data as Offer) : null;
  } catch {
    return null; // refused or no JSON: then one types it in
  }
}

/** What belongs to one piece alone, the blank and the glass's share of it, stays with its plan. */
export function rememberOffer({ blank: _, ...offer }: Offer): void {
  try {
    browserShelf()?.setItem(KEY, JSON.stringify(offer));
  } catch {
    // a full or closed shelf: the plan has it all the same
  }
}
