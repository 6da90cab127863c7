/** What the person likes, as far as it was learned here: kept on this device alone, and erased at a press. */
import { createStore } from "zustand/vanilla";
import { FEATURES, type Mark, MOST_MARKS } from "../../core/ideas/taste.ts";

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

/** A browser may refuse to keep anything: taste then lasts as long as the page. */
function shelf(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

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

export const marks = createStore<{ readonly list: readonly Mark[] }>(() => ({
  list: marksFrom(shelf()?.getItem(KEY) ?? null),
}));

export function learn(mark: Mark): void {
  const list = [...marks.getState().list, mark].slice(-MOST_MARKS);
  marks.setState({ list });
  try {
    shelf()?.setItem(KEY, JSON.stringify(list));
  } catch {
    // a full device: it is known until the page is left
  }
}

export function forget(): void {
  marks.setState({ list: [] });
  shelf()?.removeItem(KEY);
}
