/** What to do now, large: a stop with its width and strokes, or what has to be set before the next facet. */
import type { Bench, BenchTier } from "../../core/bench/bench.ts";
import type { Finding } from "../../core/bench/bench-finding.ts";
import { cautionsAt } from "../../core/bench/order/cautions.ts";
import { PREPARATIONS, type Step } from "../../core/bench/order/order.ts";
import { isAboutRig } from "../../core/bench/rig/rig-findings.ts";
import { readMark } from "../../core/bench/rig/set-up.ts";
import { endsByLooking } from "../../core/bench/stages/stages.ts";
import type { Plan, Side } from "../../core/plan/document.ts";
import { stageName } from "../../words/names.ts";
import { useBenchScreen } from "../bench/bench-screen.ts";
import { Cautions } from "../bench/parts/Cautions.tsx";
import { finishedSaid } from "../bench/parts/caliper.ts";
import { FindingList } from "../bench/parts/FindingList.tsx";
import { facetNumber, tierIndexOf, tierNameOf } from "../bench/parts/names.ts";
import { strokeCount } from "../bench/parts/strokes.ts";
import { useStages } from "../bench/use-stages.ts";
import { benchWords } from "../messages/bench.ts";
import { lapWords } from "../messages/lap.ts";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { type LapStep, readingOf } from "./lap-steps.ts";
import { WidthGauge } from "./WidthGauge.tsx";

interface StepProps {
  readonly now: LapStep;
  readonly bench: Bench;
  readonly plan: Plan;
  /** Opens the keys on which a measured width is typed. */
  readonly onWidth: () => void;
}
type GrindStep = Extract<Step, { kind: "grind" }>;

function Grind({ now, step, bench, plan }: StepProps & { step: GrindStep }) {
  const words = useWords(lapWords);
  const names = useWords(benchWords);
  const { figure, length, armAngle } = useFormat();
  const withGuesses = useBenchScreen((state) => state.showGuesses);
  const tier = bench.tiers.find((one) => one.tier === step.tier);
  const reading = readingOf(tier, step.facet);
  const stages = useStages(plan.rig);
  const stage = stages.find((one) => one.id === step.stage);
  const place = stages.findIndex((one) => one.id === step.stage);
  const isPolish = place >= 0 && endsByLooking(stages, place);
  const radius = tier?.setting?.contactRadiusMm ?? null;
  const count =
    stage && !isPolish
      ? strokeCount(step.strokes, step.removeMm3, stage, plan.rig.lap, radius, withGuesses)
      : null;
  const width = figure(step.widthMm);
  const angle = words.atAngle(armAngle(tier?.armAngleDeg ?? 0));
  const pivot = tier?.setting?.reachable ? words.pivot(length(tier.setting.pivotHeightMm)) : null;
  return (
    <>
      <p className="lap-where">
        {words.at(
          tierNameOf(plan, step.tier, names),
          String(facetNumber(step.facet)),
          String(now.pass?.count ?? 1),
        )}
        <br />
        <span className="lap-where-stage">{stageName(stages, step.stage)}</span>
      </p>
      <p className="lap-stop">
        <span className="lap-what">{reading?.isStop ? words.stop : words.turn}</span>
        <b data-long={(reading?.label.length ?? 0) > 2 || undefined}>
          {reading ? (reading.isStop ? reading.label : `${reading.label}°`) : "–"}
        </b>
      </p>
      <div className="lap-figures">
        <p>
          <span className="lap-what">{words.width}</span>
          <b>
            {width.figure}
            <span className="unit">{width.unit}</span>
          </b>
        </p>
        {isPolish ? (
          <p className="lap-words">{words.polish}</p>
        ) : count ? (
          <p>
            <span className="lap-what">{count.isGuess ? words.strokesGuess : words.strokes}</span>
            <b>{count.strokes}</b>
          </p>
        ) : (
          <p className="lap-words">{words.noStrokes}</p>
        )}
      </div>
      <p className="lap-pivot">{pivot ? `${angle} · ${pivot}` : angle}</p>
      <WidthGauge widthMm={step.widthMm} />
    </>
  );
}

