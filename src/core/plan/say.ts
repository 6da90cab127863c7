/** Numbers as a person says them, in plain English and millimetres; screens have their own words and units. */

/** Fixed digits without trailing zeros or a minus sign on zero. */
const trim = (value: number, digits: number): string => {
  const text = value.toFixed(digits).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
};

/** Hundredths below 1 mm, tenths above 10 mm. */
export const mm = (value: number): string =>
  `${trim(value, Math.abs(value) < 1 ? 3 : Math.abs(value) < 10 ? 2 : 1)} mm`;
export const degrees = (value: number): string => `${trim(value, 2)} deg`;
export const many = (count: number, one: string, more = `${one}s`): string =>
  `${count} ${count === 1 ? one : more}`;
