/**
 * Dragging a tier in any picture, by mouse, touch, pen or keys: one way of taking hold, one undo step, Escape puts the
 * document back. A picture says what its movements mean; everything else is here.
 */
import { useEffect, useMemo, useRef, useState } from "react";
import { useViewport } from "../../piece/viewport.ts";
import { createHold, type DragPicture, type LiveDrag, type TierHold } from "./tier-hold.ts";

export interface TierDragHook extends Omit<TierHold, "isDragging" | "finish"> {
  readonly live: LiveDrag | null;
}

export function useTierDrag(meaning: DragPicture): TierDragHook {
  const viewport = useViewport();
  const [live, setLive] = useState<LiveDrag | null>(null);
  const latest = useRef(meaning);
  latest.current = meaning;
  const hold = useMemo(() => createHold(viewport, () => latest.current, setLive), [viewport]);

  // Escape is heard wherever the focus is, before anything else that listens for it; a picture that goes away lets go.
  useEffect(() => {
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || !hold.isDragging()) return;
      event.preventDefault();
      event.stopPropagation();
      hold.finish("cancel");
    };
    window.addEventListener("keydown", onEscape, true);
    return () => {
      window.removeEventListener("keydown", onEscape, true);
      hold.finish("end");
    };
  }, [hold]);

  return useMemo(() => ({ ...hold, live }), [hold, live]);
}
