/** How deep: one of the seven rules as the end of the sentence, with its number or the tier that it follows. */
import type { DepthRule, Tier } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { report, solved } from "../../../state/derived.ts";
import { Choice } from "../../controls/Choice.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Sentence } from "../../controls/Sentence.tsx";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { tierTruth } from "./tier-truth.ts";

type RuleName = DepthRule["rule"];
const RULES: readonly RuleName[] = ["touch", "edge", "gap", "width", "depth", "close", "corners"];
/** A hundredth of a millimetre is less than a stroke takes. */
const STEP_MM = 0.05;
const STEP_INCH_MM = 0.0254;
const START_MM = 1;

const amountOf = (rule: DepthRule): number | null => ("mm" in rule ? rule.mm : null);
const otherOf = (rule: DepthRule): string | null =>
  rule.rule === "close" ? rule.to : rule.rule === "corners" ? rule.of : null;
/** To a hundredth, so that a number taken over from the glass reads as one would type it. */
const rounded = (mm: number): number => Math.round(mm * 100) / 100;

/** The rule that keeps the piece as near as can be to what it is now. */
function ruleFrom(
  name: RuleName,
  plan: ReturnType<typeof usePlan>,
  tier: Tier,
  earlier: readonly Tier[],
): DepthRule {
  const truth = tierTruth(report(plan), tier.id);
  const depth = solved(plan).tiers.find((one) => one.tierId === tier.id)?.depthMm ?? 0;
  switch (name) {
    case "touch":
      return { rule: "touch" };
    case "depth":
      return { rule: "depth", mm: rounded(depth) };
    case "width":
      return { rule: "width", mm: rounded(truth.widthMm?.most ?? START_MM) };
    case "edge":
      return { rule: "edge", mm: rounded(truth.edgeMm?.most ?? START_MM) };
    case "gap":
      return { rule: "gap", mm: rounded(Math.max(0, truth.gapMm?.most ?? START_MM)) };
    case "close":
      return { rule: "close", to: otherOf(tier.depth) ?? earlier.at(-1)!.id };
    case "corners":
      return { rule: "corners", of: otherOf(tier.depth) ?? earlier.at(-1)!.id };
  }
}

function AmountField({
  rule,
  onChange,
}: {
  rule: DepthRule & { mm: number };
  onChange: (rule: DepthRule) => void;
}) {
  const words = useWords(planWords);
  const format = useFormat();
  const { min } = RANGES.ruleMm;
  const most = usePlan().piece.diameterMm;
  return (
    <NumberField
      inline
      label={words.ruleAmount[rule.rule as keyof typeof words.ruleAmount]}
      value={rule.mm}
      min={min}
      max={most}
      step={format.unit === "mm" ? STEP_MM : STEP_INCH_MM}
      format={(mm) => format.figure(mm, 2).figure}
      parse={format.parseLength}
      unit={format.figure(0).unit}
      onChange={(mm) => onChange({ ...rule, mm } as DepthRule)}
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
  const words = useWords(planWords);
  const plan = usePlan();
  const earlier = plan.tiers.slice(0, index);
  const rule = tier.depth;
  const other = otherOf(rule);
  const nameOf = (one: Tier) => one.name || words.tierNumber(plan.tiers.indexOf(one) + 1);

  const amount =
    amountOf(rule) === null ? null : (
      <AmountField rule={rule as DepthRule & { mm: number }} onChange={onChange} />
    );
  const follows =
    other === null ? null : (
      <Choice
        inline
        label={words.otherTier}
        value={other}
        options={earlier.map((one) => ({ id: one.id, words: nameOf(one) }))}
        onChange={(id) =>
          onChange(rule.rule === "close" ? { rule: "close", to: id } : { rule: "corners", of: id })
        }
      />
    );
  const name = (
    <Choice
      inline
      label={words.depthRule}
      value={rule.rule}
      options={RULES.map((id) => ({
        id,
        words: words.ruleWords[id],
        isDisabled: (id === "close" || id === "corners") && earlier.length === 0,
      }))}
      onChange={(next) => onChange(ruleFrom(next, plan, tier, earlier))}
    />
  );
  return <Sentence template={words.ruleTail[rule.rule]} slots={{ name, amount, other: follows }} />;
}
