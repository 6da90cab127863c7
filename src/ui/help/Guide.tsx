/**
 * The way round: a strip at the foot of the page, which the page makes room for, so that it never covers what it speaks of. It
 * points there, waits until it was done, and never moves on by itself.
 */
import { type RefObject, useEffect, useRef, useState } from "react";
import { verdictOf } from "../../core/check/verdict.ts";
import { report, solved } from "../../state/derived.ts";
import { Button } from "../controls/Button.tsx";
import { helpWords } from "../messages/help.ts";
import { useWords } from "../messages/words.tsx";
import { useViewport, type Viewport } from "../piece/viewport.ts";
import { useScreen } from "../shared/screen.ts";
import { goToStep, leaveGuide, STEPS, type StepName, useGuide } from "./guide-state.ts";
import "./help.css";

/** What a step speaks of. */
const TARGETS: Readonly<Record<StepName, string>> = {
  turn: ".piece-canvas",
  read: ".tier",
  change: '.tier-sentence [aria-valuemax="90"]',
  undo: ".undo",
  look: ".places .place:nth-child(2)",
  bench: ".places .place:nth-child(3)",
};

/** Calls back once the person has done what a step asks. @returns how to stop watching */
function whenDone({ studio, eye }: Viewport, step: StepName, done: () => void): () => void {
  const isThere = () => {
    const { place, selection } = studio.getState();
    return step === "read" ? selection.tierId !== null : step === place;
  };
  if (isThere()) done();
  if (step === "turn") return eye.subscribe(done);
  return studio.subscribe((now, before) => {
    const isUndone = now.history.redo.length > before.history.redo.length;
    const isChanged = now.plan !== before.plan && now.drag === null;
    if (
      step === "change" &&
      isChanged &&
      !isUndone &&
      verdictOf(solved(now.plan), report(now.plan)).kind !== "stops"
    )
      done();
    if ((step === "undo" && isUndone) || isThere()) done();
  });
}

function useDone(step: StepName): boolean {
  const viewport = useViewport();
  const [done, setDone] = useState<StepName | null>(null);
  useEffect(() => whenDone(viewport, step, () => setDone(step)), [viewport, step]);
  return done === step;
}

/** Marks what the step speaks of and brings it into sight, as soon as it is there. */
function usePointing(step: StepName): void {
  useEffect(() => {
    let target: Element | null = null;
    const point = () => {
      if (target?.isConnected) return;
      target = document.querySelector(TARGETS[step]);
      target?.setAttribute("data-guided", "");
      target?.scrollIntoView({ block: "nearest" });
    };
    // Twice: the page has made room for the strip by the second frame.
    requestAnimationFrame(() => requestAnimationFrame(point));
    const changes = new MutationObserver(point);
    changes.observe(document.body, { childList: true, subtree: true });
    return () => {
      changes.disconnect();
      target?.removeAttribute("data-guided");
    };
  }, [step]);
}

/** Says how high the strip is, so that the page can end above it. */
function useRoom(strip: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const root = document.documentElement;
    const measure = () => root.style.setProperty("--guide-room", `${strip.current?.offsetHeight ?? 0}px`);
    measure();
    const sizes = new ResizeObserver(measure);
    if (strip.current) sizes.observe(strip.current);
    return () => {
      sizes.disconnect();
      root.style.removeProperty("--guide-room");
    };
  }, [strip]);
}

function Step({ at }: { at: number }) {
  const words = useWords(helpWords).guide;
  const { studio } = useViewport();
  const name = STEPS[at];
  const isDone = useDone(name);
  const isLast = at === STEPS.length - 1;
  const strip = useRef<HTMLElement>(null);
  usePointing(name);
  useRoom(strip);
  return (
    <aside ref={strip} className="way-round" aria-label={words.title} data-step={name}>
      <div className="guide-said">
        <h2>
          {words.steps[name].title} <span className="small">{words.place(at + 1, STEPS.length)}</span>
        </h2>
        <p>{words.steps[name].text}</p>
        <p role="status" className="guide-done">
          {isDone ? (isLast ? words.end : words.done) : ""}
        </p>
      </div>
      <div className="guide-presses">
        <Button onPress={() => leaveGuide(studio)}>{words.leave}</Button>
        <Button isDisabled={at === 0} onPress={() => goToStep(studio, at - 1)}>
          {words.back}
        </Button>
        {isLast ? null : (
          <Button isDisabled={isDone} onPress={() => goToStep(studio, at + 1)}>
            {words.skip}
          </Button>
        )}
        <Button look="strong" isDisabled={!isDone} onPress={() => goToStep(studio, at + 1)}>
          {isLast ? words.close : words.next}
        </Button>
      </div>
    </aside>
  );
}

/** The steps, while one is being taken; out of the way while a sheet lies over the bench. */
export default function Guide() {
  const at = useGuide((state) => state.at);
  const isCovered = useScreen((state) => state.sheet !== null);
  if (typeof at !== "number" || isCovered) return null;
  return <Step at={at} />;
}
