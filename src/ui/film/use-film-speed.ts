/** How fast a film would be made on this device, found out by tracing a part of it. */
import { useEffect, useState } from "react";
import { useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";
import { samplesIn } from "./effort.ts";
import { type FilmWish, probeFilm } from "./make-film.ts";

/** Milliseconds a sample; null while that is being found out. It is asked anew where another film takes another time for each. */
export function useFilmSpeed(
  wish: FilmWish,
  isAsked: boolean,
  onTrouble: (why: string) => void,
): number | null {
  const studio = useStudioStore();
  const plan = usePlan();
  const { loop, partsLight: parts, width, height } = wish;
  const key = `${loop} ${parts} ${width / height}`;
  const [found, setFound] = useState<{ key: string; plan: object; speed: number } | null>(null);
  const isKnown = found?.key === key && found.plan === plan;
  useEffect(() => {
    if (!isAsked || isKnown) return;
    const over = new AbortController();
    probeFilm(studio, plan, wish, over.signal).then(
      (ms) => setFound({ key, plan, speed: ms / samplesIn({ rate: 1, ...wish }) }),
      (error: unknown) => {
        if (!over.signal.aborted) onTrouble(error instanceof Error ? error.message : String(error));
      },
    );
    return () => over.abort();
  }, [isAsked, isKnown, key, plan, wish, onTrouble, studio]);
  return isKnown ? found.speed : null;
}
