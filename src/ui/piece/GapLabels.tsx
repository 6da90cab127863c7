/** Widths beside gaps and misses: those of the picked tier, and of one pair of each other tier. */
import { useEffect, useMemo, useRef } from "react";
import { useShownReport, useShownSolid, useShownSolved } from "../plan/diary/use-shown.ts";
import { useFormat } from "../use-format.ts";
import { useStudio } from "../use-studio.ts";
import { requestFrame } from "./frames.ts";
import { followPlace } from "./labels.ts";
import { type MarkLabel, marksOf } from "./marks.ts";

function Label({ label, className }: { label: MarkLabel; className: string }) {
  const format = useFormat();
  const element = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (!element.current) return;
    const stop = followPlace(element.current, label.at, label.group);
    requestFrame();
    return stop;
  }, [label.at, label.group]);
  return (
    <span ref={element} className={className}>
      {format.length(label.mm, 2)}
    </span>
  );
}

export function GapLabels() {
  const solved = useShownSolved();
  const solid = useShownSolid();
  const report = useShownReport();
  const selection = useStudio((state) => state.selection);
  const labels = useMemo(() => {
    const isTold = (facetId: string) =>
      selection.facetId !== null
        ? facetId === selection.facetId
        : selection.tierId !== null && facetId.startsWith(`${selection.tierId}/`);
    return marksOf(solved, solid, report, isTold);
  }, [solved, solid, report, selection]);
  return (
    <div className="stage-labels" aria-hidden="true">
      {labels.gapLabels.map((label) => (
        <Label key={label.at.join()} label={label} className="stage-label" />
      ))}
      {labels.missLabels.map((label) => (
        <Label key={label.at.join()} label={label} className="stage-label stage-label-miss" />
      ))}
    </div>
  );
}
