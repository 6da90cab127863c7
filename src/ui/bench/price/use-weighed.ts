/** What plans take and give, and how far the hours stray, reckoned beside the screen. */
import { useEffect, useState } from "react";
import type { TimeSpread } from "../../../core/offer/time-spread.ts";
import type { Weighed } from "../../../core/offer/weigh.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { samePiece } from "../../../state/derived.ts";
import { picturesOf } from "../../look/look-scene.ts";
import { usePlan } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { type Asked, useAsked } from "../use-asked.ts";

const ask = (plan: Plan): Promise<Weighed> => benchPool.run("weigh", { plan, rasters: picturesOf(plan) });

/** Null asks nothing. */
export const useWeighed = (plan: Plan | null): Asked<Plan, Weighed> => useAsked(plan, ask);

export interface Straying {
  /** Share of the pieces cut; null when none are being cut. */
  readonly share: number | null;
  readonly spread: TimeSpread | null;
  readonly failed: boolean;
}
const NOTHING: Straying = { share: null, spread: null, failed: false };

/** Begins again with each other piece; what is no longer wanted is stopped. @param isWanted false where the time itself is unknown */
export function useStraying(isWanted: boolean): Straying {
  const plan = samePiece(usePlan());
  const [straying, set] = useState(NOTHING);
  useEffect(() => {
    set(NOTHING);
    if (!isWanted) return;
    const mine = new AbortController();
    const { signal } = mine;
    const onProgress = (share: number) => {
      if (!signal.aborted) set((now) => ({ ...now, share }));
    };
    benchPool.run("timeSpread", plan, { signal, onProgress }).then(
      (spread) => !signal.aborted && set({ ...NOTHING, spread }),
      () => !signal.aborted && set({ ...NOTHING, failed: true }),
    );
    return () => mine.abort();
  }, [plan, isWanted]);
  return straying;
}
