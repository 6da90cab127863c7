/**
 * The work as a strip of moments, one a facet: choosing one shows the piece as it is then, and the width the facet has
 * at that moment beside the width it ends with.
 */
import { type KeyboardEvent, type MouseEvent, useEffect, useMemo, useRef } from "react";
import { Button } from "../../controls/Button.tsx";
import { drawingWords } from "../../messages/drawings.ts";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useSolid, useSolved, useStudio } from "../../use-studio.ts";
import { type DiaryMoment, momentsOf } from "./moments.ts";
import { closeDiary, diaryOf, openDiary, useDiary } from "./use-shown.ts";
import "./diary.css";
import { nameOrPlace } from "../../../words/names.ts";
import { useStudioStore } from "../../studio.ts";

export default function Diary() {
  const studio = useStudioStore();
  const isOpen = useDiary((state) => state.isOpen);
  const hasFacets = usePlan().tiers.length > 0;
  const words = useWords(drawingWords).diary;
  if (!hasFacets) return null;
  return isOpen ? (
    <OpenDiary />
  ) : (
    <Button className="diary-open" onPress={() => openDiary(studio)}>
      {words.open}
    </Button>
  );
}

function OpenDiary() {
  const studio = useStudioStore();
  const words = useWords(drawingWords).diary;
  const solved = useSolved();
  const moments = useMemo(() => momentsOf(solved), [solved]);
  const count = useDiary((state) => state.count);
  const select = useStudio((state) => state.select);
  const leaf = (to: number) => {
    const next = Math.min(moments.length, Math.max(0, to));
    diaryOf(studio).setState({ count: next });
    select(next === 0 ? {} : { facetId: moments[next - 1].facetId });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const to = { ArrowLeft: count - 1, ArrowRight: count + 1, Home: 0, End: moments.length }[event.key];
    if (event.key === "Escape") closeDiary(studio);
    else if (to === undefined) return;
    else leaf(to);
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <section className="diary" aria-label={words.open}>
      <div className="diary-ways">
        <Button isDisabled={count === 0} onPress={() => leaf(count - 1)}>
          {words.before}
        </Button>
        <MomentSaid moment={count === 0 ? null : moments[count - 1]} />
        <Button isDisabled={count === moments.length} onPress={() => leaf(count + 1)}>
          {words.after}
        </Button>
        <Button onPress={() => closeDiary(studio)}>{words.close}</Button>
      </div>
      <Strip moments={moments} count={count} onLeaf={leaf} onKeyDown={onKeyDown} />
    </section>
  );
}

/** A tier by its name, or by its place when it has none. */
function useTierName(): (index: number) => string {
  const { tierNumber } = useWords(planWords);
  const { tiers } = useSolved().plan;
  return (index) => nameOrPlace(tiers[index].name, index, tierNumber);
}

/** "Shoulder, facet 4: 7.2 mm wide now, 5.9 mm in the end" */
function MomentSaid({ moment }: { moment: DiaryMoment | null }) {
  const words = useWords(drawingWords).diary;
  const nameOf = useTierName();
  const format = useFormat();
  const { radiusMm } = useSolved();
  const finished = useSolid();
  if (!moment)
    return (
      <p className="diary-said" aria-live="polite">
        {words.uncut}
      </p>
    );
  const { tierIndex, place, widthMm, count } = moment;
  const endMm = finished.facets[count - 1].width * radiusMm;
  const now = words.moment(nameOf(tierIndex), String(place), format.length(widthMm));
  const isNarrower = format.length(endMm) !== format.length(widthMm);
  return (
    <p className="diary-said" aria-live="polite">
      {isNarrower ? `${now}, ${words.atEnd(format.length(endMm))}` : now}
    </p>
  );
}

interface StripProps {
  readonly moments: readonly DiaryMoment[];
  readonly count: number;
  readonly onLeaf: (count: number) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** Moments that follow each other in one tier, together. */
function byTier(moments: readonly DiaryMoment[]): DiaryMoment[][] {
  const runs: DiaryMoment[][] = [];
  for (const moment of moments) {
    const last = runs.at(-1);
    if (last?.[0].tierIndex === moment.tierIndex) last.push(moment);
    else runs.push([moment]);
  }
  return runs;
}

/** One stop for the keyboard; arrows leaf, a press goes to its moment. Cut facets are filled, those to come outlined. */
function Strip({ moments, count, onLeaf, onKeyDown }: StripProps) {
  const words = useWords(drawingWords).diary;
  const nameOf = useTierName();
  const here = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (count >= 0) here.current?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [count]);
  const onClick = ({ target }: MouseEvent) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>("[data-count]") : null;
    if (pressed) onLeaf(Number(pressed.dataset.count));
  };
  return (
    <div
      className="diary-strip"
      role="slider"
      tabIndex={0}
      aria-label={words.group}
      aria-valuemin={0}
      aria-valuemax={moments.length}
      aria-valuenow={count}
      aria-valuetext={
        count === 0
          ? words.uncut
          : words.place(nameOf(moments[count - 1].tierIndex), String(moments[count - 1].place))
      }
      onKeyDown={onKeyDown}
      onClick={onClick}
    >
      {byTier(moments).map((own) => (
        <div key={own[0].facetId} className="diary-tier" style={{ flexGrow: own.length }}>
          <div className="diary-moments">
            {own.map((moment) => (
              <span
                key={moment.facetId}
                ref={moment.count === count ? here : undefined}
                className="diary-moment"
                data-count={moment.count}
                data-cut={moment.count <= count || undefined}
                data-here={moment.count === count || undefined}
              >
                <span className="diary-mark" />
              </span>
            ))}
          </div>
          <span className="diary-name">{nameOf(own[0].tierIndex)}</span>
        </div>
      ))}
    </div>
  );
}
