/**
 * Everything that can be done to a plan, as tagged plain data. A command can be stored, replayed and named; it is the
 * only way in which a plan changes. Several commands in a list (a mend) are one step.
 */
import type { Piece, Plan, Rig, Tier } from "../core/plan/document.ts";
import type { FileFault } from "../core/plan/file-fault.ts";

/** Fields to set; a field given as `undefined` is removed (only optional fields may be). */
export type Change<T> = { readonly [K in keyof T]?: T[K] | undefined };

export type Command =
  | { readonly type: "set-name"; readonly name: string }
  | { readonly type: "set-notes"; readonly notes: string | undefined }
  | { readonly type: "set-tolerance"; readonly toleranceMm: number | undefined }
  | { readonly type: "set-piece"; readonly change: Change<Piece> }
  | { readonly type: "set-rig"; readonly change: Change<Rig> }
  /** Puts a tier at position `at` (default: last). Its id is the first free one unless given. */
  | {
      readonly type: "add-tier";
      readonly tier: Omit<Tier, "id"> & { readonly id?: string };
      readonly at?: number;
    }
  /** Puts a copy right after the tier, without what was measured on it. */
  | {
      readonly type: "duplicate-tier";
      readonly tierId: string;
      readonly change?: Change<Omit<Tier, "id">>;
    }
  /** Moves a tier so that it stands at position `to` afterwards. */
  | { readonly type: "move-tier"; readonly tierId: string; readonly to: number }
  | { readonly type: "remove-tier"; readonly tierId: string }
  | {
      readonly type: "change-tier";
      readonly tierId: string;
      readonly change: Change<Omit<Tier, "id">>;
    }
  /** Sets one field anywhere (`["rig", "stages", 0, "discMm"]`), or removes it with `value: undefined`; in a list, an index one past the end appends. */
  | { readonly type: "set-field"; readonly path: readonly (string | number)[]; readonly value: unknown }
  /** Puts another whole plan in place, as one step that can be undone (a named version, a plan fitted to what was cut). */
  | { readonly type: "replace-plan"; readonly plan: Plan }
  /**
   * A mend offered by a finding: all its commands are one step. `code` is the finding's; `said` is what it was offered as, by
   * language, which the undo step is called.
   */
  | {
      readonly type: "apply-mend";
      readonly code: string;
      readonly commands: readonly Command[];
      readonly said?: Said;
    };

/** The same words by language. */
export type Said = Readonly<Record<string, string>>;

/** What a command did besides what was asked, or why it did nothing, told to the person. */
export type Note =
  /** A rule named a tier that is gone or later now; the tier keeps the depth that it had. */
  | {
      readonly key: "reference-became-depth";
      readonly tierId: string;
      readonly tierName: string;
      /** The name that the tier had, which may be none, and its place from 0. */
      readonly named: string;
      readonly namedAt: number;
      readonly mm: number;
    }
  /** Measured single facets that no longer exist were dropped. */
  | {
      readonly key: "measurements-dropped";
      readonly tierId: string;
      readonly tierName: string;
      readonly facets: number;
    }
  /** The plan can't take what was asked, and is unchanged. */
  | { readonly key: "refused"; readonly fault: FileFault }
  /** Steps kept from an earlier visit no longer fit the plan; they were set aside, the plan is unchanged. */
  | { readonly key: "history-unreadable" };

/** The first of t1, t2, ... that no tier has. */
export function freshTierId(tiers: readonly Pick<Tier, "id">[]): string {
  const taken = new Set(tiers.map((tier) => tier.id));
  let n = tiers.length + 1;
  while (taken.has(`t${n}`)) n++;
  return `t${n}`;
}
