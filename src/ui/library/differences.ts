/** What differs between two plans as lines a person reads: fields by their words, values with their units. */
import type { DepthRule, Plan } from "../../core/plan/document.ts";
import { amountOf, namedTierOf } from "../../core/plan/rules/amounts.ts";
import { comparePlans, type PlanChange } from "../../state/compare.ts";
import type { history } from "../../words/en/history.ts";
import type { library } from "../../words/en/library.ts";
import type { plan as planEn } from "../../words/en/plan.ts";
import type { Formats } from "../../words/formats.ts";
import type { Translated } from "../../words/language.ts";
import { nameOrPlace } from "../../words/names.ts";
import type { RuleWords } from "../../words/rules.ts";

export interface DifferenceLine {
  readonly what: string;
  readonly before: string;
  readonly current: string;
}

export interface DifferenceWords {
  readonly history: Translated<typeof history>;
  readonly plan: Translated<typeof planEn>;
  readonly rules: RuleWords;
  readonly versions: Translated<(typeof library)["versions"]>;
  readonly format: Formats;
}

type Words = Readonly<Record<string, string>>;
const wordOr = (words: Words, key: string, otherwise: string): string =>
  Object.hasOwn(words, key) ? words[key]! : otherwise;

/** Decimals of a millimetre that a length in a plan is shown with. */
const LENGTH_DIGITS = 2;

/** "until they share edges of 5.00 mm", "to the corners of Waist". `names` gives tiers' names by id. */
function ruleInWords(rule: DepthRule, words: DifferenceWords, names: ReadonlyMap<string, string>): string {
  const said = words.rules[rule.rule].name;
  const mm = amountOf(rule);
  if (mm !== null) return `${said} ${words.format.length(mm, LENGTH_DIGITS)}`;
  const other = namedTierOf(rule);
  return other === null ? said : `${said} ${names.get(other) ?? other}`;
}

/** A value of one field. Parts too large for a line are only said to be there. */
function valueInWords(
  field: string,
  value: unknown,
  words: DifferenceWords,
  names: ReadonlyMap<string, string>,
): string {
  const { versions, format, plan } = words;
  if (value === undefined) return versions.absent;
  if (field === "armAngleDeg") return format.armAngle(Number(value));
  if (field === "side") return wordOr(plan.sides, String(value), String(value));
  if (field === "depth") return ruleInWords(value as DepthRule, words, names);
  if (typeof value === "number" && field.endsWith("Deg")) return format.degrees(value);
  if (typeof value === "number" && field.endsWith("Mm")) return format.length(value, LENGTH_DIGITS);
  return typeof value === "object" ? versions.present : String(value);
}

/** The word for a field of the plan itself, of the piece or of the rig. */
function partInWords(about: "plan" | "piece" | "rig", field: string, { history }: DifferenceWords): string {
  if (about === "piece") return wordOr(history.pieceFields, field, history.about.piece);
  if (about === "rig") return wordOr(history.rigFields, field, history.about.rig);
  const own: Words = {
    name: history.about.name,
    notes: history.about.notes,
    toleranceMm: history.about.tolerance,
  };
  return wordOr(own, field, history.about.field);
}

function linesOf(
  change: PlanChange,
  words: DifferenceWords,
  names: ReadonlyMap<string, string>,
): DifferenceLine[] {
  const { present, absent } = words.versions;
  if (!("fields" in change)) {
    const isNew = change.about === "tier-added";
    return [
      {
        what: names.get(change.tier.id) ?? "",
        before: isNew ? absent : present,
        current: isNew ? present : absent,
      },
    ];
  }
  const value = (field: string, v: unknown) => valueInWords(field, v, words, names);
  if (change.about !== "tier") {
    const { about } = change;
    return change.fields.map(({ field, from, to }) => ({
      what: partInWords(about, field, words),
      before: value(field, from),
      current: value(field, to),
    }));
  }
  const { tier } = change;
  const moved = change.moved
    ? [
        {
          what: names.get(tier.id) ?? "",
          before: words.plan.tierNumber(change.from),
          current: words.plan.tierNumber(change.to),
        },
      ]
    : [];
  const fields = change.fields.map(({ field, from, to }) => ({
    what: `${names.get(tier.id) ?? ""}, ${wordOr(words.history.tierFields, field, words.history.about.field)}`,
    before: value(field, from),
    current: value(field, to),
  }));
  return [...moved, ...fields];
}

/** All lines, in the order in which a person reads a plan; none when the plans are the same. */
export function differenceLines(before: Plan, current: Plan, words: DifferenceWords): DifferenceLine[] {
  const names = new Map(
    [before, current].flatMap(({ tiers }) =>
      tiers.map(({ id, name }, i) => [id, nameOrPlace(name, i, words.plan.tierNumber)] as const),
    ),
  );
  return comparePlans(before, current).flatMap((change) => linesOf(change, words, names));
}
