/** A large place to press and hold; a ring closes while it is held. */
import { type ReactNode, useRef } from "react";
import { useHold } from "./use-hold.ts";

const RADIUS = 20;
const ROUND = 2 * Math.PI * RADIUS;

/** The ring, open at 0 and closed at 1. */
function HoldRing({ share }: { share: number }) {
  return (
    <svg className="lap-ring" viewBox="0 0 48 48" aria-hidden="true">
      <circle className="lap-ring-track" cx={24} cy={24} r={RADIUS} />
      <circle
        className="lap-ring-part"
        cx={24}
        cy={24}
        r={RADIUS}
        strokeDasharray={`${ROUND * share} ${ROUND}`}
        transform="rotate(-90 24 24)"
      />
    </svg>
  );
}

export function HoldButton({
  label,
  children,
  className = "",
  isDisabled = false,
  keyShare = 0,
  onHeld,
}: {
  /** What a screen reader says; it says that the press is held. */
  label: string;
  children: ReactNode;
  className?: string;
  isDisabled?: boolean;
  /** Share held by a key somewhere else on the page. */
  keyShare?: number;
  onHeld: () => void;
}) {
  const { share, handlers, begin, end } = useHold(onHeld);
  const hadPointer = useRef(false);
  return (
    <button
      type="button"
      className={`lap-hold ${className}`}
      aria-label={label}
      disabled={isDisabled}
      {...handlers}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        event.stopPropagation();
        if (!event.repeat) begin();
      }}
      onKeyUp={(event) => {
        // Space would press the button when let go.
        if (event.key === " ") event.preventDefault();
        end();
      }}
      onBlur={end}
      onPointerDown={(event) => {
        hadPointer.current = true;
        handlers.onPointerDown(event);
      }}
      onClick={() => {
        // The click after a finger, a drop or a wipe is none; a screen reader's own press comes without a pointer, and is meant.
        if (!hadPointer.current) onHeld();
        hadPointer.current = false;
      }}
    >
      <HoldRing share={Math.max(share, keyShare)} />
      <span>{children}</span>
    </button>
  );
}
