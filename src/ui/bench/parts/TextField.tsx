/** A short text with its label above; leaving it empty is allowed. */
import { useId, useState } from "react";
import { TEXT } from "../../../core/plan/limits.ts";

export function TextField({
  label,
  value,
  placeholder,
  description,
  onChange,
}: {
  label: string;
  value: string;
  placeholder?: string;
  description?: string;
  onChange: (text: string) => void;
}) {
  const [draft, setDraft] = useState<string | null>(null);
  const id = useId();
  const commit = () => {
    if (draft !== null && draft.trim() !== value) onChange(draft.trim());
    setDraft(null);
  };
  return (
    <span className="number">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <span className="number-box">
        <input
          id={id}
          type="text"
          autoComplete="off"
          maxLength={TEXT.label}
          placeholder={placeholder}
          value={draft ?? value}
          style={{ inlineSize: "6ch" }}
          aria-describedby={`${id}-hint`}
          onChange={(event) => setDraft(event.currentTarget.value)}
          onBlur={commit}
          onKeyDown={(event) => event.key === "Enter" && commit()}
        />
      </span>
      <span className="field-hint" id={`${id}-hint`}>
        {description}
      </span>
    </span>
  );
}
