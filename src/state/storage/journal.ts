/**
 * What was done since the library last took the plan, written down at once: a page may be gone before IndexedDB answers, while
 * localStorage has a line the moment it is written. One line a window; the next visit puts what it finds into the library.
 * Only the plan and its last steps: pictures are never in it, but marks that name them (`picture-marks.ts`).
 */
import { serializePlan } from "../../core/plan/file.ts";
import { type History, historyFromData, NO_HISTORY } from "../history.ts";
import type { Safe } from "./autosave.ts";
import { markedNow } from "./pictures-when-needed.ts";

/** The part of the browser's localStorage that is needed. */
export type JournalShelf = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

export interface JournalEntry {
  /** Null for a plan that the library doesn't have. */
  readonly planId: string | null;
  /** The plan's revision in the library on which this rests. */
  readonly base: number | null;
  /** The plan's file and its steps, with marks in place of pictures. */
  readonly text: string;
  readonly history: History;
  /** Milliseconds since 1970. */
  readonly at: number;
}

export interface Left {
  /** The window that left it. */
  readonly tab: string;
  /** Null when the line can't be read: `raw` is all there is. */
  readonly entry: JournalEntry | null;
  readonly raw: string;
}

const PREFIX = "glintwright-journal-";
/** Most characters of one line: a browser gives a page some five million for everything (common practice, no source). */
const LONGEST_LINE = 2_500_000;
/** Steps that can be taken back are written down as far as they fit here, the last ones first. */
const LONGEST_HISTORY_TEXT = 300_000;
const FEW_STEPS = 20;

/** The steps (with marks) that a line has room for. The end of an undo list fits its plan without the beginning. */
function fitting(history: History): History {
  const fits = (some: History) => JSON.stringify(some).length <= LONGEST_HISTORY_TEXT;
  if (fits(history)) return history;
  const few = { undo: history.undo.slice(-FEW_STEPS), redo: [] };
  return fits(few) ? few : NO_HISTORY;
}

function entryOf(raw: string): JournalEntry | null {
  try {
    const { planId, base, text, history, at } = JSON.parse(raw) as Partial<JournalEntry>;
    if (typeof text !== "string" || typeof at !== "number" || !Number.isFinite(at)) return null;
    return {
      planId: typeof planId === "string" ? planId : null,
      base: typeof base === "number" ? base : null,
      text,
      history: historyFromData(history) ?? NO_HISTORY,
      at,
    };
  } catch {
    return null; // handed on as text
  }
}

export interface Journal {
  /** @returns whether the browser has it now */
  readonly write: (work: Safe & Pick<JournalEntry, "planId" | "base">) => boolean;
  /** Takes this window's line away: the library has it. */
  readonly drop: () => void;
  /** Lines of other windows, and of this one before it was loaded anew; oldest first. */
  readonly left: () => readonly Left[];
  readonly dropLeft: (tab: string) => void;
}

/** A journal (a write-ahead log); without a shelf, or where the browser refuses, nothing is ever written down. */
export function createJournal(shelf: JournalShelf | null, tab: string, now: () => number): Journal {
  const dropLeft = (of: string): void => {
    try {
      shelf?.removeItem(PREFIX + of);
    } catch {
      // refused: a line that stays is put back once more, and found to be there already
    }
  };
  const lines = (held: JournalShelf): Left[] => {
    const keys = Array.from({ length: held.length }, (_, i) => held.key(i) ?? "");
    return keys
      .filter((key) => key.startsWith(PREFIX) && key !== PREFIX + tab)
      .map((key) => {
        const raw = held.getItem(key) ?? "";
        return { tab: key.slice(PREFIX.length), entry: entryOf(raw), raw };
      });
  };
  return {
    write: ({ plan, history, planId, base }) => {
      const marked = markedNow({ plan, history });
      try {
        if (!shelf || !marked) throw new RangeError("no room for this line, or a picture without a name yet");
        const text = serializePlan(marked.plan);
        const entry: JournalEntry = { planId, base, text, history: fitting(marked.history), at: now() };
        const line = JSON.stringify(entry);
        if (line.length > LONGEST_LINE) throw new RangeError("no room for this line");
        shelf.setItem(PREFIX + tab, line);
        return true;
      } catch {
        dropLeft(tab); // an older state must not come back as if it were the last; leaving the page asks instead
        return false;
      }
    },
    drop: () => dropLeft(tab),
    left: () => {
      try {
        return shelf ? lines(shelf).sort((a, b) => (a.entry?.at ?? 0) - (b.entry?.at ?? 0)) : [];
      } catch {
        return []; // refused: there is nothing to be read then
      }
    },
    dropLeft,
  };
}
