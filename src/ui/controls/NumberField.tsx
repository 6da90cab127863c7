/**
 * A number with its unit, typed as the person writes it: "36.5", "36,5", "1 3/16 in".
 * Nothing typed is thrown away: what can't be read or isn't allowed stays in the field with what is allowed said below,
 * and the value keeps what it was. Enter or leaving the field sets it, Escape brings the old figure back, arrow keys step
 * (Shift: ten steps, Alt: a tenth), the wheel steps only while the field has the focus.
 */
import {
  type CSSProperties,
  type KeyboardEvent,
  type ReactNode,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { controlWords } from "../messages/controls.ts";
import { useWords } from "../messages/words.tsx";
import "./controls.css";

export interface NumberFieldProps {
  /** Visible in a form; in a sentence the words around it say it, and it shows as a caption while the field has the focus. */
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly format: (value: number) => string;
  readonly parse: (text: string) => number | null;
  /** Set smaller, after the figure. */
  readonly unit?: string;
  /** What is allowed, in words with units; made from min and max when missing. */
  readonly allowed?: string;
  /** Stands inside running text. */
  readonly inline?: boolean;
  readonly description?: string;
  readonly isDisabled?: boolean;
  /** Shown with what is allowed, only while somebody is at the field. */
  readonly beside?: ReactNode;
  readonly onFocus?: () => void;
}

const COARSE = 10;
const FINE = 0.1;
/** A range may be open: then its end is the largest number there is. */
const hasEnd = (limit: number): boolean => Math.abs(limit) < Number.MAX_VALUE;
/** Rounds a stepped value to a clean multiple of the step, so that 0.1 + 0.2 reads 0.3. */
const clean = (value: number, step: number): number => {
  const digits = Math.max(0, Math.ceil(-Math.log10(step)) + 2);
  return Number(value.toFixed(digits));
};

/** The text being typed, what is wrong with it, and how it becomes a value. */
function useDraft({ value, format, parse, min, max, onChange }: NumberFieldProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const read = draft === null ? value : parse(draft);
  const wrong = draft !== null && (read === null || !Number.isFinite(read) || read < min || read > max);

  const commit = () => {
    if (draft === null || wrong) return;
    // A figure that reads the same is no change: what was kept may have more digits than are shown.
    if (draft.trim() !== format(value).trim() && read !== null) onChange(read);
    setDraft(null);
  };
  const step = (by: number, size: number) => {
    const from = read === null || wrong ? value : read;
    const next = Math.min(max, Math.max(min, clean(from + by * size, size)));
    setDraft(null);
    if (next !== value) onChange(next);
  };
  return { text: draft ?? format(value), draft, setDraft, wrong, commit, step };
}

const BORDER_PX = 8;

/** Keeps what shows beside a field within the column that scrolls: it may begin farther left, and never widens it. */
function useWithinColumn(isShown: boolean) {
  const element = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const caption = element.current;
    if (!caption || !isShown) return;
    caption.style.translate = "";
    const column = caption.closest(".side, [role=dialog]");
    const end = column ? column.getBoundingClientRect().left + column.clientWidth : window.innerWidth;
    const over = caption.getBoundingClientRect().right + BORDER_PX - end;
    if (over > 0) caption.style.translate = `${-over}px 0`;
  });
  return element;
}

export function NumberField(props: NumberFieldProps) {
  const { label, value, min, max, step, format, unit, inline = false, description, isDisabled } = props;
  const words = useWords(controlWords);
  const field = useDraft(props);
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [focused, setFocused] = useState(false);

  // The wheel listener must be able to stop the page from scrolling, which React's own does not allow.
  const stepRef = useRef(field.step);
  stepRef.current = field.step;
  useEffect(() => {
    const element = input.current;
    if (!element || !focused) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      stepRef.current(event.deltaY < 0 ? 1 : -1, step);
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [focused, step]);

  const onKeyDown = (event: KeyboardEvent) => {
    const size = event.shiftKey ? step * COARSE : event.altKey ? step * FINE : step;
    if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      event.preventDefault();
      field.step(event.key === "ArrowUp" ? 1 : -1, size);
    } else if (event.key === "Enter") field.commit();
    else if (event.key === "Escape" && field.draft !== null) {
      event.preventDefault();
      event.stopPropagation();
      field.setDraft(null);
    }
  };

  const isBounded = hasEnd(min) && hasEnd(max);
  const allowed =
    props.allowed ?? (isBounded ? words.between(format(min), format(max), unit ?? "") : words.anyNumber);
  const showHint = inline && (focused || field.wrong);
  const caption = useWithinColumn(showHint);
  return (
    <span className={inline ? "number number-inline" : "number"} data-wrong={field.wrong || undefined}>
      <label className={inline ? "unseen" : "field-label"} htmlFor={id}>
        {label}
      </label>
      <span className="number-box">
        <input
          ref={input}
          id={id}
          type="text"
          inputMode="decimal"
          role="spinbutton"
          autoComplete="off"
          spellCheck={false}
          data-draft={field.draft !== null || undefined}
          disabled={isDisabled}
          aria-valuenow={value}
          aria-valuemin={hasEnd(min) ? min : undefined}
          aria-valuemax={hasEnd(max) ? max : undefined}
          aria-valuetext={`${format(value)} ${unit ?? ""}`.trim()}
          aria-invalid={field.wrong || undefined}
          aria-describedby={`${id}-allowed`}
          value={field.text}
          style={{ "--characters": field.text.length } as CSSProperties}
          onFocus={(event) => {
            setFocused(true);
            event.currentTarget.select();
            props.onFocus?.();
          }}
          onBlur={() => {
            setFocused(false);
            field.commit();
          }}
          onChange={(event) => field.setDraft(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
        {unit ? <span className="unit">{unit}</span> : null}
      </span>
      {inline ? (
        <span ref={caption} className="field-caption" id={`${id}-allowed`} data-shown={showHint || undefined}>
          <b>{label}</b> {field.wrong ? words.notAllowed(allowed) : allowed}
          {focused ? props.beside : null}
        </span>
      ) : (
        <span className="field-hint" id={`${id}-allowed`} role={field.wrong ? "alert" : undefined}>
          {field.wrong ? words.notAllowed(allowed) : (description ?? allowed)}
        </span>
      )}
    </span>
  );
}
