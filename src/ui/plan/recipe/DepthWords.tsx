/** How deep: one of the rules as the end of the sentence, with its number or the tier that it follows. */
import type { DepthRule, Plan, RuleName, Tier } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { amountOf, namedTierOf, withAmount, withNamed } from "../../../core/plan/rules/amounts.ts";
import { OFFERED, RULES } from "../../../core/plan/rules/records.ts";
import { report, solved } from "../../../state/derived.ts";
import { tierName } from "../../../words/names.ts";
import { Choice } from "../../controls/Choice.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Sentence } from "../../controls/Sentence.tsx";
import { planWords } from "../../messages/plan.ts";
import { ruleWords } from "../../messages/rules.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { settledPlan } from "../../settled.ts";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { tierTruth } from "./tier-truth.ts";

/** A hundredth of a millimetre is less than a stroke takes. */
const STEP_MM = 0.05;
const STEP_INCH_MM = 0.0254;

/** The rule that keeps the piece as near as can be to what it is now. */
function ruleFrom(name: RuleName, plan: Plan, tier: Tier, earlier: readonly Tier[]): DepthRule {
  const truth = tierTruth(report(plan), tier.id);
  return RULES[name].from({
    depthMm: solved(plan).tiers.find((one) => one.tierId === tier.id)?.depthMm ?? 0,
    widthMm: truth.widthMm?.most ?? null,
    edgeMm: truth.edgeMm?.most ?? null,
    gapMm: truth.gapMm?.most ?? null,
    other: namedTierOf(tier.depth) ?? earlier.at(-1)?.id ?? "",
  });
}

function AmountField({ label, mm, onChange }: { label: string; mm: number; onChange: (mm: number) => void }) {
  const format = useFormat();
  const { min } = RANGES.ruleMm;
  const most = usePlan().piece.diameterMm;
  return (
    <NumberField
      inline
      label={label}
      value={mm}
      min={min}
      max={most}
      step={format.unit === "mm" ? STEP_MM : STEP_INCH_MM}
      format={(mm) => format.figure(mm, 2).figure}
      parse={format.parseLength}
      unit={format.figure(0).unit}
      onChange={onChange}
    />
  );
}

export function DepthWords({
  tier,
  index,
  onChange,
}: {
  tier: Tier;
  index: number;
  onChange: (rule: DepthRule) => void;
}) {
  const studio = useStudioStore();
  const words = useWords(planWords);
  const plan = usePlan();
  const earlier = plan.tiers.slice(0, index);
  const language = useLanguage();
  const ruleIn = ruleWords[language];
  const rule = tier.depth;
  const other = namedTierOf(rule);
  const said = ruleIn[rule.rule];
  const mm = amountOf(rule);

  const amount =
    mm === null || !("amount" in said) ? null : (
      <AmountField label={said.amount} mm={mm} onChange={(to) => onChange(withAmount(rule, to))} />
    );
  const follows =
    other === null ? null : (
      <Choice
        inline
        label={words.otherTier}
        value={other}
        options={earlier.map((one) => ({ id: one.id, words: tierName(plan, one.id, language) }))}
        onChange={(id) => onChange(withNamed(rule, id))}
      />
    );
  const name = (
    <Choice
      inline
      label={words.depthRule}
      value={rule.rule}
      options={OFFERED.map(({ rule: id, namesTier }) => ({
        id,
        words: ruleIn[id].name,
        isDisabled: namesTier && earlier.length === 0,
      }))}
      onChange={(next) => onChange(ruleFrom(next, settledPlan(studio), tier, earlier))}
    />
  );
  return <Sentence template={said.tail} slots={{ name, amount, other: follows }} />;
}
