/** What the person likes, as far as it was learned here: kept on this device alone, and erased at a press. */
import { createStore } from "zustand/vanilla";
import { FEATURES, type Mark, MOST_MARKS } from "../../core/ideas/taste.ts";
import { browserShelf } from "../../state/preferences.ts";
import { perStudio, type Studio } from "../studio.ts";

const KEY = "glintwright-taste";

const isMark = (data: unknown): data is Mark => {
  const { features, isLiked } = (data ?? {}) as Readonly<Record<string, unknown>>;
  return (
    typeof isLiked === "boolean" &&
    Array.isArray(features) &&
    features.length === FEATURES &&
    features.every((x) => typeof x === "number" && Number.isFinite(x))
  );
};

/** Marks as they were kept; what is no mark is left out. */
export function marksFrom(text: string | null): readonly Mark[] {
  if (text === null) return [];
  try {
    const data: unknown = JSON.parse(text);
    return Array.isArray(data) ? data.filter(isMark).slice(-MOST_MARKS) : [];
  } catch {
    return []; // what can't be read was never learned
  }
}

/** What a studio knows of it. */
export const marksOf = perStudio(() =>
  createStore<{ readonly list: readonly Mark[]; readonly isKept: boolean }>(() => ({
    list: marksFrom(browserShelf()?.getItem(KEY) ?? null),
    isKept: true,
  })),
);

export function learn(studio: Studio, mark: Mark): void {
  const marks = marksOf(studio);
  const kept = browserShelf();
  const own = marks.getState();
  // what another window or studio has learned meanwhile, or forgotten, holds here too
  const known = kept && own.isKept ? marksFrom(kept.getItem(KEY)) : own.list;
  const list = [...known, mark].slice(-MOST_MARKS);
  try {
    kept?.setItem(KEY, JSON.stringify(list));
    marks.setState({ list, isKept: kept !== null });
  } catch {
    // a full device: it is known until the page is left
    marks.setState({ list, isKept: false });
  }
}

export function forget(studio: Studio): void {
  marksOf(studio).setState({ list: [], isKept: true });
  browserShelf()?.removeItem(KEY);
}
