/** An idea as it looks when one walks past: pictures from one lean to the next, traced the middle first. */
import { useEffect, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { useTracing } from "../look/traced.ts";
import { useStudioStore } from "../studio.ts";
import { leaning, traceIdea } from "./tracing.ts";

/** Degrees, in the order in which they are traced. */
const LEANS = [0, -10, 10, -20, 20, -5, 5, -15, 15] as const;
export const MOST_LEAN = 20;
/**
 * A picture is smoothed where both its halves have as much: after every 8 samples. Where the processor traces, every second of them has to do, and coarser: the walk is there before one has gone on.
 */
const ON_CARD = { leans: LEANS, size: 192, samples: 16 } as const;
const IN_SOFTWARE = { leans: LEANS.slice(0, 5), size: 128, samples: 8 } as const;

/** Leans are traced: what can't be is not offered. */
export const useCanLean = (): boolean => useTracing()?.check.pass !== false;

export interface Leans {
  /** The picture nearest to a lean; null while there is none. */
  readonly at: (deg: number) => string | null;
  /** How many of all are there. */
  readonly done: number;
  readonly of: number;
}

/** @param isOn whether they are wanted: nothing is traced before */
export function useLeans(plan: Plan, isOn: boolean): Leans {
  const studio = useStudioStore();
  const [found, setFound] = useState<{ plan: Plan; urls: ReadonlyMap<number, string> } | null>(null);
  const check = useTracing()?.check;
  const canTrace = check?.pass ?? false;
  const { leans, size, samples } = check?.code === "software" ? IN_SOFTWARE : ON_CARD;
  useEffect(() => {
    if (!isOn || !canTrace) return;
    const stop = new AbortController();
    const work = async () => {
      const urls = new Map<number, string>();
      for (const deg of leans) {
        urls.set(deg, await traceIdea(studio, plan, { view: leaning(deg), size, samples }, stop.signal));
        setFound({ plan, urls: new Map(urls) });
      }
    };
    // what is there by then stays; a lost card is told beside the wall
    work().catch(() => undefined);
    return () => stop.abort();
  }, [plan, isOn, canTrace, leans, size, samples, studio]);
  const urls = found?.plan === plan ? found.urls : new Map<number, string>();
  const nearest = (deg: number) =>
    [...urls].sort(([a], [b]) => Math.abs(a - deg) - Math.abs(b - deg))[0]?.[1] ?? null;
  return { at: nearest, done: urls.size, of: leans.length };
}
