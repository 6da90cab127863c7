/** The least change of angles after a slip, looked for beside the screen: with progress, and to be stopped. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Adjusted } from "../../../core/bench/as-cut/adjusted.ts";
import type { AsCutAnswer } from "../../../core/bench/as-cut/as-cut.ts";
import { usePlan } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";

interface Search {
  /** What it belongs to. */
  readonly of: AsCutAnswer | null;
  /** Share done while it runs, null when nothing runs. */
  readonly share: number | null;
  readonly answer: Adjusted | null;
  readonly failed: boolean;
}
const NOTHING: Search = { of: null, share: null, answer: null, failed: false };

/** Begins by itself with each new fit; `look` begins again after a stop. */
export function useAdjusted(fit: AsCutAnswer) {
  const planned = usePlan();
  const [search, setSearch] = useState<Search>(NOTHING);
  const control = useRef<AbortController | null>(null);
  const look = useCallback(async () => {
    control.current?.abort();
    const own = new AbortController();
    control.current = own;
    setSearch({ ...NOTHING, of: fit, share: 0 });
    try {
      const answer = await benchPool.run(
        "adjust",
        { planned, resolved: fit.resolved },
        {
          signal: own.signal,
          onProgress: (share) => control.current === own && setSearch((now) => ({ ...now, share })),
        },
      );
      if (control.current === own) setSearch({ ...NOTHING, of: fit, answer });
    } catch {
      // Stopped by hand it is no failure; anything else is told.
      if (control.current === own) setSearch({ ...NOTHING, of: fit, failed: !own.signal.aborted });
    }
  }, [planned, fit]);
  useEffect(() => {
    void look();
    return () => {
      control.current?.abort();
      control.current = null;
    };
  }, [look]);
  return { search: search.of === fit ? search : NOTHING, look, stop: () => control.current?.abort() };
}
