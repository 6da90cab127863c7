/** A colour picked by eye, kept as linear red, green and blue. */
import { formatHex, modeLrgb, modeRgb, useMode as register } from "culori/fn";
import type { Rgb } from "../../core/plan/document.ts";
import "./settings.css";

const toLinear = register(modeLrgb);
register(modeRgb);

export function ColorField({
  label,
  value,
  onChange,
}: {
  label: string;
  value: Rgb;
  onChange: (rgb: Rgb) => void;
}) {
  const hex = formatHex({ mode: "lrgb", r: value[0], g: value[1], b: value[2] });
  return (
    <label className="color-field">
      <span className="field-label">{label}</span>
      <input
        type="color"
        value={hex}
        onChange={(event) => {
          const linear = toLinear(event.currentTarget.value);
          if (linear) onChange([linear.r, linear.g, linear.b]);
        }}
      />
    </label>
  );
}
