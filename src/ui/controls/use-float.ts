/**
 * A list that floats beside its button. What the list is made of comes when a hand is near the button: the page opens
 * without it, and opens sooner.
 */
import { useRef, useState } from "react";
import type { ButtonProps } from "react-aria-components/Button";

type KeyboardEvent = Parameters<NonNullable<ButtonProps["onKeyDown"]>>[0];

export function useFloat(bring: () => Promise<unknown>) {
  const trigger = useRef<HTMLButtonElement>(null);
  const [isOpen, setOpen] = useState(false);
  // One that can't be brought now (the network went) is asked for again when the list is opened, where its failure shows.
  const near = () => void bring().catch(() => {});
  return {
    isOpen,
    /** For the list. */
    float: { triggerRef: trigger, isOpen, onOpenChange: setOpen },
    /** For the button. */
    press: {
      ref: trigger,
      "aria-expanded": isOpen,
      onHoverStart: near,
      onFocus: near,
      onPressStart: near,
      onPress: () => setOpen(true),
      onKeyDown: (event: KeyboardEvent) => {
        // every other key is the page's
        if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return event.continuePropagation();
        event.preventDefault();
        setOpen(true);
      },
    },
  };
}

/** What a floating list is told by its button. */
export type Float = ReturnType<typeof useFloat>["float"];
