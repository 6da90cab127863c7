/** Words carried along by the piece: widths beside gaps and misses, of the picked tier and of one pair of each other; the ink mark's name. */
import { useEffect, useMemo, useRef } from "react";
import { drawingWords } from "../messages/drawings.ts";
import { useWords } from "../messages/words.tsx";
import { useShownReport, useShownSolid, useShownSolved } from "../plan/diary/use-shown.ts";
import { useFormat } from "../use-format.ts";
import { useStudio } from "../use-studio.ts";
import { type MarkLabel, markLabelsOf } from "./marks.ts";
import { inkLine } from "./on-surface.ts";
import { useViewport } from "./viewport.ts";

type Standing = Pick<MarkLabel, "at" | "group"> & { readonly className: string; readonly children: string };

function Label({ at, group, className, children }: Standing) {
  const { frames, labels } = useViewport();
  const element = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (!element.current) return;
    const stop = labels.follow(element.current, at, group);
    frames.request();
    return stop;
  }, [frames, labels, at, group]);
  return (
    <span ref={element} className={className}>
      {children}
    </span>
  );
}

/** What the line on the skin is, at its upper end. */
function InkName() {
  const words = useWords(drawingWords);
  const { planes, plan } = useShownSolved();
  const mark = plan.piece.inkMarkDeg ?? 0;
  const at = useMemo(() => inkLine(planes, mark).at(-1), [planes, mark]);
  return at ? (
    <Label key={words.inkMark} at={at} group="ink" className="piece-label piece-label-ink">
      {words.inkMark}
    </Label>
  ) : null;
}

export function GapLabels() {
  const solved = useShownSolved();
  const solid = useShownSolid();
  const report = useShownReport();
  const selection = useStudio((state) => state.selection);
  const format = useFormat();
  const labels = useMemo(() => {
    const isTold = (facetId: string) =>
      selection.facetId !== null
        ? facetId === selection.facetId
        : selection.tierId !== null && facetId.startsWith(`${selection.tierId}/`);
    return markLabelsOf(solved, solid, report, isTold);
  }, [solved, solid, report, selection]);
  return (
    <div className="piece-labels" aria-hidden="true">
      {labels.gapLabels.map(({ at, group, mm }) => (
        <Label key={at.join()} at={at} group={group} className="piece-label">
          {format.length(mm, 2)}
        </Label>
      ))}
      {labels.missLabels.map(({ at, group, mm }) => (
        <Label key={at.join()} at={at} group={group} className="piece-label piece-label-miss">
          {format.length(mm, 2)}
        </Label>
      ))}
      <InkName />
    </div>
  );
}
