/** Keeps the screen on while the page is seen. Says whether it works: a phone that can't be told needs its own setting. */
import { useEffect, useState } from "react";

export type Awake = "on" | "asking" | "cannot";

export function useWakeLock(): Awake {
  const [awake, setAwake] = useState<Awake>("asking");
  useEffect(() => {
    if (!("wakeLock" in navigator)) {
      setAwake("cannot");
      return;
    }
    let lock: WakeLockSentinel | null = null;
    let isGone = false;
    const ask = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        const granted = await navigator.wakeLock.request("screen");
        if (isGone) return void granted.release();
        lock = granted;
        setAwake("on");
      } catch {
        if (!isGone) setAwake("cannot"); // refused, for example on a low battery
      }
    };
    void ask();
    // The browser lets go whenever the page is hidden.
    document.addEventListener("visibilitychange", ask);
    return () => {
      isGone = true;
      document.removeEventListener("visibilitychange", ask);
      void lock?.release();
    };
  }, []);
  return awake;
}
