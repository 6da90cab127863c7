/** Plain data, as a file holds it: copying and comparing. */

/** Equal when they are written the same. */
export const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

/** A copy as a file would give it back: fields that are undefined are left out, -0 is 0. */
export function plainCopy<T>(value: T): T {
  if (typeof value === "number") return (value === 0 ? 0 : value) as T;
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(plainCopy) as T;
  const fields = Object.entries(value).filter(([, entry]) => entry !== undefined);
  return Object.fromEntries(fields.map(([key, entry]) => [key, plainCopy(entry)])) as T;
}
