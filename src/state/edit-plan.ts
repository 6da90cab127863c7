/**
 * Applies commands to a frozen plan: gives the next frozen plan, the patches there and back, and notes. Rules that
 * would name a tier that is gone or comes later are turned into the depth which the tier had, and a note says so.
 */
import { create, type Draft, type Patches } from "mutative";
import type { Plan, Tier } from "../core/plan/document.ts";
import { deepFreeze, PlanFileError, planFromData } from "../core/plan/file.ts";
import { facetIds, hasPlaceOf } from "../core/plan/references.ts";
import { namedTierOf } from "../core/plan/rules/amounts.ts";
import { type Command, freshTierId, type Note } from "./commands.ts";
import { isSame, plainCopy } from "./plain.ts";

/** Depth of a tier in mm, as solved in the given plan. */
export type DepthOf = (plan: Plan, tierId: string) => number;

export interface Edit {
  readonly plan: Plan;
  /** From the old plan to the new one; empty when nothing changed. */
  readonly patches: Patches;
  readonly inverse: Patches;
  readonly notes: readonly Note[];
}

type PlanDraft = Draft<Plan>;
type TierDraft = Draft<Tier>;
type CommandOf<T extends Command["type"]> = Extract<Command, { readonly type: T }>;
type Fields = Record<string, unknown>;

/** Sets or (undefined) removes fields; leaves alone what already stands there, so that nothing counts as a change. */
function assignFields(target: object, change: object): void {
  const fields = target as Fields;
  for (const [key, value] of Object.entries(change)) {
    if (value === undefined) delete fields[key];
    else if (!isSame(fields[key], value)) fields[key] = plainCopy(value);
  }
}

function indexOf(plan: PlanDraft, tierId: string): number {
  const at = plan.tiers.findIndex((tier) => tier.id === tierId);
  if (at < 0) throw new PlanFileError({ code: "no-such-tier", data: { id: tierId } });
  return at;
}

function setField(plan: PlanDraft, path: readonly (string | number)[], value: unknown): void {
  let holder: unknown = plan;
  for (const step of path.slice(0, -1)) {
    const here = holder as Fields;
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, step))
      throw new PlanFileError({ code: "no-such-field", data: {}, path });
    holder = here[step];
  }
  const last = path[path.length - 1];
  if (last === undefined || last === "__proto__" || typeof holder !== "object" || holder === null)
    throw new PlanFileError({ code: "no-such-field", data: {}, path });
  if (Array.isArray(holder) && value === undefined) holder.splice(Number(last), 1);
  else assignFields(holder, { [last]: value });
}

function duplicateTier(plan: PlanDraft, tierId: string, change: object): void {
  const at = indexOf(plan, tierId);
  const { asCut: _measuredOnTheOther, ...copy } = plainCopy(plan.tiers[at]);
  assignFields(copy, change);
  plan.tiers.splice(at + 1, 0, { ...copy, id: freshTierId(plan.tiers) });
}

function moveTier(plan: PlanDraft, tierId: string, to: number): void {
  const from = indexOf(plan, tierId);
  const target = Math.min(Math.max(Math.trunc(to), 0), plan.tiers.length - 1);
  if (target === from) return;
  const order = [...plan.tiers];
  order.splice(target, 0, ...order.splice(from, 1));
  plan.tiers = order;
}

function replacePlan(plan: PlanDraft, next: Plan): void {
  // How far the glass has come is no matter of the plan that is put in place: it stays as far as that plan has the facet.
  const { work: _ofTheOther, ...fields } = next;
  for (const key of Object.keys(plan))
    if (key !== "work" && !Object.hasOwn(fields, key)) delete (plan as Fields)[key];
  assignFields(plan, fields);
}

function addTier(plan: PlanDraft, tier: Omit<Tier, "id"> & { readonly id?: string }, at: number): void {
  const whole = plainCopy({ ...tier, id: tier.id ?? freshTierId(plan.tiers) });
  plan.tiers.splice(at, 0, whole as TierDraft);
}

