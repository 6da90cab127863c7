/** Whether the page for the lap is open: the address says so, so that a reload comes back to it and Back leaves it. */
import { useEffect, useSyncExternalStore } from "react";
import { studio } from "../studio.ts";
import { visit } from "../visit.ts";

export const LAP_HASH = "#lap";

const isOpen = (): boolean => window.location.hash === LAP_HASH;

function subscribe(listener: () => void): () => void {
  window.addEventListener("hashchange", listener);
  window.addEventListener("popstate", listener);
  return () => {
    window.removeEventListener("hashchange", listener);
    window.removeEventListener("popstate", listener);
  };
}

export const useLapOpen = (): boolean => useSyncExternalStore(subscribe, isOpen);

/** Brings the bench out when the address asks for the lap: after a reload, or from a bookmark on a phone. */
export function useLapAddress(): void {
  const isAsked = useLapOpen();
  useEffect(() => {
    if (isAsked) studio.getState().go("bench");
  }, [isAsked]);
}

/** Opens the page for the lap. The plan is kept first, also one nobody has changed, so that a reload finds it again. */
export function openLap(): void {
  void visit.getState().session?.autosave.flush();
  window.location.hash = LAP_HASH;
}

/** Takes the hash away without loading anything. */
export function closeLap(): void {
  history.replaceState(history.state, "", window.location.pathname + window.location.search);
  window.dispatchEvent(new PopStateEvent("popstate"));
}
