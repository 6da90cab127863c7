/**
 * The library of plans: everything a person has made, found again, copied, put away, brought back. Works on any storage
 * port. Every write of a plan is conditional on the revision that this tab knows, and is read back before it counts as kept.
 */
import type { Plan } from "../../core/plan/document.ts";
import { type PlanFile, PlanFileError, parsePlan, serializePlan } from "../../core/plan/file.ts";
import type { FileFault } from "../../core/plan/file-fault.ts";
import { freshId as anyFreshId } from "../fresh-id.ts";
import { type History, historyFromData, NO_HISTORY } from "../history.ts";
import { faultOf, StorageFault } from "./faults.ts";
import type { JournalEntry } from "./journal.ts";
import { momentOf } from "./moment.ts";
import { mayHoldMarks, picturesWhenNeeded, pictureWays } from "./pictures-when-needed.ts";
import type { PlanRow, RowChange, StoragePort } from "./port.ts";
import { createVersions } from "./versions.ts";

/** One plan as the shelf shows it. */
export interface PlanSummary {
  readonly id: string;
  readonly name: string;
  readonly createdAt: number;
  readonly savedAt: number;
  readonly archivedAt: number | null;
  readonly deletedAt: number | null;
  readonly thumbnail: string | null;
  /** Null when what is kept can't be read as a plan any more; its text can still be saved to a file. */
  readonly about: { readonly diameterMm: number; readonly tiers: number; readonly facets: number } | null;
}

export type Opening =
  | { readonly ok: true; readonly file: PlanFile; readonly history: History }
  /** `text` is what is kept, null when nothing is. */
  | { readonly ok: false; readonly fault: FileFault; readonly text: string | null };
export type Keeping =
  | { readonly kept: true; readonly planId: string; readonly at: number }
  /** Someone else has written this plan since; nothing was written. */
  | { readonly kept: false };
export type Shelf = "out" | "archived" | "deleted";

/** Tells other tabs that the library changed, and hears it from them; what a BroadcastChannel does. */
export type TabChannel = Pick<BroadcastChannel, "postMessage" | "onmessage" | "close">;

export interface LibraryOptions {
  readonly port: StoragePort;
  readonly otherTabs?: TabChannel | null;
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  readonly freshId?: () => string;
  /** Where the storage is full: takes away what nothing needs. @returns whether there was anything */
  readonly makeRoom?: () => Promise<boolean>;
}

/** Longest thumbnail, characters of a data URL. */
const LONGEST_THUMBNAIL = 300_000;
const NAME_OF_UNREADABLE = "";

/** @param plainOf a text as far as it can be read without its pictures */
type PlainOf = (text: string) => string;

/** What a kept plan can tell without being opened. */
function readable(row: PlanRow, plainOf: PlainOf): Pick<PlanSummary, "name" | "about"> {
  try {
    const { plan } = parsePlan(plainOf(row.text));
    const facets = plan.tiers.reduce((sum, tier) => sum + tier.count, 0);
    const about = { diameterMm: plan.piece.diameterMm, tiers: plan.tiers.length, facets };
    return { name: plan.name, about };
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    return { name: NAME_OF_UNREADABLE, about: null };
  }
}

/** Reads a plan once before it is written. @throws StorageFault for one that could not be opened again */
function checkReadableAgain(plan: Plan): void {
  try {
    parsePlan(serializePlan(plan));
  } catch (error) {
    throw new StorageFault("unreadable", "what would be written could not be opened again", error);
  }
}

/** The steps in a text from the storage or a backup; none for one that can't be read: that costs the steps back, never the plan. */
export function historyOf(text: unknown): History {
  try {
    return (typeof text === "string" ? historyFromData(JSON.parse(text)) : null) ?? NO_HISTORY;
  } catch {
    return NO_HISTORY;
  }
}

/** Whether something kept is a small picture to be shown: in itself, and not too long. */
export const isThumbnail = (url: unknown): url is string =>
  typeof url === "string" && url.startsWith("data:image/") && url.length <= LONGEST_THUMBNAIL;

/** A row as it lies in the storage, every field made what it has to be: one bad record is one line on the shelf. */
export const soundRow = (row: PlanRow): PlanRow => {
  const text: unknown = row.text;
  return {
    ...row,
    text: typeof text === "string" ? text : (JSON.stringify(text) ?? ""),
    createdAt: momentOf(row.createdAt) ?? 0,
    savedAt: momentOf(row.savedAt) ?? 0,
    archivedAt: momentOf(row.archivedAt),
    deletedAt: momentOf(row.deletedAt),
  };
};

const isOn = (shelf: Shelf, row: PlanSummary): boolean => {
  if (row.deletedAt !== null) return shelf === "deleted";
  return (shelf === "archived") === (row.archivedAt !== null) && shelf !== "deleted";
};

