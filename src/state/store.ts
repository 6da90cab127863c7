/**
 * The one store: the plan on the bench, its history, what is selected, where the person is, how they like to see things.
 * No three, no React. The plan is a frozen document; it changes only through commands. Derived values (solved plan,
 * solid, report) are not kept here: `derived.ts` gives them for a plan object, computed once.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import { InexactCut } from "../core/geometry/inexact-cut.ts";
import type { Plan, Tier, Work } from "../core/plan/document.ts";
import { deepFreeze, PlanFileError } from "../core/plan/file.ts";
import type { FileFault } from "../core/plan/file-fault.ts";
import type { Change, Command, Note } from "./commands.ts";
import { difference } from "./difference.ts";
import { type DepthOf, type Edit, editPlan } from "./edit-plan.ts";
import { type History, NO_HISTORY, stepBack, stepForward, withStep } from "./history.ts";
import { type Label, labelOf } from "./labels.ts";
import { DEFAULT_PREFERENCES, type Preferences } from "./preferences.ts";

export type Place = "plan" | "look" | "bench" | "ideas";
/** A facet names its tier too; a tier may be picked without a facet. */
export interface Pick {
  readonly tierId: string | null;
  readonly facetId: string | null;
}
const NOTHING: Pick = { tierId: null, facetId: null };

/**
 * What came of a command: done, with what else it did, or refused with one line that names the field and what is allowed;
 * `fault` is there when the plan can't take it.
 */
export type Outcome =
  | { readonly ok: true; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly message: string; readonly fault?: FileFault };

interface Drag {
  readonly label: Label;
  /** The very document that cancelling brings back. */
  readonly before: Plan;
  readonly notes: readonly Note[];
}

export interface PlanState {
  readonly plan: Plan;
  /** Which plan of the library this is; null until it is kept there. */
  readonly planId: string | null;
  /** How many plans have been laid on the bench in place of another: as long as it stays, it is the same piece of work. */
  readonly laid: number;
  /** Paths of fields in the opened file that aren't understood (they are kept). */
  readonly unknown: readonly string[];
  readonly history: History;
  readonly drag: Drag | null;
  /** What the last command did besides what was asked, or why it was refused. */
  readonly notes: readonly Note[];
  readonly selection: Pick;
  readonly hover: Pick;
  readonly place: Place;
  readonly preferences: Preferences;
}

/** A plan to put on the bench, with its own past. */
interface Opened {
  readonly plan: Plan;
  readonly planId?: string | null;
  readonly history?: History;
  readonly unknown?: readonly string[];
}

export interface PlanActions {
  /** Carries out a command as one undo step. During a drag it is refused: end or cancel the drag first. */
  readonly dispatch: (command: Command) => Outcome;
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  /** Begins a drag; one already under way is ended first. */
  readonly beginDrag: (label: Label) => void;
  /** Carries out a command live; any number of them between begin and end are one undo step. */
  readonly dragTo: (command: Command) => Outcome;
  readonly endDrag: () => void;
  /** Puts back the very document that was there when the drag began. */
  readonly cancelDrag: () => void;
  /**
   * Rollback: the plan on the bench turned out to be one that can't be reckoned: goes back by a step, or, where none is remembered, to a plan
   * that could be; a note says why.
   */
  readonly takeBack: (before: Plan) => void;
  /**
   * Puts another plan on the bench with its own history; selection is cleared. Not an undo step. A plan that can't be
   * reckoned stays off it: the answer is why, and a note says so.
   */
  readonly open: (opened: Opened) => FileFault | null;
  readonly select: (pick: Partial<Pick>) => void;
  readonly setHover: (pick: Partial<Pick>) => void;
  /** Navigates to a place. */
  readonly go: (place: Place) => void;
  /** Saves the progress: keeps in the plan where the work at the lap stands (undefined: before its first facet). Not an undo step. */
  readonly standAt: (work: Work | undefined) => Outcome;
  /** Sets preferences. */
  readonly prefer: (change: Change<Preferences>) => void;
  /** Says which plan of the library this is, after it was first kept or had to become a copy. */
  readonly setPlanId: (planId: string) => void;
  readonly dismissNotes: () => void;
}

type PlanDragging = { readonly [K in "beginDrag" | "dragTo" | "endDrag" | "cancelDrag"]: PlanActions[K] };

export type PlanStore = StoreApi<PlanState & PlanActions>;

export interface StoreOptions extends Opened {
  readonly depthOf: DepthOf;
  /**
   * Reckons what every view of a plan will ask for. One that throws `InexactCut` never comes to the bench: the edit is
   * refused, the plan not opened, and the note says why. May leave an edit (`isEdit`) to be found out later: see `takeBack`.
   */
  readonly reckon?: (plan: Plan, isEdit: boolean) => unknown;
  readonly preferences?: Preferences;
  readonly place?: Place;
}

/** A pick with the tier that a facet belongs to filled in: `tierId/k`. */
function completed({ tierId = null, facetId = null }: Partial<Pick>): Pick {
  if (facetId === null) return { tierId, facetId };
  return { tierId: facetId.slice(0, facetId.lastIndexOf("/")), facetId };
}

const holds = (tier: Tier, facetId: string): boolean => {
  const k = Number(facetId.slice(facetId.lastIndexOf("/") + 1));
  return k >= 1 && k <= tier.count;
};
/** The pick as far as the plan still has it. */
function surviving(pick: Pick, plan: Plan): Pick {
  if (pick.tierId === null) return pick;
  const tier = plan.tiers.find((one) => one.id === pick.tierId);
  if (!tier) return NOTHING;
  return pick.facetId === null || holds(tier, pick.facetId) ? pick : { ...pick, facetId: null };
}

