/** A mend in words: what it changes, and what comes of it. */
import { startLabel } from "../../../core/bench/set-up.ts";
import type { Mend, MendChange } from "../../../core/check/mends.ts";
import type { DepthRule, Plan } from "../../../core/plan/document.ts";
import type { drawings } from "../../../words/en/drawings.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Translated } from "../../../words/language.ts";
import { nameOfTier } from "../drag/DragReadout.tsx";

type Words = Translated<typeof drawings>["mends"];

function ruleSaid(tier: string, depth: DepthRule, plan: Plan, words: Words, format: Formats): string {
  switch (depth.rule) {
    case "touch":
      return words.rule.touch(tier);
    case "close":
      return words.rule.close(tier, nameOfTier(plan, depth.to));
    case "corners":
      return words.rule.corners(tier, nameOfTier(plan, depth.of));
    default:
      return words.rule[depth.rule](tier, format.length(depth.mm, 2));
  }
}

function changeSaid(change: MendChange, plan: Plan, words: Words, format: Formats): string {
  switch (change.to) {
    case "dop":
      return words.dop(format.length(change.mm));
    case "wheel":
      return words.wheel(String(change.stops));
    case "angle": {
      const said = change.deg > change.fromDeg ? words.raise : words.lower;
      return said(nameOfTier(plan, change.tierId), format.armAngle(change.deg));
    }
    case "depth": {
      const said = change.mm > change.fromMm ? words.deeper : words.shallower;
      return said(nameOfTier(plan, change.tierId), format.length(change.mm, 2));
    }
    case "rule": {
      const said = ruleSaid(nameOfTier(plan, change.tierId), change.depth, plan, words, format);
      return change.deg === undefined ? said : words.at(said, format.armAngle(change.deg));
    }
    case "count":
      return words.count(nameOfTier(plan, change.tierId), String(change.count));
    case "start": {
      const tier = plan.tiers.find((one) => one.id === change.tierId);
      const label = tier ? startLabel(plan, tier, change.deg) : null;
      const at = label === null ? format.degrees(change.deg) : words.stop(label);
      return words.start(nameOfTier(plan, change.tierId), at);
    }
    case "remove":
      return words.remove(nameOfTier(plan, change.tierId));
  }
}

/** What is gained, by the finding's code; for a rule that could not be met, by the rule. */
function effectSaid(mend: Mend, plan: Plan, words: Words): string {
  const effects: Readonly<Record<string, string>> = words.effect;
  if (mend.code !== "rule-unmet") return effects[mend.code] ?? words.effect.other;
  const { change } = mend;
  const tier = plan.tiers.find((t) => t.id === ("tierId" in change ? change.tierId : ""));
  const rule = change.to === "rule" ? change.depth.rule : tier?.depth.rule;
  return rule === "close"
    ? words.effect["skin-between"]
    : rule === "corners"
      ? words.effect["near-miss"]
      : words.effect.other;
}

/** "Raise Shoulder to 41.5°: the band closes" */
export function mendSaid(mend: Mend, plan: Plan, words: Words, format: Formats): string {
  const said = words.mend(changeSaid(mend.change, plan, words, format), effectSaid(mend, plan, words));
  return mend.brings.length === 0 ? said : words.brings(said, mend.brings.length);
}
