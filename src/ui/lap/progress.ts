/**
 * How far the work at the lap has come, kept in the browser so that a reload, an empty battery or a phone that puts the page away loses
 * nothing. One record a piece of work: the plan it belongs to is known by its tiers and stages, not by its depths.
 */

import type { Way } from "../../core/bench/order/diary.ts";
import { stagesOf } from "../../core/bench/stages/default-stages.ts";
import type { Plan } from "../../core/plan/document.ts";
import type { TextShelf } from "../../state/preferences.ts";

/** Keys of steps in the order in which they were done; the last one is what undo takes back. */
export type Done = readonly string[];

const SHELF_KEY = "glintwright-lap";
/** Pieces of work kept; the longest untouched goes first. */
const MOST_KEPT = 20;

interface Kept {
  readonly work: string;
  readonly done: Done;
}

/** Which work this is: the plan's name, its tiers with their counts, its stages, the way of working. */
export const workName = (plan: Plan, way: Way): string =>
  JSON.stringify([
    plan.name,
    way,
    plan.tiers.map(({ id, count }) => [id, count]),
    stagesOf(plan.rig).map(({ id }) => id),
  ]);

const isKept = (value: unknown): value is Kept => {
  const { work, done } = (typeof value === "object" && value !== null ? value : {}) as Partial<Kept>;
  return typeof work === "string" && Array.isArray(done) && done.every((key) => typeof key === "string");
};

/** Everything readable that is kept; nothing when the browser refuses or what is there can't be read. */
function allKept(shelf: TextShelf | null): readonly Kept[] {
  try {
    const data: unknown = JSON.parse(shelf?.getItem(SHELF_KEY) ?? "[]");
    return Array.isArray(data) ? data.filter(isKept) : [];
  } catch {
    return []; // refused or damaged: the work begins at the first step, and keeping it tells if it fails
  }
}

export const loadDone = (shelf: TextShelf | null, work: string): Done =>
  allKept(shelf).find((kept) => kept.work === work)?.done ?? [];

/** @returns whether the browser kept it, read back */
export function saveDone(shelf: TextShelf | null, work: string, done: Done): boolean {
  if (!shelf) return false;
  const others = allKept(shelf).filter((kept) => kept.work !== work);
  const text = JSON.stringify([{ work, done }, ...others].slice(0, MOST_KEPT));
  try {
    shelf.setItem(SHELF_KEY, text);
    return shelf.getItem(SHELF_KEY) === text;
  } catch {
    return false; // full or refused: the page says so and keeps the progress while it is open
  }
}
