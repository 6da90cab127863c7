/**
 * An answer that takes a while: asked again when the question changes, one question at a time. Questions that came and went while
 * another was under way are skipped. The last answer stays until the next is there, and says which question it is to.
 */
import { useEffect, useRef, useState } from "react";

export interface Asked<Q, A> {
  /** The question that `answer` or `error` belongs to. */
  readonly question: Q | null;
  readonly answer: A | null;
  readonly isWaiting: boolean;
  readonly error: Error | null;
}

const asError = (reason: unknown): Error => (reason instanceof Error ? reason : new Error(String(reason)));

/** @param ask must not change between renders; @param question compared by identity, null asks nothing */
export function useAsked<Q, A>(question: Q | null, ask: (question: Q) => Promise<A>): Asked<Q, A> {
  const [state, setState] = useState<Omit<Asked<Q, A>, "isWaiting">>({
    question: null,
    answer: null,
    error: null,
  });
  const wanted = useRef<Q | null>(question);
  const isBusy = useRef(false);
  const isHere = useRef(true);

  useEffect(() => {
    isHere.current = true;
    return () => {
      isHere.current = false;
    };
  }, []);

  useEffect(() => {
    wanted.current = question;
    const work = async () => {
      isBusy.current = true;
      let asked: Q | null = null;
      while (isHere.current && wanted.current !== null && wanted.current !== asked) {
        asked = wanted.current;
        try {
          const answer = await ask(asked);
          setState({ question: asked, answer, error: null });
        } catch (reason) {
          setState({ question: asked, answer: null, error: asError(reason) });
        }
      }
      isBusy.current = false;
    };
    if (!isBusy.current) void work();
  }, [question, ask]);

  return { ...state, isWaiting: question !== null && state.question !== question };
}
