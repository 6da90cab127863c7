/** One of a few: in a form with its label above, or as words inside a sentence. */
import { lazy, Suspense, useId } from "react";
import { Button } from "react-aria-components/Button";
import { useFloat } from "./use-float.ts";
import "./controls.css";

interface Option<Id extends string> {
  readonly id: Id;
  readonly words: string;
  readonly detail?: string;
  readonly isDisabled?: boolean;
}

export interface ChoiceProps<Id extends string> {
  readonly label: string;
  readonly value: Id;
  readonly options: readonly Option<Id>[];
  readonly onChange: (id: Id) => void;
  readonly inline?: boolean;
  readonly isDisabled?: boolean;
}

const bring = () => import("./ChoiceList.tsx");
const ChoiceList = lazy(bring) as unknown as typeof import("./ChoiceList.tsx").default;

/** A select. */
export function Choice<Id extends string>(props: ChoiceProps<Id>) {
  const { label, value, options, inline = false, isDisabled = false } = props;
  const id = useId();
  const { isOpen, float, press } = useFloat(bring);
  return (
    <span className={inline ? "choice choice-inline" : "choice"}>
      <span id={`${id}-label`} className={inline ? "unseen" : "field-label"}>
        {label}
      </span>
      <Button
        {...press}
        className="choice-button"
        aria-haspopup="listbox"
        aria-labelledby={`${id}-value ${id}-label`}
        isDisabled={isDisabled}
      >
        <span id={`${id}-value`}>{options.find((option) => option.id === value)?.words ?? ""}</span>
        <span className="choice-mark" aria-hidden="true" />
      </Button>
      {isOpen ? (
        <Suspense fallback={null}>
          <ChoiceList {...props} float={float} />
        </Suspense>
      ) : null}
    </span>
  );
}