const freshState = (opened: Opened, laid: number) => ({
  plan: deepFreeze(opened.plan),
  laid,
  planId: opened.planId ?? null,
  unknown: opened.unknown ?? [],
  history: opened.history ?? NO_HISTORY,
  drag: null,
  notes: [],
  selection: NOTHING,
  hover: NOTHING,
});

type SetState = StoreApi<PlanState & PlanActions>["setState"];
type GetState = StoreApi<PlanState & PlanActions>["getState"];

/** How a plan comes to the bench, or is kept off it: what dispatching, dragging, stepping and opening share. */
function benchOf(set: SetState, get: GetState, { depthOf, reckon }: StoreOptions) {
  /** Shows a plan with selection and hover that still exist in it. */
  const show = (plan: Plan, also: Partial<PlanState>): void =>
    set((state) => ({
      plan,
      selection: surviving(state.selection, plan),
      hover: surviving(state.hover, plan),
      ...also,
    }));

  /** Null when the plan's solid is known; else why there is none. */
  const reckoningFault = (plan: Plan, isEdit: boolean): FileFault | null => {
    try {
      reckon?.(plan, isEdit);
      return null;
    } catch (error) {
      if (error instanceof InexactCut) return { code: "not-reckoned", data: {} };
      throw error;
    }
  };

  /** Carries out a command and hands the edit on, or answers why not. */
  const attempt = (command: Command, accept: (edit: Edit) => void): Outcome => {
    try {
      const edit = editPlan(get().plan, command, depthOf);
      const fault = edit.patches.length > 0 ? reckoningFault(edit.plan, true) : null;
      if (fault) throw new PlanFileError(fault);
      if (edit.patches.length > 0) accept(edit);
      return { ok: true, notes: edit.notes };
    } catch (error) {
      if (error instanceof PlanFileError) return { ok: false, message: error.message, fault: error.fault };
      throw error;
    }
  };

  /** Undo or redo; steps of an earlier visit that don't fit are set aside, never forced onto the plan. */
  const walk = (step: typeof stepBack): boolean => {
    get().endDrag();
    const { plan, history } = get();
    try {
      const walked = step(plan, history);
      if (walked) show(walked.plan, { history: walked.history, notes: [] });
      return walked !== null;
    } catch {
      set({ history: NO_HISTORY, notes: [{ key: "history-unreadable" }] });
      return false;
    }
  };
  return { show, reckoningFault, attempt, walk };
}

type Bench = ReturnType<typeof benchOf>;

/** Edits that last from a press to its release, one undo step each. */
const dragging = (set: SetState, get: GetState, { show, attempt }: Bench): PlanDragging => ({
  beginDrag: (label) => {
    get().endDrag();
    set({ drag: { label, before: get().plan, notes: [] } });
  },
  dragTo: (command) => {
    const { drag } = get();
    if (!drag) return { ok: false, message: "no drag is under way" };
    return attempt(command, ({ plan, notes }) =>
      show(plan, { drag: { ...drag, notes: [...drag.notes, ...notes] } }),
    );
  },
  endDrag: () => {
    const { drag, plan, history } = get();
    if (!drag) return;
    const patches = difference(drag.before, plan);
    const inverse = difference(plan, drag.before);
    const step = { label: drag.label, patches, inverse };
    if (patches.length === 0) show(drag.before, { drag: null });
    else set({ drag: null, notes: drag.notes, history: withStep(history, step) });
  },
  cancelDrag: () => {
    const { drag } = get();
    if (drag) show(drag.before, { drag: null });
  },
});

/** A store with one plan on the bench. `plan` must be valid (from `parsePlan`, an example, or another store). */
export function createPlanStore(options: StoreOptions): PlanStore {
  return createStore<PlanState & PlanActions>()((set, get) => {
    const bench = benchOf(set, get, options);
    const { show, reckoningFault, attempt, walk } = bench;
    return {
      ...freshState(options, 0),
      place: options.place ?? "plan",
      preferences: options.preferences ?? DEFAULT_PREFERENCES,

      dispatch: (command) => {
        const { drag, plan, history } = get();
        if (drag) return { ok: false, message: "a drag is under way" };
        const label = labelOf(command, plan);
        const outcome = attempt(command, ({ plan: next, patches, inverse, notes }) =>
          show(next, { history: withStep(history, { label, patches, inverse }), notes }),
        );
        if (!outcome.ok && outcome.fault) set({ notes: [{ key: "refused", fault: outcome.fault }] });
        return outcome;
      },
      undo: () => walk(stepBack),
      redo: () => walk(stepForward),

      ...dragging(set, get, bench),
      takeBack: (before) => {
        if (!get().undo()) get().dispatch({ type: "replace-plan", plan: before });
        set({ notes: [{ key: "refused", fault: { code: "not-reckoned", data: {} } }] });
      },

      open: (opened) => {
        const fault = reckoningFault(deepFreeze(opened.plan), false);
        if (fault) set({ notes: [{ key: "refused", fault }] });
        else set((state) => freshState(opened, state.laid + 1));
        return fault;
      },
      select: (pick) => set({ selection: completed(pick) }),
      setHover: (pick) => set({ hover: completed(pick) }),
      go: (place) => set({ place }),
      standAt: (work) => {
        get().endDrag();
        return attempt({ type: "set-field", path: ["work"], value: work }, ({ plan }) => show(plan, {}));
      },
      prefer: (change) =>
        set(({ preferences }) => ({ preferences: { ...preferences, ...change } as Preferences })),
      setPlanId: (planId) => set({ planId }),
      dismissNotes: () => set({ notes: [] }),
    };
  });
}
