/** What differs between two plans, field by field, in paths that a person can follow. */
import type { Plan } from "../core/plan/document.ts";

export interface Difference {
  /** "Shoulder: armAngleDeg", "piece.diameterMm": a tier by its name, other fields by their place in the file. */
  readonly path: string;
  readonly before: unknown;
  readonly current: unknown;
}

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === "object" && value !== null;

function fieldDifferences(before: unknown, current: unknown, path: string, join: string): Difference[] {
  if (Object.is(before, current)) return [];
  if (!isFields(before) || !isFields(current)) return [{ path, before, current }];
  const keys = [...new Set([...Object.keys(before), ...Object.keys(current)])];
  return keys.flatMap((key) =>
    fieldDifferences(before[key], current[key], path ? `${path}${join}${key}` : key, "."),
  );
}

/** Tiers are matched by id, so that one moved or added does not make all others differ. */
export function differencesOf(before: Plan, current: Plan): Difference[] {
  const { tiers: tiersThen, ...restThen } = before;
  const { tiers: tiersNow, ...restNow } = current;
  const ids = [...new Set([...tiersThen, ...tiersNow].map((tier) => tier.id))];
  const tiers = ids.flatMap((id) => {
    const [a, b] = [tiersThen.find((t) => t.id === id), tiersNow.find((t) => t.id === id)];
    return fieldDifferences(a, b, (b ?? a)?.name || id, ": ");
  });
  const order =
    ids.length === tiersThen.length &&
    ids.length === tiersNow.length &&
    tiersThen.some((t, i) => t.id !== tiersNow[i].id)
      ? [
          {
            path: "tiers",
            before: tiersThen.map((t) => t.name).join(", "),
            current: tiersNow.map((t) => t.name).join(", "),
          },
        ]
      : [];
  return [...fieldDifferences(restThen, restNow, "", "."), ...tiers, ...order];
}
