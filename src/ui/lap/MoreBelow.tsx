/** What a step says; where it is longer than the screen, a word at its foot says so and leads on. Nothing is cut without saying so. */
import { type ReactNode, useCallback, useEffect, useRef, useState } from "react";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";

/** Less than this hidden is a margin, not words. */
const HIDDEN_PX = 8;

export function MoreBelow({ children }: { children: ReactNode }) {
  const words = useWords(lapWords);
  const box = useRef<HTMLDivElement>(null);
  const [isMore, setMore] = useState(false);
  const look = useCallback(() => {
    const at = box.current;
    if (at) setMore(at.scrollHeight - at.clientHeight - at.scrollTop > HIDDEN_PX);
  }, []);
  useEffect(() => {
    const watch = new ResizeObserver(look);
    if (box.current) watch.observe(box.current);
    if (box.current?.firstElementChild) watch.observe(box.current.firstElementChild);
    return () => watch.disconnect();
  }, [look]);
  return (
    <div className="lap-step-room">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long step must be scrolled by keyboard too */}
      <div ref={box} className="lap-step" aria-live="polite" aria-atomic="true" tabIndex={0} onScroll={look}>
        <div className="lap-step-words">{children}</div>
      </div>
      {isMore ? (
        <button
          type="button"
          className="lap-more"
          onClick={() => box.current?.scrollBy({ top: box.current.clientHeight * 0.8 })}
        >
          {words.moreBelow}
        </button>
      ) : null}
    </div>
  );
}
