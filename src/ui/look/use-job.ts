/** A piece of work that takes a while: how far it is, how it is stopped, what went wrong. One at a time. */
import { useEffect, useRef, useState } from "react";

export interface Job {
  /** Share done, 0 .. 1; null while nothing runs. */
  readonly share: number | null;
  readonly trouble: string | null;
  /** Runs `work`; a job under way is stopped first. Being stopped is no trouble. */
  readonly start: (work: (signal: AbortSignal, onShare: (share: number) => void) => Promise<void>) => void;
  readonly stop: () => void;
}

export function useJob(): Job {
  const [share, setShare] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);

  const stop = () => running.current?.abort();
  const start: Job["start"] = (work) => {
    stop();
    const mine = new AbortController();
    running.current = mine;
    setTrouble(null);
    setShare(0);
    const isMine = () => running.current === mine;
    work(mine.signal, (done) => {
      if (isMine()) setShare(done);
    })
      .catch((error) => {
        if (!mine.signal.aborted) setTrouble(error instanceof Error ? error.message : String(error));
      })
      .finally(() => {
        if (isMine()) setShare(null);
      });
  };
  return { share, trouble, start, stop };
}
