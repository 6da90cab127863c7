/**
 * Erases what was thrown out long ago. A device's clock may jump (an empty battery, a wrong year set by hand), so it is not
 * asked how long a plan has been gone: each visit adds the time since the visit before, never more than a few days at once.
 */
import type { TextShelf } from "../preferences.ts";
import type { Library } from "./library.ts";
import { hashesIn } from "./picture-marks.ts";

const DAY_MS = 86_400_000;
/** Days of witnessed time for which a plan that was thrown out can be taken back. */
export const KEPT_AFTER_REMOVAL_DAYS = 30;
/** A longer time between two visits counts as this one: what a jump of the clock can cost at most. */
const LONGEST_STEP_DAYS = 10;
const DIARY_KEY = "glintwright-thrown-out";

/** What was seen of one plan that is thrown out. Times in ms since 1970, `goneMs` as witnessed. */
interface Witness {
  readonly deletedAt: number;
  readonly seenAt: number;
  readonly goneMs: number;
}
type Diary = Readonly<Record<string, Witness>>;

const isWitness = (value: unknown): value is Witness => {
  const { deletedAt, seenAt, goneMs } = (value ?? {}) as Partial<Witness>;
  return [deletedAt, seenAt, goneMs].every((number) => Number.isFinite(number));
};

/** What was noted on earlier visits; nothing when it can't be read: then all waits begin anew. */
function readDiary(shelf: TextShelf | null): Diary {
  try {
    const data: unknown = JSON.parse(shelf?.getItem(DIARY_KEY) ?? "{}");
    return Object.fromEntries(Object.entries(data ?? {}).filter(([, value]) => isWitness(value)));
  } catch {
    return {};
  }
}

/** The witness of a plan after one more look at it; a plan not yet seen, or thrown out anew, begins at nothing. */
function seenAgain(before: Witness | undefined, deletedAt: number, now: number): Witness {
  if (before?.deletedAt !== deletedAt) return { deletedAt, seenAt: now, goneMs: 0 };
  const step = Math.min(Math.max(0, now - before.seenAt), LONGEST_STEP_DAYS * DAY_MS);
  return { deletedAt, seenAt: now, goneMs: before.goneMs + step };
}

/**
 * Notes what lies thrown out and erases what has lain there long enough. To be called once a visit.
 * Where the browser keeps no notes nothing is ever erased.
 * @param now milliseconds since 1970, as the device believes
 * @returns how many plans were erased
 * @throws StorageFault when the library can't be read or written
 */
export async function clearOut(library: Library, shelf: TextShelf | null, now: number): Promise<number> {
  const before = readDiary(shelf);
  const seen = (await library.list("deleted")).map(
    ({ id, deletedAt }) => [id, seenAgain(before[id], deletedAt ?? now, now)] as const,
  );
  const isDue = ([, { goneMs }]: readonly [string, Witness]) => goneMs >= KEPT_AFTER_REMOVAL_DAYS * DAY_MS;
  const due = seen.filter(isDue);
  try {
    shelf?.setItem(DIARY_KEY, JSON.stringify(Object.fromEntries(seen.filter((one) => !isDue(one)))));
  } catch {
    return 0; // without notes the wait begins anew with each visit, and nothing is lost by that
  }
  for (const [id] of due) await library.erase(id);
  return due.length;
}

type NotesShelf = TextShelf & Pick<Storage, "key" | "length">;
const UNUSED_KEY = "glintwright-unused-pictures";

/** Hashes noted on the visit before; none when the note can't be read: then all waits begin anew. */
function readUnused(shelf: TextShelf): ReadonlySet<string> {
  try {
    const noted: unknown = JSON.parse(shelf.getItem(UNUSED_KEY) ?? "[]");
    return new Set(Array.isArray(noted) ? noted.filter((one) => typeof one === "string") : []);
  } catch {
    return new Set();
  }
}

/** Hashes of pictures that nothing names. @param elsewhere texts outside of the library that may name some */
async function unusedIn({ port }: Library, elsewhere: readonly string[]): Promise<readonly string[]> {
  const unused = new Set(await port.ids("pictures"));
  const use = (text: unknown): void => {
    if (typeof text === "string") for (const hash of hashesIn(text)) unused.delete(hash);
  };
  if (unused.size === 0) return [];
  elsewhere.forEach(use);
  for (const { text } of await port.all("histories")) use(text);
  for (const { id, text } of await port.all("plans")) {
    use(text);
    // a plan's at a time: all of them may be more than a page can hold
    for (const version of await port.all("versions", `${id}/`)) use(version.text);
  }
  return [...unused];
}

/** What lies on the shelf, a line of the journal also as the plan's text that is in it. */
function textsOn(shelf: NotesShelf): readonly string[] {
  const lines = Array.from({ length: shelf.length }, (_, i) => shelf.getItem(shelf.key(i) ?? "") ?? "");
  return lines.flatMap((line) => {
    try {
      return [line, String((JSON.parse(line) as { readonly text?: unknown } | null)?.text ?? "")];
    } catch {
      return [line];
    }
  });
}

/**
 * Takes away all pictures that nothing names, at once: only where no other window is at work.
 * @returns whether there were any
 */
export async function clearOutPicturesNow(library: Library, shelf: NotesShelf | null): Promise<boolean> {
  const unused = await unusedIn(library, shelf ? textsOn(shelf) : []);
  if (unused.length > 0) await (await library.pictures.all()).erase(unused);
  return unused.length > 0;
}

/**
 * Takes away pictures that nothing has named on two visits in a row: between the picture and the plan that names it another
 * window may be at work. To be called once a visit; where the browser keeps no notes nothing is ever taken away.
 * @throws StorageFault when the library can't be read or written
 */
export async function clearOutPictures(library: Library, shelf: NotesShelf | null): Promise<void> {
  if (!shelf) return;
  const before = readUnused(shelf);
  const unused = await unusedIn(library, textsOn(shelf));
  const gone = unused.filter((hash) => before.has(hash));
  if (gone.length > 0) await (await library.pictures.all()).erase(gone);
  try {
    shelf.setItem(UNUSED_KEY, JSON.stringify(unused.filter((hash) => !before.has(hash))));
  } catch {
    // without the note the wait begins anew
  }
}
