/** Numbers on the sheet: mm to a tenth or inch to a thousandth, angles to a tenth, in the language's own decimal sign. */
import type { SheetWords } from "../words/sheet.ts";

export type SheetUnit = "mm" | "inch";
const MM_PER_INCH = 25.4;
/** In the sheet's own unit. */
const GAUGE_STEP = { mm: 0.1, inch: 0.005 } as const;
const DIGITS = { mm: 1, inch: 3 } as const;

export interface SheetFormat {
  readonly length: (mm: number) => string;
  /** The same without its unit. */
  readonly figure: (mm: number) => string;
  /** Of what matters below a tenth of a millimetre: how far facets miss each other. */
  readonly fineLength: (mm: number) => string;
  /** Widths nearer to each other than this share a gauge. */
  readonly gaugeStepMm: number;
  readonly angle: (deg: number) => string;
}

export function sheetFormat(words: SheetWords, unit: SheetUnit): SheetFormat {
  const number = (value: number, digits: number) => {
    const text = value.toFixed(digits).replace(".", words.decimal);
    return Number(value.toFixed(digits)) === 0 ? text.replace("-", "") : text;
  };
  const scale = unit === "inch" ? 1 / MM_PER_INCH : 1;
  const figure = (mm: number) => number(mm * scale, DIGITS[unit]);
  return {
    figure,
    // A no-break space keeps a number with its unit.
    length: (mm) => `${figure(mm)}\u00a0${words.units[unit]}`,
    gaugeStepMm: GAUGE_STEP[unit] / scale,
    fineLength: (mm) =>
      `${number(mm * scale, unit === "mm" && mm < 1 ? 2 : DIGITS[unit])}\u00a0${words.units[unit]}`,
    angle: (deg) => `${number(deg, 1)}${words.units.deg}`,
  };
}
