/** At the lap: one facet at a time, read at arm's length with wet hands. Nothing moves on unless a press is held. */
import { useEffect, useMemo, useRef, useState } from "react";
import { createPortal } from "react-dom";
import type { Bench } from "../../core/bench/bench.ts";
import { useBenchScreen } from "../bench/bench-screen.ts";
import { followAddress } from "../carried-plan.ts";
import { Button } from "../controls/Button.tsx";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { useVerdict } from "../shared/verdict-said.ts";
import { useFormat } from "../use-format.ts";
import { usePlan } from "../use-studio.ts";
import { useSession } from "../visit.ts";
import { HoldButton } from "./HoldButton.tsx";
import { LapAsks } from "./LapAsks.tsx";
import { LapElsewhere } from "./LapElsewhere.tsx";
import { Care, LapStepView } from "./LapStepView.tsx";
import { LapWhere } from "./LapWhere.tsx";
import { LapWidth } from "./LapWidth.tsx";
import { closeLap, useLapStanding } from "./lap-open.ts";
import { type LapStep, lapSteps, tierAt, timeInWords } from "./lap-steps.ts";
import { MoreBelow } from "./MoreBelow.tsx";
import { useKeyHold } from "./use-key-hold.ts";
import { type Progress, useProgress } from "./use-progress.ts";
import { useWakeLock } from "./use-wake-lock.ts";
import "./lap.css";
import { useStudioStore } from "../studio.ts";

interface InWork {
  readonly bench: Bench;
  readonly steps: readonly LapStep[];
  readonly progress: Progress;
  /** Whether the minutes rest on strokes that nobody calibrated. */
  readonly isGuess: boolean;
}

/** What is left, as a person plans the day by: which tier of how many, and hours. */
function Left({ steps, progress: { at }, isGuess }: InWork) {
  const words = useWords(lapWords);
  const { locale } = useFormat();
  const plan = usePlan();
  const tier = tierAt(steps, at);
  const place = plan.tiers.findIndex(({ id }) => id === tier) + 1;
  const minutes = steps.slice(at).reduce((sum, { step }) => sum + step.minutes, 0);
  if (at >= steps.length) return null;
  return (
    <>
      {place > 0 ? `${words.tierOf(place, plan.tiers.length)} ` : null}
      {words.left(timeInWords(minutes, locale, words), isGuess)}{" "}
    </>
  );
}

function Step(props: InWork & { onWidth: () => void }) {
  const { bench, steps, progress, onWidth } = props;
  const words = useWords(lapWords);
  const plan = usePlan();
  const { at } = progress;
  const now = steps[at];
  const next = () => now && progress.goTo(at + 1);
  const back = () => at > 0 && progress.goTo(at - 1);
  const { nextShare, backShare } = useKeyHold(next, back);
  const awake = useWakeLock();
  return (
    <>
      <MoreBelow key={now?.key ?? "done"}>
        {now ? (
          <LapStepView now={now} bench={bench} plan={plan} onWidth={onWidth} />
        ) : (
          <AllDone onAgain={() => progress.goTo(0)} />
        )}
      </MoreBelow>
      {now ? <Care at={now} isAlone /> : null}
      <footer className="lap-foot">
        {progress.isKept ? null : <p role="alert">{words.notKept}</p>}
        <p className="lap-small" data-step={at + 1} data-steps={steps.length}>
          <Left {...props} />
          {awake === "cannot" ? words.staysOnCannot : null}
        </p>
        <div className="lap-holds">
          <HoldButton
            className="lap-back"
            label={words.backLabel}
            isDisabled={at === 0}
            keyShare={backShare}
            onHeld={back}
          >
            {words.back}
          </HoldButton>
          <HoldButton
            className="lap-next"
            label={words.nextLabel}
            isDisabled={!now}
            keyShare={nextShare}
            onHeld={next}
          >
            {now?.step.kind === "grind" ? words.next : words.done}
          </HoldButton>
        </div>
        <p className="lap-small lap-keys">{words.keys}</p>
      </footer>
    </>
  );
}

