/** A figure typed on a profile handle: what is typed so far, and how it becomes the tier's angle with Enter or on leaving. */
import { type KeyboardEvent, useRef, useState } from "react";
import { parseAngle } from "../../../words/format.ts";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";

export interface TypedAngle {
  /** Null while nothing is typed. */
  readonly text: string | null;
  /** @returns whether the key belongs to a figure */
  readonly onKey: (event: KeyboardEvent) => boolean;
  readonly enter: () => void;
}

/** @param tierId of the handle that has the focus */
export function useTypedAngle(tierId: string | null): TypedAngle {
  const studio = useStudioStore();
  const { cuttingAngle } = useFormat();
  const [text, show] = useState<string | null>(null);
  /** Keys come faster than pictures are drawn. */
  const typed = useRef<string | null>(null);
  const put = (next: string | null) => {
    typed.current = next;
    show(next);
  };
  const enter = (): void => {
    const angle = typed.current === null ? null : parseAngle(typed.current);
    put(null);
    if (angle === null || tierId === null) return;
    const armAngleDeg = cuttingAngle ? 90 - angle : angle;
    // What no arm can do the plan refuses in words, at the foot of the page.
    studio.getState().dispatch({ type: "change-tier", tierId, change: { armAngleDeg } });
  };
  const onKey = ({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean => {
    const now = typed.current;
    if (/^[0-9.,]$/.test(key) && !ctrlKey && !metaKey && !altKey) put((now ?? "") + key);
    else if (now === null) return false;
    else if (key === "Enter") enter();
    else if (key === "Backspace") put(now.slice(0, -1) || null);
    else if (key === "Escape") put(null);
    else return false;
    return true;
  };
  return { text, onKey, enter };
}
