/**
 * The library of plans: everything a person has made, found again, copied, put away, brought back. Works on any storage
 * port. Every write of a plan is conditional on the revision that this tab knows, and is read back before it counts as kept.
 */
import type { Plan } from "../../core/plan/document.ts";
import { type PlanFile, PlanFileError, parsePlan } from "../../core/plan/file.ts";
import type { FileFault } from "../../core/plan/file-fault.ts";
import { freshId as anyFreshId } from "../fresh-id.ts";
import { type History, historyFromData, NO_HISTORY } from "../history.ts";
import { faultOf } from "./faults.ts";
import { picturesWhenNeeded } from "./pictures-when-needed.ts";
import { createPlanRows } from "./plan-rows.ts";
import { createPlanWriting } from "./plan-writing.ts";
import type { RowChange, StoragePort } from "./port.ts";
import { createSummaries, isThumbnail, soundRow } from "./summaries.ts";
import { createVersions } from "./versions.ts";

export type Opening =
  | { readonly ok: true; readonly file: PlanFile; readonly history: History }
  /** `text` is what is kept, null when nothing is. */
  | { readonly ok: false; readonly fault: FileFault; readonly text: string | null };

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

/** The steps in a text from the storage or a backup; none for one that can't be read: that costs the steps back, never the plan. */
export function historyOf(text: unknown): History {
  try {
    return (typeof text === "string" ? historyFromData(JSON.parse(text)) : null) ?? NO_HISTORY;
  } catch {
    return NO_HISTORY;
  }
}

/** Who hears of changes in the library, in this tab and in others. */
function createWatch(otherTabs: TabChannel | null) {
  const watchers = new Set<() => void>();
  const hear = (): void => {
    for (const watcher of watchers) watcher();
  };
  if (otherTabs) otherTabs.onmessage = hear;
  return {
    tell: (): void => {
      otherTabs?.postMessage("changed");
      hear();
    },
    /** Calls back after every change, made in this tab or (with a channel) in another. @returns how to stop */
    watch: (watcher: () => void) => {
      watchers.add(watcher);
      return () => watchers.delete(watcher);
    },
  };
}

export type Library = ReturnType<typeof createLibrary>;

export function createLibrary({
  port,
  otherTabs = null,
  now = Date.now,
  freshId = anyFreshId,
  makeRoom = async () => false,
}: LibraryOptions) {
  const pictures = picturesWhenNeeded(port);
  const { tell, watch } = createWatch(otherTabs);
  const rows = createPlanRows(port, tell);
  const summaries = createSummaries(port);
  const writing = createPlanWriting({ port, rows, pictures, now, freshId });
  const versions = createVersions({ port, pictures, now, freshId, tell });

  /** Tries once more, from its beginning, where room could be made: what it had written by then may be gone too. */
  async function withRoom<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (faultOf(error).kind !== "full" || !(await makeRoom())) throw error;
      return work();
    }
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
      rows.knows(id, row.revision);
      return { ok: true, file, history: historyOf(steps) };
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      return { ok: false, fault: error.fault, text };
    }
  }

  /** Takes a plan away for good, with everything that belongs to it. */
  async function erase(id: string): Promise<void> {
    const itsVersions = await port.all("versions", `${id}/`);
    await port.write([
      { table: "plans", erase: id },
      { table: "histories", erase: id },
      { table: "thumbnails", erase: id },
      ...itsVersions.map((version): RowChange => ({ table: "versions", erase: version.id })),
    ]);
    rows.forget(id);
    summaries.forget(id);
    tell();
  }

  /** @returns false for a picture that is none or too large */
  async function setThumbnail(id: string, url: string): Promise<boolean> {
    if (!isThumbnail(url)) return false;
    await port.write([{ table: "thumbnails", put: { id, url } }]);
    tell();
    return true;
  }

  return {
    port,
    list: summaries.list,
    open,
    keep: (planId: string | null, plan: Plan, history: History) =>
      withRoom(() => writing.keep(planId, plan, history)),
    putBack: writing.putBack,
    /** The plan with exactly this text that is not thrown out; null when there is none. */
    idOf: async (text: string): Promise<string | null> => {
      const packed = await pictures.packText(text);
      return (
        (await port.all("plans")).find((row) => row.text === packed && row.deletedAt === null)?.id ?? null
      );
    },
    pictures,
    revisionOf: rows.revisionOf,
    duplicate: writing.duplicate,
    archive: (id: string) => rows.restand(id, { archivedAt: now() }),
    unarchive: (id: string) => rows.restand(id, { archivedAt: null }),
    /** Puts a plan away so that `restore` brings it back. */
    remove: (id: string) => rows.restand(id, { deletedAt: now() }),
    restore: (id: string) => rows.restand(id, { deletedAt: null }),
    erase,
    ...versions,
    addVersion: (planId: string, label: string, plan: Plan) =>
      withRoom(() => versions.addVersion(planId, label, plan)),
    setThumbnail,
    add: writing.add,
    watch,
  };
}