type LapTab = "step" | "where" | "width";

function Working({ bench, view, show }: { bench: Bench; view: LapTab; show: (view: LapTab) => void }) {
  const plan = usePlan();
  const way = useBenchScreen((state) => state.way);
  const work = bench.order.find((one) => one.way === way);
  const steps = useMemo(() => lapSteps(work?.steps ?? []), [work]);
  const progress = useProgress(plan, way, steps);
  const now = steps[progress.at];
  const toStep = () => show("step");
  if (view === "where")
    return (
      <LapWhere
        bench={bench}
        steps={steps}
        at={progress.at}
        onGo={(at) => {
          progress.goTo(at);
          toStep();
        }}
      />
    );
  if (view === "width" && now?.step.kind === "measure-as-cut")
    return <LapWidth key={now.key} bench={bench} tierId={now.step.tier} onDone={toStep} />;
  return (
    <Step
      bench={bench}
      steps={steps}
      progress={progress}
      isGuess={work?.minutesAreGuess ?? false}
      onWidth={() => show("width")}
    />
  );
}

function AllDone({ onAgain }: { onAgain: () => void }) {
  const words = useWords(lapWords);
  const [isSure, setSure] = useState(false);
  return (
    <>
      <h1 className="lap-title">{words.allDone}</h1>
      <p>{words.allDoneWhat}</p>
      {isSure ? (
        <Button look="outlined" onPress={onAgain}>
          {words.againSure}
        </Button>
      ) : (
        <Button look="outlined" onPress={() => setSure(true)}>
          {words.again}
        </Button>
      )}
    </>
  );
}

/** Takes the focus when it opens and gives it back when it closes. */
function useFocusInside() {
  const page = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    page.current?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return page;
}

/** @param bench null while it is being computed for the plan in hand */
export function LapPage({ bench }: { bench: Bench | null }) {
  const studio = useStudioStore();
  const words = useWords(lapWords);
  const plan = usePlan();
  const page = useFocusInside();
  const [view, show] = useState<LapTab>("step");
  const { verdict, said } = useVerdict();
  const standing = useLapStanding();
  const session = useSession();
  useEffect(() => {
    if (standing !== "here" || !session) return;
    followAddress(studio, session);
    // also an example that nobody has changed: the work on it stands somewhere from now on
    void session.autosave.keepAll();
  }, [standing, studio, session]);
  /** Once work has begun it goes on: the piece is glass by then. */
  const [goesOn, setGoesOn] = useState(false);
  const asks = standing === "here" && verdict.kind === "stops" && plan.work === undefined && !goesOn;
  const leave = () => (view === "step" ? closeLap() : show("step"));
  // What lies below can't be reached while the page is open.
  useEffect(() => {
    const app = document.getElementById("app");
    app?.setAttribute("inert", "");
    return () => app?.removeAttribute("inert");
  }, []);
  return createPortal(
    <div
      ref={page}
      className="lap"
      role="dialog"
      aria-modal="true"
      aria-label={words.title}
      tabIndex={-1}
      onKeyDown={(event) => event.key === "Escape" && leave()}
    >
      <header className="lap-head">
        {standing === "here" ? (
          <p>
            {plan.name}
            <small data-verdict={verdict.kind}>{said}</small>
          </p>
        ) : (
          <p>{words.title}</p>
        )}
        {view === "step" ? (
          <>
            {asks || standing !== "here" ? null : (
              <Button onPress={() => show("where")}>{words.where.open}</Button>
            )}
            <Button onPress={closeLap}>{words.close}</Button>
          </>
        ) : (
          <Button onPress={() => show("step")}>{words.where.leave}</Button>
        )}
      </header>
      {standing === "elsewhere" ? (
        <LapElsewhere />
      ) : asks ? (
        <LapAsks onGoOn={() => setGoesOn(true)} />
      ) : bench && standing === "here" ? (
        <Working bench={bench} view={view} show={show} />
      ) : (
        <p className="waiting">{words.waiting}</p>
      )}
    </div>,
    document.body,
  );
}
