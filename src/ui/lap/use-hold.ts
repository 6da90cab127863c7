/**
 * A press that counts only when it is held: a droplet, a sleeve or a brush along the screen is too short, moves, or comes with others, and
 * does nothing. Time and movement are judged here, away from the screen, so that they can be tested.
 */
import { useCallback, useEffect, useRef, useState } from "react";

export const HOLD_MS = 600;
/** A finger rests within this; a wipe does not. */
const STILL_PX = 24;

interface HoldHandlers {
  readonly onPointerDown: (event: PointerLike) => void;
  readonly onPointerMove: (event: PointerLike) => void;
  readonly onPointerUp: () => void;
  readonly onPointerCancel: () => void;
  readonly onPointerLeave: () => void;
  readonly onContextMenu: (event: { preventDefault: () => void }) => void;
}
interface PointerLike {
  readonly clientX: number;
  readonly clientY: number;
  readonly isPrimary: boolean;
  readonly button: number;
}

/** @returns share held, 0..1 (0 when nothing is held), handlers, and begin/end for keys */
export function useHold(onHeld: () => void) {
  const [share, setShare] = useState(0);
  const from = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const frame = useRef(0);
  const held = useRef(onHeld);
  held.current = onHeld;

  const end = useCallback(() => {
    cancelAnimationFrame(frame.current);
    frame.current = 0;
    from.current = null;
    setShare(0);
  }, []);

  const begin = useCallback(() => {
    if (frame.current !== 0) return;
    const start = performance.now();
    const tick = (now: number) => {
      const part = (now - start) / HOLD_MS;
      if (part >= 1) {
        end();
        held.current();
        return;
      }
      setShare(Math.max(0, part));
      frame.current = requestAnimationFrame(tick);
    };
    frame.current = requestAnimationFrame(tick);
  }, [end]);

  useEffect(() => end, [end]);

  const handlers: HoldHandlers = {
    onPointerDown: (event) => {
      // A second touch beside the first is a palm or water: neither counts.
      if (!event.isPrimary || event.button !== 0) return end();
      from.current = { x: event.clientX, y: event.clientY };
      begin();
    },
    onPointerMove: (event) => {
      const start = from.current;
      if (start && Math.hypot(event.clientX - start.x, event.clientY - start.y) > STILL_PX) end();
    },
    onPointerUp: end,
    onPointerCancel: end,
    onPointerLeave: end,
    onContextMenu: (event) => event.preventDefault(),
  };
  return { share, handlers, begin, end };
}
