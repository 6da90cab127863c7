/** The piece turns slowly about its own axis, as on a turntable, while one looks. */
import { useEffect } from "react";
import { useViewport } from "../piece/viewport.ts";
import { useLook } from "./look-settings.ts";

/** One turn takes 40 seconds. */
const DEG_PER_MS = 360 / 40_000;
/** A page that slept is not made up for. */
const LONGEST_STEP_MS = 100;

export function useTurntable() {
  const { eye } = useViewport();
  const isTurning = useLook((settings) => settings.isTurning);
  useEffect(() => {
    if (!isTurning || eye.wantsStillness()) return;
    let last: number | null = null;
    let request = 0;
    const turn = (now: number) => {
      const step = Math.min(LONGEST_STEP_MS, now - (last ?? now));
      last = now;
      const { view } = eye.getState();
      if (step > 0) eye.setView({ ...view, azimuthDeg: view.azimuthDeg - step * DEG_PER_MS });
      request = requestAnimationFrame(turn);
    };
    request = requestAnimationFrame(turn);
    return () => cancelAnimationFrame(request);
  }, [isTurning, eye]);
}
