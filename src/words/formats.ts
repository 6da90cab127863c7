/** Numbers and dates in one unit, language and region: what a screen, a sheet or an answer of the command line is written with. */
import {
  type Figure,
  formatAngle,
  formatLength,
  formatMoment,
  formatNumber,
  type LengthUnit,
  parseLength,
} from "./format.ts";

export interface NumberHabits {
  readonly unit: LengthUnit;
  /** Show the lapidary cutting angle, 90 minus the arm angle, instead of the arm angle. */
  readonly cuttingAngle: boolean;
}

export interface Formats extends NumberHabits {
  readonly locale: string;
  readonly number: (value: number, digits: number) => string;
  /** Figure and unit apart. */
  readonly figure: (mm: number, digits?: number) => Figure;
  /** "12.5 mm" with a space that does not break. */
  readonly length: (mm: number, digits?: number) => string;
  readonly degrees: (deg: number, digits?: number) => string;
  /** The angle of a tier as this person counts it. */
  readonly armAngle: (armAngleDeg: number, digits?: number) => string;
  readonly parseLength: (text: string) => number | null;
  /** Day and time of milliseconds since 1970. */
  readonly moment: (at: number) => string;
}

export function makeFormats(locale: string, habits: NumberHabits): Formats {
  const figure = (mm: number, digits = 1) => formatLength(mm, habits.unit, locale, digits);
  return {
    ...habits,
    locale,
    number: (value, digits) => formatNumber(value, locale, digits),
    figure,
    length: (mm, digits) => {
      const shown = figure(mm, digits);
      return `${shown.figure}\u00a0${shown.unit}`;
    },
    degrees: (deg, digits = 1) => formatAngle(deg, locale, digits),
    armAngle: (deg, digits = 1) => formatAngle(habits.cuttingAngle ? 90 - deg : deg, locale, digits),
    parseLength: (text) => parseLength(text, habits.unit),
    moment: (at) => formatMoment(at, locale),
  };
}
