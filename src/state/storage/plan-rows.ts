/**
 * Rows of plans, as this tab may write them (optimistic locking): every write is conditional on the revision that it knows, and is
 * read back before it counts as kept.
 */
import { StorageFault } from "./faults.ts";
import type { PlanRow, RowChange, StoragePort } from "./port.ts";

export type PlanRows = ReturnType<typeof createPlanRows>;

/** @param tell told after every change */
export function createPlanRows(port: StoragePort, tell: () => void) {
  /** The revision of each plan as this tab last read or wrote it. */
  const known = new Map<string, number>();

  /** Writes rows and makes sure that the plan's row reads back as written. */
  async function write(row: PlanRow, also: readonly RowChange[], revision: number): Promise<boolean> {
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
    const done = await write(next, [], row.revision);
    // a tab that didn't know the text before doesn't know it now
    if (done && !isKnown) known.delete(id);
    return done;
  }

  return {
    write,
    restand,
    /** The revision of a plan that this tab read or wrote last; null for one that it never did. */
    revisionOf: (id: string): number | null => known.get(id) ?? null,
    /** This tab has read that revision, and may write the next. */
    knows: (id: string, revision: number): void => void known.set(id, revision),
    forget: (id: string) => known.delete(id),
  };
}
