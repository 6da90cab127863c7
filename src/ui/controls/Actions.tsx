/** A list of things to do, behind one word. */
import { lazy, Suspense } from "react";
import { Button } from "react-aria-components/Button";
import { useFloat } from "./use-float.ts";
import "./controls.css";

export interface Action {
  readonly id: string;
  readonly words: string;
  readonly keys?: string;
  readonly isDisabled?: boolean;
  readonly run: () => void;
}

const bring = () => import("./ActionList.tsx");
const ActionList = lazy(bring);

/** A menu button. */
export function Actions({
  label,
  shown,
  actions,
}: {
  /** What a screen reader says. */
  label: string;
  /** What is seen, the label when missing. */
  shown?: string;
  actions: readonly Action[];
}) {
  const { isOpen, float, press } = useFloat(bring);
  return (
    <>
      <Button {...press} className="press press-plain" aria-haspopup="menu" aria-label={label}>
        {shown ?? label}
      </Button>
      {isOpen ? (
        <Suspense fallback={null}>
          <ActionList label={label} actions={actions} float={float} />
        </Suspense>
      ) : null}
    </>
  );
}
