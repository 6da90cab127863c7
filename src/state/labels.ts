/** What an undo step is called, as data: the screens say it in their language ("depth of tier 2"). */
import type { Plan } from "../core/plan/document.ts";
import type { Command, Said } from "./commands.ts";

export type Label =
  | { readonly about: "name" | "notes" | "tolerance" | "replace-plan" }
  /** `field` is the one field changed, missing when several were. */
  | { readonly about: "piece" | "rig"; readonly field?: string }
  /** `tier` counts from 1. */
  | { readonly about: "tier"; readonly tier: number; readonly field?: string }
  | {
      readonly about: "add-tier" | "remove-tier" | "duplicate-tier" | "move-tier";
      readonly tier: number;
    }
  | { readonly about: "field"; readonly path: string }
  /** `said` is what it changed, with the new value and the tier's name of then, by language. */
  | { readonly about: "mend"; readonly code: string; readonly said?: Said };

const isText = (value: unknown): boolean => typeof value === "string" && value.length <= 2000;
const isNumber = (value: unknown): boolean => typeof value === "number" && Number.isFinite(value);
const isMaybeText = (value: unknown): boolean => value === undefined || isText(value);

const isSaid = (value: unknown): value is Said =>
  typeof value === "object" && value !== null && !Array.isArray(value) && Object.values(value).every(isText);

/** Whether plain data, from a storage or a stranger's file, is a label. */
export function isLabel(data: unknown): data is Label {
  const { about, field, tier, path, code, said } = (data ?? {}) as Readonly<Record<string, unknown>>;
  switch (about) {
    case "name":
    case "notes":
    case "tolerance":
    case "replace-plan":
      return true;
    case "piece":
    case "rig":
      return isMaybeText(field);
    case "tier":
      return isNumber(tier) && isMaybeText(field);
    case "add-tier":
    case "remove-tier":
    case "duplicate-tier":
    case "move-tier":
      return isNumber(tier);
    case "field":
      return isText(path);
    case "mend":
      return isText(code) && (said === undefined || isSaid(said));
    default:
      return false;
  }
}

/** Mends that put what was cut into the plan, and what follows from it. */
const FOLLOWS_CUT: ReadonlySet<string> = new Set(["as-cut", "follow-cut"]);

const onlyField = (change: object): { readonly field?: string } => {
  const keys = Object.keys(change);
  return keys.length === 1 ? { field: keys[0] } : {};
};
/** Counts from 1; a tier that is not there counts as the next one. */
const tierNumber = (plan: Plan, tierId: string): number => {
  const at = plan.tiers.findIndex((tier) => tier.id === tierId);
  return (at < 0 ? plan.tiers.length : at) + 1;
};

/** Changes to `["tiers", 2, "asCut", ...]` and the like are named by the part that they touch. */
function labelOfPath(path: readonly (string | number)[]): Label {
  const [part, second, third] = path;
  if (part === "tiers" && typeof second === "number")
    return { about: "tier", tier: second + 1, ...(third === undefined ? {} : { field: String(third) }) };
  if (part === "piece" || part === "rig")
    return { about: part, ...(second === undefined ? {} : { field: String(second) }) };
  return { about: "field", path: path.join(".") };
}

/** @param plan the plan before the command */
export function labelOf(command: Command, plan: Plan): Label {
  switch (command.type) {
    case "set-name":
      return { about: "name" };
    case "set-notes":
      return { about: "notes" };
    case "set-tolerance":
      return { about: "tolerance" };
    case "set-piece":
      return { about: "piece", ...onlyField(command.change) };
    case "set-rig":
      return { about: "rig", ...onlyField(command.change) };
    case "add-tier":
      return { about: "add-tier", tier: (command.at ?? plan.tiers.length) + 1 };
    case "change-tier":
      return { about: "tier", tier: tierNumber(plan, command.tierId), ...onlyField(command.change) };
    case "duplicate-tier":
    case "move-tier":
    case "remove-tier":
      return { about: command.type, tier: tierNumber(plan, command.tierId) };
    case "set-field":
      return labelOfPath(command.path);
    case "replace-plan":
      return { about: "replace-plan" };
    case "apply-mend": {
      if (command.said) return { about: "mend", code: command.code, said: command.said };
      // A mend of one change is called what it changes; those that follow what was cut have names of their own.
      const [only, ...others] = command.commands;
      return only && others.length === 0 && !FOLLOWS_CUT.has(command.code)
        ? labelOf(only, plan)
        : { about: "mend", code: command.code };
    }
  }
}