export type Library = ReturnType<typeof createLibrary>;

export function createLibrary({
  port,
  otherTabs = null,
  now = Date.now,
  freshId = anyFreshId,
  makeRoom = async () => false,
}: LibraryOptions) {
  const pictures = picturesWhenNeeded(port);
  /** The revision of each plan as this tab last read or wrote it. */
  const known = new Map<string, number>();
  const summaries = new Map<string, { readonly row: PlanRow } & Pick<PlanSummary, "name" | "about">>();
  const watchers = new Set<() => void>();
  const hear = (): void => {
    for (const watcher of watchers) watcher();
  };
  const tell = (): void => {
    otherTabs?.postMessage("changed");
    hear();
  };
  if (otherTabs) otherTabs.onmessage = hear;

  /** Name and numbers of a row, read again only when it changed. */
  function summaryOf(row: PlanRow, thumbnail: string | null, plainOf: PlainOf): PlanSummary {
    const before = summaries.get(row.id);
    const fresh = before?.row.text === row.text ? before : { row, ...readable(row, plainOf) };
    summaries.set(row.id, fresh);
    const { id, createdAt, savedAt, archivedAt, deletedAt } = row;
    return {
      id,
      createdAt,
      savedAt,
      archivedAt,
      deletedAt,
      thumbnail,
      name: fresh.name,
      about: fresh.about,
    };
  }

  /** Writes rows and makes sure that the plan's row reads back as written. */
  async function writeVerified(row: PlanRow, also: readonly RowChange[], revision: number): Promise<boolean> {
    const changes: RowChange[] = [{ table: "plans", put: row }, ...also];
    if (!(await port.write(changes, { planId: row.id, revision }))) return false;
    const back = await port.get("plans", row.id);
    // a later write by another tab is no damage
    if (back?.text !== row.text && (back?.revision ?? 0) <= row.revision)
      throw new StorageFault("damaged", "what was read back is not what was written");
    known.set(row.id, row.revision);
    tell();
    return true;
  }

  /** Changes a plan's standing on the shelf; whoever else wrote in between keeps their text. */
  async function restand(id: string, change: Partial<PlanRow>): Promise<boolean> {
    const row = await port.get("plans", id);
    if (!row) return false;
    const next = { ...row, ...change, revision: row.revision + 1 };
    const isKnown = known.get(id) === row.revision;
    const done = await writeVerified(next, [], row.revision);
    // a tab that didn't know the text before doesn't know it now
    if (done && !isKnown) known.delete(id);
    return done;
  }

  /** Tries once more, from its beginning, where room could be made: what it had written by then may be gone too. */
  async function withRoom<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (faultOf(error).kind !== "full" || !(await makeRoom())) throw error;
      return work();
    }
  }

  type Also = (id: string) => readonly RowChange[];
  type Standing = Partial<Omit<PlanRow, "text" | "revision">>;

  /** Puts a new plan on the shelf; `standing` gives it an id or dates of its own (a restored one). */
  const add = async (text: string, also?: Also, standing?: Standing): Promise<string> =>
    addPacked(await pictures.packText(text), also, standing);

  /** The same for a text with marks. */
  async function addPacked(text: string, also: Also = () => [], standing: Standing = {}): Promise<string> {
    const at = now();
    const fresh = { id: freshId(), createdAt: at, savedAt: at, archivedAt: null, deletedAt: null };
    const row: PlanRow = { ...fresh, ...standing, text, revision: 1 };
    if (!(await writeVerified(row, also(row.id), 0)))
      throw new StorageFault("damaged", "a fresh id is taken already");
    return row.id;
  }

  async function list(shelf: Shelf = "out", search = ""): Promise<readonly PlanSummary[]> {
    const [rows, pictures] = await Promise.all([port.all("plans"), port.all("thumbnails")]);
    const urls = new Map(pictures.map(({ id, url }) => [id, isThumbnail(url) ? url : null]));
    const wanted = search.trim().toLocaleLowerCase();
    const sound = rows.map(soundRow);
    const plainOf: PlainOf = sound.some(({ text }) => mayHoldMarks(text))
      ? (await pictureWays()).withoutPictures
      : (text) => text;
    return sound
      .map((row) => summaryOf(row, urls.get(row.id) ?? null, plainOf))
      .filter((row) => isOn(shelf, row) && row.name.toLocaleLowerCase().includes(wanted))
      .sort((a, b) => b.savedAt - a.savedAt);
  }

  /** Reads a plan with its history; from then on this tab may write it. */
  async function open(id: string): Promise<Opening> {
    const [kept, history] = await Promise.all([port.get("plans", id), port.get("histories", id)]);
    const row = kept && soundRow(kept);
    if (!row) return { ok: false, fault: { code: "not-in-library", data: {} }, text: null };
    const text = await pictures.unpackText(row.text);
    try {
      const file = parsePlan(text);
      const steps = typeof history?.text === "string" ? await pictures.unpackText(history.text) : null;
      known.set(id, row.revision);
      return { ok: true, file, history: historyOf(steps) };
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      return { ok: false, fault: error.fault, text };
    }
  }

  /** Keeps a plan: a new one with `planId` null, else the one that this tab opened or wrote. */
  async function keep(planId: string | null, plan: Plan, history: History): Promise<Keeping> {
    checkReadableAgain(plan);
    const text = await pictures.packPlan(plan);
    const steps = JSON.stringify(await pictures.packData(history));
    const historyRow = (id: string): RowChange => ({ table: "histories", put: { id, text: steps } });
    if (planId === null) {
      const id = await addPacked(text, (fresh) => [historyRow(fresh)]);
      return { kept: true, planId: id, at: now() };
    }
    const revision = known.get(planId);
    const before = await port.get("plans", planId);
    if (!before || before.revision !== revision) return { kept: false };
    const at = now();
    const row = { ...before, revision: revision + 1, text, savedAt: at, deletedAt: null };
    return (await writeVerified(row, [historyRow(planId)], revision))
      ? { kept: true, planId, at }
      : { kept: false };
  }

  /**
   * Puts what a window wrote down and couldn't keep any more where it belongs: over the state that it rests on, or, where
   * that was written since, beside it.
   * @returns the id under which the library has it
   */
  async function putBack({ planId, base, text, history }: JournalEntry): Promise<string> {
    const rows = await port.all("plans");
    const same = rows.find((row) => row.text === text && (planId === null || row.id === planId));
    if (same) return same.id;
    const historyRow = (id: string): RowChange => ({
      table: "histories",
      put: { id, text: JSON.stringify(history) },
    });
    const before = rows.find((row) => row.id === planId);
    if (before && before.revision === base) {
      const row = { ...before, revision: base + 1, text, savedAt: now(), deletedAt: null };
      if (await writeVerified(row, [historyRow(row.id)], base)) return row.id;
    }
    return addPacked(text, (fresh) => [historyRow(fresh)]);
  }

  /** Copies a plan with a name of its own; without its history. Null when it can't be read. */
  async function duplicate(id: string, name: string): Promise<string | null> {
    const row = await port.get("plans", id);
    if (!row) return null;
    try {
      const { plan } = parsePlan(await pictures.unpackText(row.text));
      const picture = await port.get("thumbnails", id);
      const text = serializePlan({ ...plan, name });
      return await add(text, (copy) =>
        picture ? [{ table: "thumbnails", put: { ...picture, id: copy } }] : [],
      );
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      return null;
    }
  }

  /** Takes a plan away for good, with everything that belongs to it. */
  async function erase(id: string): Promise<void> {
    const versions = await port.all("versions", `${id}/`);
    await port.write([
      { table: "plans", erase: id },
      { table: "histories", erase: id },
      { table: "thumbnails", erase: id },
      ...versions.map((version): RowChange => ({ table: "versions", erase: version.id })),
    ]);
    known.delete(id);
    summaries.delete(id);
    tell();
  }

  /** @returns false for a picture that is none or too large */
  async function setThumbnail(id: string, url: string): Promise<boolean> {
    if (!isThumbnail(url)) return false;
    await port.write([{ table: "thumbnails", put: { id, url } }]);
    tell();
    return true;
  }

  const versions = createVersions({ port, pictures, now, freshId, tell });
  return {
    port,
    list,
    open,
    keep: (planId: string | null, plan: Plan, history: History) =>
      withRoom(() => keep(planId, plan, history)),
    putBack,
    /** The plan with exactly this text that is not thrown out; null when there is none. */
    idOf: async (text: string): Promise<string | null> => {
      const packed = await pictures.packText(text);
      return (
        (await port.all("plans")).find((row) => row.text === packed && row.deletedAt === null)?.id ?? null
      );
    },
    pictures,
    /** The revision of a plan that this tab read or wrote last; null for one that it never did. */
    revisionOf: (id: string): number | null => known.get(id) ?? null,
    duplicate,
    archive: (id: string) => restand(id, { archivedAt: now() }),
    unarchive: (id: string) => restand(id, { archivedAt: null }),
    /** Puts a plan away so that `restore` brings it back. */
    remove: (id: string) => restand(id, { deletedAt: now() }),
    restore: (id: string) => restand(id, { deletedAt: null }),
    erase,
    ...versions,
    addVersion: (planId: string, label: string, plan: Plan) =>
      withRoom(() => versions.addVersion(planId, label, plan)),
    setThumbnail,
    add,
    /** Calls back after every change, made in this tab or (with a channel) in another. @returns how to stop */
    watch: (watcher: () => void) => {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
  };
}
