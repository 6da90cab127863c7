/** At the lap: one facet at a time, read at arm's length with wet hands. Nothing moves on unless a press is held. */
import { useEffect, useMemo, useRef, useState } from "react";
import { createPortal } from "react-dom";
import type { Bench } from "../../core/bench/bench.ts";
import { useBenchView } from "../bench/bench-view.ts";
import { Button } from "../controls/Button.tsx";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { usePlan } from "../use-studio.ts";
import { HoldButton } from "./HoldButton.tsx";
import { LapStepView } from "./LapStepView.tsx";
import { closeLap } from "./lap-open.ts";
import { nextStep, stepsOf } from "./lap-steps.ts";
import { workName } from "./progress.ts";
import { useKeyHold } from "./use-key-hold.ts";
import { useProgress } from "./use-progress.ts";
import { useWakeLock } from "./use-wake-lock.ts";
import "./lap.css";

function Working({ bench }: { bench: Bench }) {
  const words = useWords(lapWords);
  const plan = usePlan();
  const way = useBenchView((state) => state.way);
  const steps = useMemo(() => stepsOf(bench, way), [bench, way]);
  const progress = useProgress(workName(plan, way));
  const at = nextStep(steps, progress.done);
  const now = steps[at];
  const next = () => now && progress.add(now.key);
  const back = () => progress.done.length > 0 && progress.back();
  const { nextShare, backShare } = useKeyHold(next, back);
  const awake = useWakeLock();
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long step must be scrolled by keyboard too */}
      <div className="lap-step" aria-live="polite" aria-atomic="true" tabIndex={0}>
        {now ? <LapStepView now={now} bench={bench} plan={plan} /> : <AllDone onAgain={progress.clear} />}
      </div>
      <footer className="lap-foot">
        {progress.isKept ? null : <p role="alert">{words.notKept}</p>}
        <p className="lap-small">
          {words.stepOf(Math.min(at + 1, steps.length), steps.length)}{" "}
          {awake === "cannot" ? words.staysOnCannot : null}
        </p>
        <div className="lap-holds">
          <HoldButton
            className="lap-back"
            label={words.backLabel}
            isDisabled={progress.done.length === 0}
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
        <p className="lap-small">{words.keys}</p>
      </footer>
    </>
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
  const words = useWords(lapWords);
  const plan = usePlan();
  const page = useFocusInside();
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
      onKeyDown={(event) => event.key === "Escape" && closeLap()}
    >
      <header className="lap-head">
        <p>{plan.name}</p>
        <Button onPress={closeLap}>{words.close}</Button>
      </header>
      {bench ? <Working bench={bench} /> : <p className="waiting">{words.waiting}</p>}
    </div>,
    document.body,
  );
}
