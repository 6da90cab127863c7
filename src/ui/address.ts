/** What the address says after its #: whether the page for the lap is open, of which plan, and a plan that it carries itself. */

export interface Address {
  /**
   * Null while the page for the lap is closed. `planId`: the library's plan at which it stands, "" for one that the library
   * doesn't have, null where the address leaves it open (a bookmark of the lap itself).
   */
  readonly lap: { readonly planId: string | null } | null;
  /** A whole plan, as `link.ts` writes it; null without one. */
  readonly plan: string | null;
}

const LAP = "lap";
const PLAN = "plan=";

/** @param hash with or without its # */
export function addressOf(hash: string): Address {
  const parts = hash.replace(/^#/, "").split("&");
  const lap = parts.find((part) => part === LAP || part.startsWith(`${LAP}=`));
  return {
    lap: lap === undefined ? null : { planId: lap === LAP ? null : lap.slice(LAP.length + 1) },
    plan: parts.find((part) => part.startsWith(PLAN)) ?? null,
  };
}

/** What stands in the address, with its #; nothing where there is nothing to say. */
export function hashOf({ lap, plan }: Address): string {
  const place = lap && (lap.planId === null ? LAP : `${LAP}=${lap.planId}`);
  const parts = [place, plan].filter((part) => part !== null);
  return parts.length > 0 ? `#${parts.join("&")}` : "";
}

const PUT = "glintwright-address";

/** Says something else in the address, without a step for the browser's Back. */
export function putAddress(next: Address): void {
  const hash = hashOf(next);
  if (hash === location.hash) return;
  try {
    history.replaceState(history.state, "", location.pathname + location.search + hash);
  } catch (error) {
    // a browser that finds this asked too often takes the next one
    if (!(error instanceof DOMException)) throw error;
  }
  window.dispatchEvent(new Event(PUT));
}

/** Says something else in the address, with a step of its own for the browser's Back. */
export function pushAddress(next: Address, state: unknown): void {
  history.pushState(state, "", location.pathname + location.search + hashOf(next));
  window.dispatchEvent(new Event(PUT));
}

/** Calls back whenever the address says something else. @returns how to stop */
export function watchAddress(listener: () => void): () => void {
  const events = ["hashchange", "popstate", PUT];
  for (const event of events) window.addEventListener(event, listener);
  return () => {
    for (const event of events) window.removeEventListener(event, listener);
  };
}
