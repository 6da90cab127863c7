/** Changes plans on the bench without losing any: what lies there is kept first, and what can't be kept stays unless one goes on all the same. */
import type { StoreApi } from "zustand/vanilla";
import type { Plan } from "../core/plan/document.ts";
import { type PlanFile, serializePlan } from "../core/plan/file.ts";
import type { FileFault } from "../core/plan/file-fault.ts";
import type { Autosave } from "./storage/autosave.ts";
import { type FaultKind, faultOf } from "./storage/faults.ts";
import type { StorageHealth } from "./storage/health.ts";
import type { Library } from "./storage/library.ts";
import type { PlanLock } from "./storage/plan-lock.ts";
import type { PlanStore } from "./store.ts";

/** What lies on the bench is kept, or could not be: say `evenUnkept` to go on all the same. */
type BenchCleared =
  | { readonly ok: true }
  | { readonly ok: false; readonly why: "bench-unkept"; readonly fault: FaultKind };
type BenchChange =
  | BenchCleared
  /** The plan can't be read; `text` is what is kept of it. */
  | {
      readonly ok: false;
      readonly why: "unreadable";
      readonly fault: FileFault;
      readonly text: string | null;
    };

export interface BenchChanges {
  /** Puts a plan of the library on the bench. */
  readonly openPlan: (id: string, evenUnkept?: boolean) => Promise<BenchChange>;
  /** Puts a plan from a file, a link or an example on the bench; it joins the library with the first change, or at once with `keep`. */
  readonly layPlan: (
    file: PlanFile,
    options?: { readonly keep?: boolean; readonly evenUnkept?: boolean },
  ) => Promise<BenchCleared>;
  /**
   * Keeps pictures that a plan is about to hold: it can then be written down the moment it does. Never rejects: where they can't be
   * kept the plan can't either, and that is told.
   */
  readonly keepAhead: (data: unknown) => Promise<void>;
}

interface Bench {
  readonly store: PlanStore;
  readonly library: Library;
  readonly autosave: Autosave;
  /** Held as long as a plan of the library lies on the bench. */
  readonly lock: PlanLock;
  readonly health: StoreApi<StorageHealth>;
  readonly prepare?: (plan: Plan) => Promise<void>;
}

export function benchChanges({ store, library, autosave, lock, health, prepare }: Bench): BenchChanges {
  /** Makes sure that nothing on the bench is lost when another plan takes its place. */
  async function clearBench(evenUnkept: boolean): Promise<BenchCleared> {
    store.getState().endDrag();
    const status = await autosave.flush();
    return status.state === "failed" && !evenUnkept
      ? { ok: false, why: "bench-unkept", fault: status.fault }
      : { ok: true };
  }

  async function openPlan(id: string, evenUnkept = false): Promise<BenchChange> {
    // kept first, so that reopening the plan on the bench reads its last state
    const cleared = await clearBench(evenUnkept);
    if (!cleared.ok) return cleared;
    const opening = await library.open(id);
    if (!opening.ok) return { ok: false, why: "unreadable", fault: opening.fault, text: opening.text };
    await prepare?.(opening.file.plan);
    // whatever was changed meanwhile is kept too
    const clearedAgain = await clearBench(evenUnkept);
    if (!clearedAgain.ok) return clearedAgain;
    const fault = store.getState().open({ ...opening.file, planId: id, history: opening.history });
    if (fault) return { ok: false, why: "unreadable", fault, text: serializePlan(opening.file.plan) };
    autosave.settle();
    // asked for early; whether it was granted matters with the first change
    lock.hold(id).catch((error: unknown) => health.setState({ fault: faultOf(error).kind }));
    return { ok: true };
  }

  const keepAhead = (data: unknown): Promise<void> =>
    library.pictures.packData(data).then(
      () => undefined,
      () => undefined,
    );

  async function layPlan(
    file: PlanFile,
    { keep = false, evenUnkept = false }: { keep?: boolean; evenUnkept?: boolean } = {},
  ): Promise<BenchCleared> {
    await Promise.all([prepare?.(file.plan), keepAhead(file.plan)]);
    const cleared = await clearBench(evenUnkept);
    if (!cleared.ok) return cleared;
    // an object of its own: the same example laid twice is two plans
    const fault = store.getState().open({ ...file, plan: { ...file.plan }, planId: null });
    // what can't be reckoned has left the bench as it was, and the store says so
    if (fault) return { ok: true };
    lock.release();
    if (keep) await autosave.flush();
    else autosave.settle();
    return { ok: true };
  }

  return { openPlan, layPlan, keepAhead };
}
