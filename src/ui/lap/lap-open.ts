/**
 * Whether the page for the lap is open, and at which plan: the address says so, so that a reload comes back to it and Back leaves
 * it. It never takes another plan for its own: what lies on the bench has to be the one it was opened for, or it asks.
 */
import { useEffect, useSyncExternalStore } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { addressOf, putAddress, watchAddress } from "../address.ts";
import { stepBack } from "../shared/step-back.ts";
import { perStudio, type Studio, useStudioStore } from "../studio.ts";
import { useStudio } from "../use-studio.ts";
import { visitOf } from "../visit.ts";

/** For which of the plans laid on the bench, by `laid`, the lap was opened; null before. */
const standOf = perStudio(() => createStore<{ readonly agreed: number | null }>(() => ({ agreed: null })));

/** The plan that the address names for the lap; undefined while the lap is closed. */
const asked = (): string | null | undefined => addressOf(location.hash).lap?.planId;

export const isLapOpen = (): boolean => asked() !== undefined;
export const useLapOpen = (): boolean => useSyncExternalStore(watchAddress, isLapOpen);

/** Brings the bench out when the address asks for the lap: after a reload, or from a bookmark on a phone. */
export function useLapAddress(): void {
  const isAsked = useLapOpen();
  const go = useStudio((state) => state.go);
  useEffect(() => {
    if (isAsked) go("bench");
  }, [isAsked, go]);
}

/** Says that the lap is to stand at what lies on the bench now. */
export const agreeToBench = (studio: Studio): void =>
  standOf(studio).setState({ agreed: studio.getState().laid });

/** Whether the lap was opened for what lies on the bench now. */
export const isAgreed = (studio: Studio): boolean =>
  standOf(studio).getState().agreed === studio.getState().laid;

export type Standing =
  /** What is kept on this device is still being looked for. */
  | "waiting"
  | "here"
  /** Another plan lies on the bench than the one at which the lap stood. */
  | "elsewhere";

export function useLapStanding(): Standing {
  const studio = useStudioStore();
  const hasBegun = useStore(visitOf(studio), (state) => state.hasBegun);
  const agreed = useStore(standOf(studio), (state) => state.agreed);
  const laid = useStudio((state) => state.laid);
  const planId = useStudio((state) => state.planId);
  const named = useSyncExternalStore(watchAddress, asked);
  if (!hasBegun) return "waiting";
  const isOther = Boolean(named) && planId !== null && named !== planId;
  return agreed === laid && !isOther ? "here" : "elsewhere";
}

/** What the entry of the browser's history says that opening the lap has made. */
export const LAP_ENTRY = { isLap: true } as const;

/** Takes the lap out of the address without loading anything, and its entry with it where there is one of its own. */
export function closeLap(): void {
  if ((history.state as { isLap?: boolean } | null)?.isLap) stepBack();
  else putAddress({ ...addressOf(location.hash), lap: null });
}