/** What each command does to the draft. */
const DEEDS: { readonly [T in Command["type"]]: (plan: PlanDraft, command: CommandOf<T>) => void } = {
  "set-name": (plan, { name }) => assignFields(plan, { name }),
  "set-notes": (plan, { notes }) => assignFields(plan, { notes }),
  "set-tolerance": (plan, { toleranceMm }) => assignFields(plan, { toleranceMm }),
  "set-piece": (plan, { change }) => assignFields(plan.piece, change),
  "set-rig": (plan, { change }) => assignFields(plan.rig, change),
  "add-tier": (plan, { tier, at }) => addTier(plan, tier, at ?? plan.tiers.length),
  "duplicate-tier": (plan, { tierId, change }) => duplicateTier(plan, tierId, change ?? {}),
  "move-tier": (plan, { tierId, to }) => moveTier(plan, tierId, to),
  "remove-tier": (plan, { tierId }) => {
    plan.tiers.splice(indexOf(plan, tierId), 1);
  },
  "change-tier": (plan, { tierId, change }) => assignFields(plan.tiers[indexOf(plan, tierId)], change),
  "set-field": (plan, { path, value }) => setField(plan, path, value),
  "replace-plan": (plan, command) => replacePlan(plan, command.plan),
  "apply-mend": (plan, { commands }) => {
    for (const command of commands) carryOut(plan, command);
  },
};

function carryOut<T extends Command["type"]>(plan: PlanDraft, command: CommandOf<T>): void {
  const deed: (plan: PlanDraft, command: CommandOf<T>) => void = DEEDS[command.type as T];
  deed(plan, command);
}

/** Commands after which a rule may name a tier that is gone or comes later, though nobody wrote that rule. */
const disturbsOrder = (command: Command): boolean =>
  command.type === "move-tier" ||
  command.type === "remove-tier" ||
  (command.type === "apply-mend" && command.commands.some(disturbsOrder));

/** Turns rules that can't be followed any more into the depth that the tier had before. */
function keepReferences(plan: PlanDraft, before: Plan, depthOf: DepthOf): Note[] {
  const notes: Note[] = [];
  const earlier = new Set<string>();
  for (const tier of plan.tiers) {
    const named = namedTierOf((tier as Tier).depth);
    const known = before.tiers.some((old) => old.id === tier.id);
    if (named !== null && !earlier.has(named) && known) {
      const mm = depthOf(before, tier.id);
      tier.depth = plainCopy({ rule: "depth", mm });
      const namedAt = before.tiers.findIndex((old) => old.id === named);
      notes.push({
        key: "reference-became-depth",
        tierId: tier.id,
        tierName: tier.name,
        named: before.tiers[namedAt]?.name ?? named,
        namedAt,
        mm,
      });
    }
    earlier.add(tier.id);
  }
  return notes;
}

/** Drops measurements of single facets that a smaller count took away. */
function keepMeasuredFacets(plan: PlanDraft): Note[] {
  const notes: Note[] = [];
  for (const tier of plan.tiers) {
    const measured = tier.asCut?.facets;
    if (!measured) continue;
    const own = new Set(facetIds(tier as Tier));
    const gone = Object.keys(measured).filter((id) => !own.has(id));
    for (const id of gone) delete measured[id];
    if (gone.length > 0)
      notes.push({
        key: "measurements-dropped",
        tierId: tier.id,
        tierName: tier.name,
        facets: gone.length,
      });
  }
  return notes;
}

/**
 * @param plan a valid frozen plan
 * @throws PlanFileError (nothing has changed then) when the outcome would be no valid plan: names the field and what is allowed
 */
export function editPlan(plan: Plan, command: Command, depthOf: DepthOf): Edit {
  const notes: Note[] = [];
  const [next, patches, inverse] = create(
    plan,
    (draft) => {
      carryOut(draft, command);
      if (disturbsOrder(command)) notes.push(...keepReferences(draft, plan, depthOf));
      if (command.type !== "set-field" && draft.work && !hasPlaceOf(draft.tiers, draft.work))
        delete draft.work;
      if (command.type !== "replace-plan") notes.push(...keepMeasuredFacets(draft));
    },
    { enablePatches: true },
  );
  planFromData(next);
  return { plan: deepFreeze(next), patches: deepFreeze(patches), inverse: deepFreeze(inverse), notes };
}
