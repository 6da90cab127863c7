/** The bench: from the plan to the wet lap and back. Five parts of one page, and the page for the lap itself. */
import { Button as AriaButton } from "react-aria-components/Button";
import { Button } from "../controls/Button.tsx";
import { LapPage } from "../lap/LapPage.tsx";
import { openLap, useLapOpen } from "../lap/lap-open.ts";
import { benchWords } from "../messages/bench.ts";
import { useWords } from "../messages/words.tsx";
import { usePlan } from "../use-studio.ts";
import { AsCutPart } from "./as-cut/AsCutPart.tsx";
import { BENCH_PARTS, showPart, useBenchView } from "./bench-view.ts";
import { SetUpPart } from "./setup/SetUpPart.tsx";
import { PaperPart } from "./sheet/PaperPart.tsx";
import { TolerancePart } from "./tolerance/TolerancePart.tsx";
import { useBench } from "./use-bench.ts";
import { WorkPart } from "./work/WorkPart.tsx";
import "./bench.css";

function Parts() {
  const words = useWords(benchWords);
  const here = useBenchView((state) => state.part);
  return (
    <nav className="bench-parts" aria-label={words.partsLabel}>
      {BENCH_PARTS.map((part) => (
        <AriaButton
          key={part}
          className="place"
          aria-current={part === here ? "page" : undefined}
          data-here={part === here || undefined}
          onPress={() => showPart(part)}
        >
          {words.parts[part]}
        </AriaButton>
      ))}
    </nav>
  );
}

export default function BenchPage() {
  const words = useWords(benchWords);
  const plan = usePlan();
  const part = useBenchView((state) => state.part);
  const isLapOpen = useLapOpen();
  const { answer, question, error } = useBench();
  // An older answer may have other tiers: it is only shown while the plan's tiers are still those.
  const isOfThese = question !== null && question.tiers.length === plan.tiers.length;
  const bench = isOfThese ? answer : null;
  return (
    <div className="bench">
      <header className="bench-head">
        <h1>{plan.name || words.unnamed}</h1>
        <Button look="strong" isDisabled={plan.tiers.length === 0} onPress={openLap}>
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
      {isLapOpen ? <LapPage bench={question === plan ? answer : null} /> : null}
    </div>
  );
}
