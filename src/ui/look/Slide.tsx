/** A quantity one turns until it looks right: the value is said beside its name. */
import { useId } from "react";

export interface SlideProps {
  readonly label: string;
  readonly shown: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly onChange: (value: number) => void;
}

export function Slide({ label, shown, value, min, max, step, onChange }: SlideProps) {
  const id = useId();
  return (
    <div className="slide">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <output className="slide-shown" htmlFor={id}>
        {shown}
      </output>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={shown}
        onChange={(event) => onChange(event.target.valueAsNumber)}
      />
    </div>
  );
}
