/** Any key, or a pedal that sends one, held as long as a finger: for hands that can't touch the screen. */
import { useEffect, useRef } from "react";
import { useHold } from "./use-hold.ts";

/** Keys that belong to the browser or to moving about the page. */
const LEFT_ALONE = new Set([
  "Tab",
  "Escape",
  "Shift",
  "Control",
  "Alt",
  "Meta",
  "CapsLock",
  "F5",
  "F11",
  "F12",
]);
/** The way back: held too. */
const BACK_KEYS = new Set(["Backspace", "Delete", "ArrowLeft", "ArrowUp", "PageUp"]);

const isText = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest("input, textarea, select, [role=slider]") !== null;

export function useKeyHold(onNext: () => void, onBack: () => void) {
  const wantsBack = useRef(false);
  const { share, begin, end } = useHold(() => (wantsBack.current ? onBack() : onNext()));
  useEffect(() => {
    const down = (event: KeyboardEvent) => {
      if (
        event.defaultPrevented ||
        LEFT_ALONE.has(event.key) ||
        event.ctrlKey ||
        event.metaKey ||
        event.altKey
      )
        return;
      if (isText(event.target)) return;
      // Other buttons of the page keep Enter and Space; every other key is the pedal.
      const isOnButton = event.target instanceof HTMLButtonElement;
      if (isOnButton && (event.key === "Enter" || event.key === " ")) return;
      event.preventDefault();
      event.stopPropagation();
      if (event.repeat) return;
      wantsBack.current = BACK_KEYS.has(event.key);
      begin();
    };
    // Caught before the app's own keys, which mean other things elsewhere.
    window.addEventListener("keydown", down, true);
    window.addEventListener("keyup", end, true);
    window.addEventListener("blur", end);
    return () => {
      window.removeEventListener("keydown", down, true);
      window.removeEventListener("keyup", end, true);
      window.removeEventListener("blur", end);
    };
  }, [begin, end]);
  return { nextShare: wantsBack.current ? 0 : share, backShare: wantsBack.current ? share : 0 };
}
