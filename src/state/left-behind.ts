/** What windows that are gone wrote down and couldn't keep any more is put back into the library. */

import type { Journal, Left } from "./storage/journal.ts";
import type { Library } from "./storage/library.ts";
import { createPlanLock, type Locks, type PlanLock } from "./storage/plan-lock.ts";

/** The name of the lock that a window holds as long as it is there. */
export const TAB_LOCK = "tab-";
export const lockOfTab = (tab: string): string => TAB_LOCK + tab;

interface PutBack {
  /** The id of the last plan that was put back; null when there was nothing. */
  readonly newest: string | null;
  /** Windows that are still there, as far as can be told: they keep their own. */
  readonly stillThere: readonly string[];
}

/** @throws StorageFault; what was not put back yet stays written down */
async function putBackLine(journal: Journal, library: Library, { tab, entry, raw }: Left): Promise<string> {
  const id = entry ? await library.putBack(entry) : await library.add(raw);
  journal.dropLeft(tab);
  return id;
}

/**
 * Puts into the library what windows that are gone wrote down and couldn't keep any more.
 * @throws StorageFault; what was not put back yet stays written down
 */
export async function putBackLeft(journal: Journal, library: Library, locks: Locks | null): Promise<PutBack> {
  let newest: string | null = null;
  const stillThere: string[] = [];
  for (const left of journal.left()) {
    const theirs = createPlanLock(locks);
    if (await theirs.hold(lockOfTab(left.tab))) newest = await putBackLine(journal, library, left);
    else stillThere.push(left.tab);
    theirs.release();
  }
  return { newest, stillThere };
}

/**
 * A busy machine may take long to end a window that was loaded anew: what it wrote down comes as soon as it is gone.
 * @param waits the locks that are waited for, so that whoever stops can let them go
 * @param onBack gets the id of the plan that was put back
 * @throws StorageFault
 */
export async function putBackOnceGone(
  journal: Journal,
  library: Library,
  locks: Locks | null,
  tab: string,
  waits: Set<PlanLock>,
  onBack: (id: string) => Promise<unknown>,
): Promise<void> {
  const theirs = createPlanLock(locks, Number.POSITIVE_INFINITY);
  waits.add(theirs);
  try {
    if (!(await theirs.hold(lockOfTab(tab)))) return;
    const left = journal.left().find((line) => line.tab === tab);
    if (left) await onBack(await putBackLine(journal, library, left));
  } finally {
    theirs.release();
    waits.delete(theirs);
  }
}
