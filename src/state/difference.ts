/** The least patches between two states of plain data that share unchanged parts: what a whole drag came to. */
import type { Patches } from "mutative";

type Path = readonly (string | number)[];
type Holder = Readonly<Record<string, unknown>>;

const isHolder = (value: unknown): value is Holder => typeof value === "object" && value !== null;
/** Objects with objects and lists with lists of the same length can be compared entry by entry. */
function isAlike(a: Holder, b: Holder): boolean {
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length;
  return Array.isArray(a) === Array.isArray(b);
}

/**
 * Patches that turn `a` into `b`. Parts that are the same object are not looked into, so the cost is that of the change.
 * A list whose length changed is replaced as a whole.
 */
export function difference(a: unknown, b: unknown, path: Path = []): Patches {
  if (Object.is(a, b)) return [];
  if (!isHolder(a) || !isHolder(b) || !isAlike(a, b)) return [{ op: "replace", path: [...path], value: b }];
  const keyed = (key: string) => [...path, Array.isArray(b) ? Number(key) : key];
  const gone = Object.keys(a).filter((key) => !Object.hasOwn(b, key));
  const kept = Object.keys(b).flatMap(
    (key): Patches =>
      Object.hasOwn(a, key)
        ? difference(a[key], b[key], keyed(key))
        : [{ op: "add", path: keyed(key), value: b[key] }],
  );
  return [...gone.map((key) => ({ op: "remove" as const, path: keyed(key) })), ...kept];
}
