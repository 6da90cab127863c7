/**
 * Numbers and dates as a person says and types them: millimetres, decimal inches or fractions of an inch, a decimal comma
 * where the person's region has one. Values come in millimetres and degrees; nothing here rounds what is kept.
 */

export type LengthUnit = "mm" | "inch" | "inch-fraction";

export const MM_PER_INCH = 25.4;
/** Finest fraction that a steel rule shows, common practice. */
const FINEST_FRACTION = 64;

/** A figure and its unit apart, because the unit is set smaller. */
export interface Figure {
  readonly figure: string;
  readonly unit: string;
}

/** The region of a language tag: "AT" of "de-AT". */
function regionOf(tag: string): string | undefined {
  try {
    return new Intl.Locale(tag).region;
  } catch {
    return undefined; // a tag that is none (RFC 5646) says nothing about the region
  }
}

/**
 * The language of the screen with the region of the browser, for numbers and dates: the first region that the browser's tags
 * name ("en-GB" writes 25 Nov 2026, "de-CH" a decimal point, English on a browser of "de-AT" 25 Nov 2026 and a decimal comma).
 * The bare language when they name none. Never with the figures of another script: the fields read 0 to 9.
 */
export function localeOf(language: string, preferred: readonly string[]): string {
  const region = preferred.map(regionOf).find((one) => one !== undefined);
  return region === undefined ? language : `${language}-${region}`;
}

/** The sign between whole and tenths, as the locale sets it. */
export const decimalSign = (locale: string): "." | "," =>
  formatNumber(0.5, locale, 1)[1] === "," ? "," : ".";

/** A day and a time of it, as the region writes them. @param at milliseconds since 1970 */
export const formatMoment = (at: number, locale: string): string =>
  new Intl.DateTimeFormat(locale, { dateStyle: "medium", timeStyle: "short" }).format(at);

const numberFormats = new Map<string, Intl.NumberFormat>();

/** `value` with exactly `digits` decimals, no grouping; never "-0.0". */
export function formatNumber(value: number, locale: string, digits: number): string {
  const key = `${locale}/${digits}`;
  let format = numberFormats.get(key);
  if (!format) {
    format = new Intl.NumberFormat(locale, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      useGrouping: false,
    });
    numberFormats.set(key, format);
  }
  const shown = format.format(value);
  return /[1-9]/.test(shown) ? shown.replace("-", "\u2212") : format.format(0);
}

/** Inches as whole, then a fraction in lowest terms: 30.1625 mm is "1 3/16". */
export function formatFraction(inches: number): string {
  const sign = inches < 0 ? "\u2212" : "";
  const parts = Math.round(Math.abs(inches) * FINEST_FRACTION);
  const whole = Math.floor(parts / FINEST_FRACTION);
  let top = parts % FINEST_FRACTION;
  let bottom = FINEST_FRACTION;
  while (top !== 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return whole === 0 ? "0" : `${sign}${whole}`;
  return whole === 0 ? `${sign}${top}/${bottom}` : `${sign}${whole} ${top}/${bottom}`;
}

/** A length; `digits` are decimals of a millimetre (inches get one more, since an inch is 25 times as long, two where digits are 2). */
export function formatLength(mm: number, unit: LengthUnit, locale: string, digits = 1): Figure {
  if (unit === "mm") return { figure: formatNumber(mm, locale, digits), unit: "mm" };
  const inches = mm / MM_PER_INCH;
  if (unit === "inch-fraction") return { figure: formatFraction(inches), unit: "in" };
  return { figure: formatNumber(inches, locale, digits + 1), unit: "in" };
}

/** Degrees with the sign set tight. */
export const formatAngle = (deg: number, locale: string, digits = 1): string =>
  `${formatNumber(deg, locale, digits)}°`;

const PLAIN = /^([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^([+-]?)(?:(\d+)\s+)?(\d+)\s*[/\u2044]\s*(\d+)$/;

/** A plain number, or a fraction with or without whole part; dot and comma both mark decimals. Null when it is neither. */
export function parseNumber(text: string): number | null {
  const clean = text.trim().replace("\u2212", "-");
  const plain = PLAIN.exec(clean);
  if (plain) return Number(`${plain[1]}${plain[2]!.replace(",", ".")}`);
  const fraction = FRACTION.exec(clean);
  if (!fraction) return null;
  const bottom = Number(fraction[4]);
  if (bottom === 0) return null;
  const size = Number(fraction[2] ?? 0) + Number(fraction[3]) / bottom;
  return fraction[1] === "-" ? -size : size;
}

const INCH_MARK = /\s*(?:"|\u2033|inch(?:es)?|in|zoll)\.?$/i;
const MM_MARK = /\s*mm$/i;
const CM_MARK = /\s*cm$/i;

/** A typed length in millimetres. A unit that was typed wins over the unit of the screen. Null when it is not a length. */
export function parseLength(text: string, unit: LengthUnit): number | null {
  const clean = text.trim();
  const asMm = (mark: RegExp, factor: number): number | null => {
    const value = parseNumber(clean.replace(mark, ""));
    return value === null ? null : value * factor;
  };
  if (MM_MARK.test(clean)) return asMm(MM_MARK, 1);
  if (CM_MARK.test(clean)) return asMm(CM_MARK, 10);
  if (INCH_MARK.test(clean)) return asMm(INCH_MARK, MM_PER_INCH);
  return asMm(/$^/, unit === "mm" ? 1 : MM_PER_INCH);
}

/** A typed angle in degrees: the sign may be there or not. */
export const parseAngle = (text: string): number | null =>
  parseNumber(text.replace(/\s*(?:°|deg|grad)\.?$/i, ""));