/** Title and lines of a step that is no grinding. */
function useStepWords({ now, bench, plan }: StepProps): { title: string; lines: readonly string[] } {
  const words = useWords(lapWords);
  const names = useWords(benchWords);
  const { sides } = useWords(planWords);
  const format = useFormat();
  const stages = useStages(plan.rig);
  const { step } = now;
  const markLine = (side: Side): string => {
    const { label, isStop } = readMark(plan, side);
    return words.mark(isStop ? `${words.stop} ${label}` : `${label}°`);
  };
  const measureLines = (tierId: string): readonly string[] => {
    const tier = bench.tiers.find((one) => one.tier === tierId);
    return [...(tier ? [finishedSaid(tier, plan, names, format)] : []), words.measureHow];
  };
  switch (step.kind) {
    case "prepare":
      return { title: names.work.before, lines: PREPARATIONS.map((what) => names.preparations[what]) };
    case "turn-over":
      return { title: words.turnOver(sides[step.to]), lines: [markLine(step.to), words.trial] };
    case "fit-disc":
      return { title: words.fitDisc(stageName(stages, step.stage)), lines: [] };
    case "clean":
      return {
        title: words.clean,
        lines: [words.cleanWhat(stageName(stages, step.from), stageName(stages, step.to))],
      };
    case "set-arm":
      return { title: words.setArm(tierNameOf(plan, step.tier, names)), lines: [] };
    case "find-angle-again":
      return {
        title: words.findAgain(tierNameOf(plan, step.tier, names)),
        lines: [words.findAgainHow],
      };
    case "inspect-polish":
      return { title: words.inspect(tierNameOf(plan, step.tier, names)), lines: [words.inspectHow] };
    case "measure-as-cut":
      return { title: words.measure(tierNameOf(plan, step.tier, names)), lines: measureLines(step.tier) };
    case "grind":
      return { title: "", lines: [] };
  }
}

/** What stands against the arm at this tier, and the way round it. */
const rigNotes = ({ now: { step }, bench }: StepProps): readonly Finding[] =>
  step.kind === "set-arm" || step.kind === "find-angle-again"
    ? bench.findings.filter((finding) => finding.tier === step.tier && isAboutRig(finding))
    : [];

/** What the arm is set to: read from where the arm is turned, so as large as the stop. */
function ArmSetting({ tier }: { tier: BenchTier | undefined }) {
  const words = useWords(lapWords);
  const { figure, length, armAngle } = useFormat();
  if (!tier) return null;
  // Out of the arm's reach no setting is told; the findings below say the other way.
  const setting = tier.setting?.reachable ? tier.setting : null;
  const pivot = setting && figure(setting.pivotHeightMm);
  return (
    <>
      <div className="lap-arm">
        <p>
          <span className="lap-what">{words.armAngle}</span>
          <b>{armAngle(tier.armAngleDeg)}</b>
        </p>
        {pivot ? (
          <p>
            <span className="lap-what">{words.pivotHeight}</span>
            <b>
              {pivot.figure}
              <span className="unit">{pivot.unit}</span>
            </b>
          </p>
        ) : null}
      </div>
      {setting ? <p className="lap-line">{words.armAt(length(setting.armLengthMm))}</p> : null}
    </>
  );
}

/** What calipers read is typed where it is read. */
function TypeWidth({ plan, tierId, onWidth }: { plan: Plan; tierId: string; onWidth: () => void }) {
  const { typed: words } = useWords(lapWords);
  const { length } = useFormat();
  const kept = plan.tiers.find(({ id }) => id === tierId)?.asCut?.widthMm;
  return (
    <>
      {kept === undefined ? null : <p className="lap-line">{words.kept(length(kept, 2))}</p>}
      <p>
        <button type="button" className="lap-press" onClick={onWidth}>
          {kept === undefined ? words.open : words.again}
        </button>
      </p>
    </>
  );
}

/** More lines than this would not stand on a phone as large as single ones. */
const MOST_LARGE = 3;

function Setting(props: StepProps) {
  const { title, lines } = useStepWords(props);
  const { step } = props.now;
  const setsArm = step.kind === "set-arm" || step.kind === "find-angle-again";
  return (
    <>
      <h1 className="lap-title">{title}</h1>
      <Care at={props.now} isAlone={false} />
      {setsArm ? <ArmSetting tier={props.bench.tiers.find((one) => one.tier === step.tier)} /> : null}
      {lines.length > MOST_LARGE ? (
        <ul className="lap-lines">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      ) : (
        lines.map((line) => (
          <p key={line} className="lap-line">
            {line}
          </p>
        ))
      )}
      <FindingList findings={rigNotes(props)} />
      {step.kind === "measure-as-cut" ? (
        <TypeWidth plan={props.plan} tierId={step.tier} onWidth={props.onWidth} />
      ) : null}
    </>
  );
}

/** More cautions than this would take the room from what is to be done: they come first in what one reads through. */
const MOST_BELOW = 2;

/** What to take care of at a step: always in sight below it, or, where that is much, before all else in it. */
export function Care({ at: { step }, isAlone }: { at: LapStep; isAlone: boolean }) {
  const list = cautionsAt(step.kind);
  if (list.length === 0 || isAlone !== list.length <= MOST_BELOW) return null;
  return (
    <div className="lap-care">
      <Cautions list={list} />
    </div>
  );
}

export function LapStepView(props: StepProps) {
  const { step } = props.now;
  if (step.kind === "grind" && tierIndexOf(props.plan, step.tier) >= 0)
    return (
      <>
        <Care at={props.now} isAlone={false} />
        <Grind {...props} step={step} />
      </>
    );
  return <Setting {...props} />;
}
