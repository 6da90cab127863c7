/** A name that is edited where it stands. Enter or leaving sets it, Escape brings the old one back. */
import { useId, useState } from "react";
import { TEXT } from "../../../core/plan/limits.ts";

export function NameField({
  label,
  value,
  placeholder,
  className = "",
  onChange,
}: {
  label: string;
  value: string;
  placeholder: string;
  className?: string;
  onChange: (name: string) => void;
}) {
  const id = useId();
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    if (draft !== null && draft.trim() !== value) onChange(draft.trim());
    setDraft(null);
  };
  return (
    <>
      <label className="unseen" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className={`name ${className}`}
        type="text"
        maxLength={TEXT.name}
        spellCheck={false}
        autoComplete="off"
        placeholder={placeholder}
        value={draft ?? value}
        onChange={(event) => setDraft(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === "Enter") event.currentTarget.blur();
          if (event.key === "Escape") setDraft(null);
        }}
      />
    </>
  );
}
