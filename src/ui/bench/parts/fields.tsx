/** The numbers of the bench: lengths in the person's unit, angles, micrometres, whole numbers. */
import type { ReactNode } from "react";
import type { Range } from "../../../core/plan/limits.ts";
import { formatLength, MM_PER_INCH, parseAngle, parseNumber } from "../../../words/format.ts";
import { NumberField } from "../../controls/NumberField.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";

export interface FieldProps {
  readonly label: string;
  readonly value: number;
  readonly range: Range;
  readonly onChange: (value: number) => void;
  readonly description?: string;
  readonly inline?: boolean;
  readonly digits?: number;
  readonly step?: number;
}

/** Ends of a range as a field takes them: the least value itself is not allowed when the range is open there. */
const ends = ({ min, max, openMin }: Range, least: number) => ({ min: openMin ? min + least : min, max });

/** A length, kept in mm. */
export function LengthField({ range, digits = 1, step = 1, onChange, ...rest }: FieldProps) {
  const format = useFormat();
  const unit = format.figure(0).unit;
  const { min, max } = ends(range, 0.001);
  return (
    <NumberField
      {...rest}
      min={min}
      max={max}
      step={format.unit === "mm" ? step : (step * MM_PER_INCH) / 10}
      unit={unit}
      format={(mm) => formatLength(mm, format.unit, format.locale, digits).figure}
      parse={format.parseLength}
      onChange={onChange}
    />
  );
}

/** A field by what it asks, how that is measured, what stands in it and what it may be. */
export const asked = (
  label: string,
  description: string,
  value: number,
  range: Range,
  onChange: (value: number) => void,
): FieldProps => ({ label, description, value, range, onChange });

/** Fields in a grid: the lengths, then what is no length. */
export function FieldGrid({
  lengths,
  children,
}: {
  readonly lengths: readonly FieldProps[];
  readonly children?: ReactNode;
}) {
  return (
    <div className="bench-fields">
      {lengths.map((field) => (
        <LengthField key={field.label} {...field} />
      ))}
      {children}
    </div>
  );
}

export function DegreeField({ range, digits = 1, step = 0.5, ...rest }: FieldProps) {
  const { number } = useFormat();
  const words = useWords(benchWords);
  const isOpen = range.max === Number.MAX_VALUE;
  return (
    <NumberField
      {...rest}
      min={isOpen ? Number.NEGATIVE_INFINITY : range.min}
      max={isOpen ? Number.POSITIVE_INFINITY : range.max}
      step={step}
      format={(value) => `${number(value, digits)}°`}
      parse={parseAngle}
      allowed={isOpen ? words.anyAngle : undefined}
    />
  );
}

export function PlainField({
  range,
  digits = 0,
  step = 1,
  unit,
  ...rest
}: FieldProps & { readonly unit?: string }) {
  const { number } = useFormat();
  const { min, max } = ends(range, 10 ** -digits);
  return (
    <NumberField
      {...rest}
      min={min}
      max={max}
      step={step}
      unit={unit}
      format={(value) => number(value, Number.isInteger(value) ? 0 : Math.max(1, digits))}
      parse={(text) => {
        const value = parseNumber(text);
        return value !== null && range.integer && !Number.isInteger(value) ? null : value;
      }}
    />
  );
}
