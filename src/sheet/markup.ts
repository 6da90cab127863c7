/** Writing HTML and SVG as text in which every value is escaped, so that names and notes are text everywhere. */

/** Text that is markup already. Only `html` makes it. */
export interface Markup {
  readonly markup: string;
}
type Value = string | number | Markup | readonly Markup[] | null;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
/** C0 controls have no place in a document; tabs and newlines do. */
const isControl = (code: number): boolean =>
  (code < 32 && code !== 9 && code !== 10 && code !== 13) || code === 127;

export const escapeText = (text: string): string =>
  [...text]
    .filter((c) => !isControl(c.charCodeAt(0)))
    .map((c) => ENTITIES[c] ?? c)
    .join("");

const written = (value: Value): string => {
  if (value === null) return "";
  if (typeof value === "string") return escapeText(value);
  if (typeof value === "number") return String(value);
  return Array.isArray(value) ? value.map((v: Markup) => v.markup).join("") : (value as Markup).markup;
};

/** A template whose strings are markup and whose values are escaped, unless made by `html` themselves; null is nothing. */
export const html = (parts: TemplateStringsArray, ...values: readonly Value[]): Markup => ({
  markup: parts.reduce((text, part, i) => text + written(values[i - 1] ?? null) + part),
});
