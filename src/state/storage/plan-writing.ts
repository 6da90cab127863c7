/** How plans come into the storage: new ones, the one on the bench, what another window wrote down, a copy. */
import type { Plan } from "../../core/plan/document.ts";
import { PlanFileError, parsePlan, serializePlan } from "../../core/plan/file.ts";
import type { History } from "../history.ts";
import { StorageFault } from "./faults.ts";
import type { JournalEntry } from "./journal.ts";
import type { PicturesWhenNeeded } from "./pictures-when-needed.ts";
import type { PlanRows } from "./plan-rows.ts";
import type { PlanRow, RowChange, StoragePort } from "./port.ts";

type Keeping =
  | { readonly kept: true; readonly planId: string; readonly at: number }
  /** Someone else has written this plan since; nothing was written. */
  | { readonly kept: false };

type Also = (id: string) => readonly RowChange[];
type Standing = Partial<Omit<PlanRow, "text" | "revision">>;

/** Reads a plan once before it is written. @throws StorageFault for one that could not be opened again */
function checkReadableAgain(plan: Plan): void {
  try {
    parsePlan(serializePlan(plan));
  } catch (error) {
    throw new StorageFault("unreadable", "what would be written could not be opened again", error);
  }
}

interface WritingOptions {
  readonly port: StoragePort;
  readonly rows: PlanRows;
  readonly pictures: PicturesWhenNeeded;
  readonly now: () => number;
  readonly freshId: () => string;
}

export function createPlanWriting({ port, rows, pictures, now, freshId }: WritingOptions) {
  /** Puts a new plan on the shelf; `standing` gives it an id or dates of its own (a restored one). */
  const add = async (text: string, also?: Also, standing?: Standing): Promise<string> =>
    addPacked(await pictures.packText(text), also, standing);

  /** The same for a text with marks. */
  async function addPacked(text: string, also: Also = () => [], standing: Standing = {}): Promise<string> {
    const at = now();
    const fresh = { id: freshId(), createdAt: at, savedAt: at, archivedAt: null, deletedAt: null };
    const row: PlanRow = { ...fresh, ...standing, text, revision: 1 };
    if (!(await rows.write(row, also(row.id), 0)))
      throw new StorageFault("damaged", "a fresh id is taken already");
    return row.id;
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
    const revision = rows.revisionOf(planId);
    const before = await port.get("plans", planId);
    if (!before || revision === null || before.revision !== revision) return { kept: false };
    const at = now();
    const row = { ...before, revision: revision + 1, text, savedAt: at, deletedAt: null };
    return (await rows.write(row, [historyRow(planId)], revision))
      ? { kept: true, planId, at }
      : { kept: false };
  }

  /**
   * Puts what a window wrote down and couldn't keep any more where it belongs: over the state that it rests on, or, where
   * that was written since, beside it.
   * @returns the id under which the library has it
   */
  async function putBack({ planId, base, text, history }: JournalEntry): Promise<string> {
    const all = await port.all("plans");
    const same = all.find((row) => row.text === text && (planId === null || row.id === planId));
    if (same) return same.id;
    const historyRow = (id: string): RowChange => ({
      table: "histories",
      put: { id, text: JSON.stringify(history) },
    });
    const before = all.find((row) => row.id === planId);
    if (before && before.revision === base) {
      const row = { ...before, revision: base + 1, text, savedAt: now(), deletedAt: null };
      if (await rows.write(row, [historyRow(row.id)], base)) return row.id;
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

  return { add, keep, putBack, duplicate };
}
