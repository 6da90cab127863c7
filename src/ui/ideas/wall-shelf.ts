/**
 * The wall of ideas as this browser keeps it, so that a reload finds it again: lines in localStorage, each written the moment it
 * changes. Plans are data, those of one bench share it; pictures inside are marks that name them (`picture-marks.ts`), and
 * what was traced is traced anew.
 */
import { createStore } from "zustand/vanilla";
import type { Plan, Tier } from "../../core/plan/document.ts";
import { PlanFileError, planFromData } from "../../core/plan/file.ts";
import { browserShelf } from "../../state/preferences.ts";
import type { Library } from "../../state/storage/library.ts";
import { markedNow, mayHoldMarks } from "../../state/storage/pictures-when-needed.ts";

export type LineName = "wish" | "wall" | "held";
const keyOf = (name: LineName): string => `glintwright-ideas-${name}`;

/** Lines that the browser has not got as they stand. */
export const unkept = createStore<{ readonly lines: ReadonlySet<LineName> }>(() => ({ lines: new Set() }));

function say(name: LineName, isKept: boolean): void {
  const { lines } = unkept.getState();
  if (lines.has(name) !== isKept) return;
  const next = new Set(lines);
  if (isKept) next.delete(name);
  else next.add(name);
  unkept.setState({ lines: next });
}

/** Where pictures inside plans are kept; null until the visit has begun. */
const shelved = createStore<{ readonly library: Library | null }>(() => ({ library: null }));
export const giveLibrary = (library: Library): void => shelved.setState({ library });

const libraryThere = (): Promise<Library> =>
  new Promise((resolve) => {
    const look = ({ library }: { readonly library: Library | null }) => {
      if (!library) return;
      stop();
      resolve(library);
    };
    const stop = shelved.subscribe(look);
    look(shelved.getState());
  });

/** Whoever wants to know that a line was written by another. */
const watchers = new Set<{ readonly name: LineName; readonly own: object; readonly look: () => void }>();

/** What each line is to hold by now: one that waits for a picture must not come after a later one. */
const latest = new Map<LineName, unknown>();

function write(name: LineName, data: unknown, by: object | null): void {
  const shelf = browserShelf();
  try {
    shelf?.setItem(keyOf(name), JSON.stringify(data));
    say(name, shelf !== null);
  } catch {
    say(name, false); // no room, or refused
    return;
  }
  if (shelf) for (const other of watchers) if (other.name === name && other.own !== by) other.look();
}

/**
 * Keeps plain data, at once but for a picture inside that the storage has not got yet.
 * @param by who keeps it, and need not be told
 */
export function keepLine(name: LineName, data: unknown, by: object | null = null): void {
  latest.set(name, data);
  const marked = markedNow(data);
  if (marked !== null) {
    write(name, marked, by);
    return;
  }
  say(name, false);
  const withPictures = async () => {
    const library = await libraryThere();
    const packed = await library.pictures.packData(data);
    if (latest.get(name) === data) write(name, packed, by);
  };
  // that it isn't kept has been said
  withPictures().catch(() => undefined);
}

const dataOf = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return null; // as if nothing had been kept
  }
};

function textOf(name: LineName): string {
  try {
    return browserShelf()?.getItem(keyOf(name)) ?? "null";
  } catch {
    return "null"; // refused
  }
}

/** Hands on what a line holds, null where it is not there: at once, or where it names pictures as soon as these are there too. */
export function readLine(name: LineName, take: (data: unknown) => void): void {
  const marked = textOf(name);
  if (!mayHoldMarks(marked)) {
    take(dataOf(marked));
    return;
  }
  const withPictures = async () => {
    const library = await libraryThere();
    return library.pictures.unpackText(marked);
  };
  withPictures().then(
    (whole) => take(dataOf(whole)),
    // the storage is out of reach: plans without the pictures inside them are better than none
    () => take(dataOf(marked)),
  );
}

/** Calls back when another window, or another than `own` on this page, has written a line, or the page comes back from where it was laid aside. */
export function onElsewhere(name: LineName, own: object, look: () => void): void {
  watchers.add({ name, own, look });
  const page = globalThis.window;
  page?.addEventListener("storage", ({ key, newValue }) => {
    if (key === keyOf(name) && newValue !== null) look();
  });
  page?.addEventListener("pageshow", ({ persisted }) => {
    if (persisted) look();
  });
}

interface PackedPlans {
  /** All of plans but their names and tiers, each once. */
  readonly benches: readonly unknown[];
  readonly plans: readonly {
    readonly bench: number;
    readonly name: string;
    readonly tiers: readonly Tier[];
  }[];
}

export function packPlans(plans: readonly Plan[]): PackedPlans {
  const benches: string[] = [];
  const packed = plans.map(({ name, tiers, ...bench }) => {
    const text = JSON.stringify(bench);
    if (!benches.includes(text)) benches.push(text);
    return { bench: benches.indexOf(text), name, tiers };
  });
  return { benches: benches.map((text) => JSON.parse(text)), plans: packed };
}

/** The plans in their order; null for what is none. */
export function unpackPlans(data: unknown): (Plan | null)[] {
  const { benches, plans } = (data ?? {}) as { readonly benches?: unknown; readonly plans?: unknown };
  if (!Array.isArray(benches) || !Array.isArray(plans)) return [];
  return plans.map((one: unknown) => {
    const { bench, name, tiers } = (one ?? {}) as Readonly<Record<string, unknown>>;
    try {
      return planFromData({ ...benches[Number(bench)], name, tiers }).plan;
    } catch (error) {
      if (error instanceof PlanFileError) return null;
      throw error;
    }
  });
}
