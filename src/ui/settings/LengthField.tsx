/** A length in the unit of the screen. */
import type { Range } from "../../core/plan/limits.ts";
import { MM_PER_INCH } from "../../words/format.ts";
import { NumberField } from "../controls/NumberField.tsx";
import { useFormat } from "../use-format.ts";

export function LengthField({
  label,
  value,
  range,
  digits = 1,
  stepMm = 0.5,
  description,
  onChange,
}: {
  label: string;
  /** mm */
  value: number;
  range: Range;
  digits?: number;
  stepMm?: number;
  description?: string;
  onChange: (mm: number) => void;
}) {
  const format = useFormat();
  return (
    <NumberField
      label={label}
      value={value}
      min={range.min}
      max={range.max}
      step={format.unit === "mm" ? stepMm : (stepMm * MM_PER_INCH) / 10}
      format={(mm) => format.figure(mm, digits).figure}
      parse={format.parseLength}
      unit={format.figure(0).unit}
      description={description}
      onChange={onChange}
    />
  );
}
