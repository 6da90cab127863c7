/** A number that may be missing: an empty field says that nothing was measured. What can't be read stays, and is said. */
import { useId, useState } from "react";
import type { Range } from "../../../core/plan/limits.ts";
import { isWithin } from "../../../core/plan/limits.ts";
import { formatLength, parseAngle } from "../../../words/format.ts";
import { benchWords } from "../../messages/bench.ts";
import { controlWords } from "../../messages/controls.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import "../../controls/controls.css";

export interface MaybeFieldProps {
  readonly label: string;
  readonly value: number | undefined;
  readonly range: Range;
  /** `undefined` when the field was emptied. */
  readonly onChange: (value: number | undefined) => void;
  readonly kind?: "length" | "angle" | "plain";
  readonly digits?: number;
  readonly unit?: string;
  readonly description?: string;
}

function useNumberHabits(kind: "length" | "angle" | "plain", digits: number, unit: string | undefined) {
  const format = useFormat();
  if (kind === "length")
    return {
      unit: format.figure(0).unit,
      show: (mm: number) => formatLength(mm, format.unit, format.locale, digits).figure,
      read: format.parseLength,
    };
  return {
    unit: unit ?? (kind === "angle" ? "°" : ""),
    show: (v: number) => format.number(v, digits),
    read: parseAngle,
  };
}

export function MaybeField(props: MaybeFieldProps) {
  const { label, value, range, onChange, kind = "length", digits = 1, description } = props;
  const words = useWords(controlWords);
  const bench = useWords(benchWords);
  const habits = useNumberHabits(kind, digits, props.unit);
  const [draft, setDraft] = useState<string | null>(null);
  const id = useId();
  const shown = value === undefined ? "" : habits.show(value);
  const read = draft === null || draft.trim() === "" ? undefined : (habits.read(draft) ?? Number.NaN);
  const isWrong = read !== undefined && !isWithin(range, read);
  const commit = () => {
    if (draft === null || isWrong) return;
    if (draft.trim() !== shown) onChange(read);
    setDraft(null);
  };
  const allowed = words.between(habits.show(range.min), habits.show(range.max), habits.unit);
  return (
    <span className="number" data-wrong={isWrong || undefined}>
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <span className="number-box">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          placeholder={bench.notMeasured}
          aria-invalid={isWrong || undefined}
          aria-describedby={`${id}-hint`}
          value={draft ?? shown}
          style={{ inlineSize: `${Math.max(5, (draft ?? shown).length) + 0.4}ch` }}
          onChange={(event) => setDraft(event.currentTarget.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === "Enter") commit();
            if (event.key === "Escape") setDraft(null);
          }}
        />
        {habits.unit ? <span className="unit">{habits.unit}</span> : null}
      </span>
      <span className="field-hint" id={`${id}-hint`} role={isWrong ? "alert" : undefined}>
        {isWrong ? words.notAllowed(allowed) : description}
      </span>
    </span>
  );
}
