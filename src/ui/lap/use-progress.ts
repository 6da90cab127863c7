/** Steps done of the work in hand, kept as they are done. */
import { useState } from "react";
import { type Done, loadDone, saveDone } from "./progress.ts";
import { browserShelf } from "./shelf.ts";

export interface Progress {
  readonly done: Done;
  /** False when the browser would not keep the last step. */
  readonly isKept: boolean;
  readonly add: (key: string) => void;
  readonly back: () => void;
  readonly clear: () => void;
}

export function useProgress(work: string): Progress {
  const [state, setState] = useState(() => ({ work, done: loadDone(browserShelf(), work), isKept: true }));
  if (state.work !== work) setState({ work, done: loadDone(browserShelf(), work), isKept: true });
  const put = (done: Done) => setState({ work, done, isKept: saveDone(browserShelf(), work, done) });
  return {
    done: state.done,
    isKept: state.isKept,
    add: (key) => put([...state.done, key]),
    back: () => put(state.done.slice(0, -1)),
    clear: () => put([]),
  };
}
