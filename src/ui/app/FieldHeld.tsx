/** The field that one is in stays under the hand while what stands above it grows: mends come when they are found. Shows nothing. */
import { type RefObject, useEffect } from "react";

const FIELD = "input, textarea";

/**
 * Keeps the focused field of a column that scrolls where it is in the window (what scroll anchoring does for what stands at the
 * column's top).
 * @returns how to stop
 */
function holdField(column: HTMLElement): () => void {
  let held: { readonly field: Element; readonly scroller: Element; top: number; scrolled: number } | null =
    null;
  const topOf = (field: Element): number => field.getBoundingClientRect().top;
  const restore = (): void => {
    if (!held || held.field !== document.activeElement || !held.field.isConnected) return;
    const { field, scroller } = held;
    scroller.scrollTop += topOf(field) - held.top;
    held.scrolled = scroller.scrollTop;
    // at an end of the column there is no room for all of it
    held.top = topOf(field);
  };
  const growth = new ResizeObserver(restore);
  const letGo = (): void => {
    growth.disconnect();
    column.style.overflowAnchor = "";
    held = null;
  };
  const hold = (): void => {
    letGo();
    const field = document.activeElement;
    if (!field?.matches(FIELD) || !column.contains(field)) return;
    const scroller =
      column.scrollHeight > column.clientHeight ? column : (document.scrollingElement ?? column);
    held = { field, scroller, top: topOf(field), scrolled: scroller.scrollTop };
    column.style.overflowAnchor = "none";
    for (const part of column.children) growth.observe(part);
  };
  /** A scroll by hand, or into view, takes the field along. */
  const follow = (): void => {
    if (!held) return;
    held.top -= held.scroller.scrollTop - held.scrolled;
    held.scrolled = held.scroller.scrollTop;
  };
  column.addEventListener("focusin", hold);
  column.addEventListener("focusout", letGo);
  document.addEventListener("scroll", follow, { capture: true, passive: true });
  // a window of another size, or a keyboard on it, lays out anew
  window.addEventListener("resize", hold);
  hold();
  return () => {
    letGo();
    column.removeEventListener("focusin", hold);
    column.removeEventListener("focusout", letGo);
    document.removeEventListener("scroll", follow, { capture: true });
    window.removeEventListener("resize", hold);
  };
}

export default function FieldHeld({ column }: { column: RefObject<HTMLElement | null> }) {
  useEffect(() => (column.current ? holdField(column.current) : undefined), [column]);
  return null;
}
