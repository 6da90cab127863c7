/** Tolerance: from the artist's own spread to the chance that everything meets, and what would help most. */
import { useEffect, useRef, useState } from "react";
import type { Plan } from "../../../core/plan/document.ts";
import type { Simulated } from "../../../worker/simulate-bench.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { Chances } from "./Chances.tsx";
import { SpreadFields } from "./SpreadFields.tsx";

/** Enough that the share told is within two in a hundred, one deviation. */
const TRIALS = 600;
const SEED = 1;

interface Run {
  /** Share done while it runs, null when nothing runs. */
  readonly share: number | null;
  readonly plan: Plan | null;
  readonly answer: readonly Simulated[] | null;
  readonly failed: boolean;
}
const NOTHING: Run = { share: null, plan: null, answer: null, failed: false };

/** One simulation at a time; it is stopped when the part is left. */
function useSimulation() {
  const [run, setRun] = useState<Run>(NOTHING);
  const control = useRef<AbortController | null>(null);
  useEffect(() => () => control.current?.abort(), []);
  const start = async (plan: Plan) => {
    control.current?.abort();
    const own = new AbortController();
    control.current = own;
    setRun({ ...NOTHING, share: 0 });
    try {
      const answer = await benchPool.run(
        "simulate",
        { plan, trials: TRIALS, seed: SEED },
        { signal: own.signal, onProgress: (share) => setRun((now) => ({ ...now, share })) },
      );
      setRun({ share: null, plan, answer, failed: false });
    } catch (error) {
      const wasCancelled =
        own.signal.aborted || (error instanceof DOMException && error.name === "AbortError");
      if (control.current === own) setRun({ ...NOTHING, failed: !wasCancelled });
    }
  };
  return { run, start, cancel: () => control.current?.abort() };
}

export function TolerancePart() {
  const { tolerance: words, noTiers } = useWords(benchWords);
  const { number } = useFormat();
  const plan = usePlan();
  const { run, start, cancel } = useSimulation();
  if (plan.tiers.length === 0) return <p className="bench-empty">{noTiers}</p>;
  return (
    <div className="bench-flow">
      <p className="bench-sentence">{words.what}</p>
      <SpreadFields />
      {run.share === null ? (
        <Button look="strong" onPress={() => void start(plan)}>
          {words.run}
        </Button>
      ) : (
        <div className="bench-row">
          <label className="bench-progress">
            <span>{words.running(number(run.share * 100, 0))}</span>
            <progress max={1} value={run.share} />
          </label>
          <Button look="outlined" onPress={cancel}>
            {words.stop}
          </Button>
        </div>
      )}
      {run.failed ? <p role="alert">{words.failed}</p> : null}
      <div className="bench-results" aria-live="polite">
        {run.answer ? (
          <>
            {run.plan === plan ? null : <p className="soft">{words.stale}</p>}
            <Chances answers={run.answer} />
          </>
        ) : null}
      </div>
    </div>
  );
}
