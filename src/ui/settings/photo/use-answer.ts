/** An answer from a worker that follows its question. */
import { useEffect, useState } from "react";

/** Edits in a row are one question. */
const PAUSE_MS = 120;

/** The last question's answer only (the same object: the same question); null until there is one. */
export function useAnswer<Q extends object, A>(
  question: Q | null,
  ask: (question: Q, signal: AbortSignal) => Promise<A>,
): A | null {
  const [answer, setAnswer] = useState<A | null>(null);
  const [trouble, setTrouble] = useState<unknown>(null);
  useEffect(() => {
    if (!question) return;
    const over = new AbortController();
    const timer = setTimeout(() => {
      ask(question, over.signal).then(setAnswer, (error) => {
        if (!over.signal.aborted) setTrouble(error);
      });
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      over.abort();
    };
  }, [question, ask]);
  if (trouble) throw trouble;
  return answer;
}
