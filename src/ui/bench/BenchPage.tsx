/** The bench: from the plan to the wet lap and back. Six parts of one page, and the page for the lap itself. */
import { lazy, Suspense } from "react";
import { Button as AriaButton } from "react-aria-components/Button";
import { stagesOf } from "../../core/bench/stages/default-stages.ts";
import type { Plan } from "../../core/plan/document.ts";
import { Button } from "../controls/Button.tsx";
import { LapPage } from "../lap/LapPage.tsx";
import { useLapOpen } from "../lap/lap-open.ts";
import { openLap } from "../lap/open-lap.ts";
import { benchWords } from "../messages/bench.ts";
import { useWords } from "../messages/words.tsx";
import { usePlan } from "../use-studio.ts";
import { AsCutPart } from "./as-cut/AsCutPart.tsx";
import { BENCH_PARTS, showPart, useBenchScreen } from "./bench-screen.ts";
import { SetUpPart } from "./setup/SetUpPart.tsx";
import { PaperPart } from "./sheet/PaperPart.tsx";
import { TolerancePart } from "./tolerance/TolerancePart.tsx";
import { useBench } from "./use-bench.ts";
import { WorkPart } from "./work/WorkPart.tsx";
import "./bench.css";
import { useStudioStore } from "../studio.ts";

const PricePart = lazy(() => import("./price/PricePart.tsx"));

function Parts() {
  const studio = useStudioStore();
  const words = useWords(benchWords);
  const here = useBenchScreen((state) => state.part);
  return (
    <nav className="bench-parts" aria-label={words.partsLabel}>
      {BENCH_PARTS.map((part) => (
        <AriaButton
          key={part}
          className="place"
          aria-current={part === here ? "page" : undefined}
          data-here={part === here || undefined}
          onPress={() => showPart(studio, part)}
        >
          {words.parts[part]}
        </AriaButton>
      ))}
    </nav>
  );
}

const sameList = <T,>(a: readonly T[], b: readonly T[], key: (one: T) => string): boolean =>
  a.length === b.length && a.every((one, i) => key(one) === key(b[i]));

/** Whether two plans have the same tiers, facets and stages, whatever their numbers. */
const isSameWork = (a: Plan, b: Plan): boolean =>
  sameList(a.tiers, b.tiers, ({ id, count, side }) => `${id} ${count} ${side}`) &&
  sameList(stagesOf(a.rig), stagesOf(b.rig), ({ id }) => id);

export default function BenchPage() {
  const studio = useStudioStore();
  const words = useWords(benchWords);
  const plan = usePlan();
  const part = useBenchScreen((state) => state.part);
  const isLapOpen = useLapOpen();
  const { answer, question, error } = useBench();
  // An older answer is shown until the next is there, as long as it speaks of the same tiers and stages.
  const bench = question !== null && isSameWork(question, plan) ? answer : null;
  return (
    <div className="bench">
      <header className="bench-head">
        <h1>{plan.name || words.unnamed}</h1>
        <Button look="strong" isDisabled={plan.tiers.length === 0} onPress={() => openLap(studio)}>
          {words.toLap}
        </Button>
      </header>
      <Parts />
      {error && question === plan ? <p role="alert">{words.failed}</p> : null}
      {part === "set-up" ? <SetUpPart bench={bench} /> : null}
      {part === "work" ? <WorkPart bench={bench} /> : null}
      {part === "tolerance" ? <TolerancePart /> : null}
      {part === "as-cut" ? <AsCutPart /> : null}
      {part === "paper" ? <PaperPart /> : null}
      {part === "price" ? (
        <Suspense fallback={<p className="waiting">{words.counting}</p>}>
          <PricePart />
        </Suspense>
      ) : null}
      {isLapOpen ? <LapPage bench={question === plan ? answer : null} /> : null}
    </div>
  );
}
