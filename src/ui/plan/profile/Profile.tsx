/** The half-section through the axis, to scale: every tier a chord, with a knob outside the rim to drag it by. */

import { type KeyboardEvent, type PointerEvent, useId, useMemo } from "react";
import { flushSync } from "react-dom";
import type { Tier } from "../../../core/plan/document.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";
import { drawingWords } from "../../messages/drawings.ts";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { useViewport } from "../../piece/viewport.ts";
import { useIsLate } from "../../settled.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan, useSolid, useSolved, useStudio } from "../../use-studio.ts";
import type { ClearOf } from "../drag/DragReadout.tsx";
import { addTier } from "../drag/drag-host.ts";
import { Readout } from "../drag/Readout.tsx";
import { patternSaid } from "../drag/said.ts";
import { useBox } from "../drag/use-box.ts";
import { type TierDragHook, useTierDrag } from "../drag/use-tier-drag.ts";
import { nextTier } from "../recipe/next-tier.ts";
import { KNOB_PX, type Knob } from "./knobs.ts";
import { LabelText, ProfileGround } from "./ProfileGround.tsx";
import { profileDrag } from "./profile-drag.ts";
import { chordOf, cutSection, type ProfileFrame, tierDirection, toScreen } from "./profile-geometry.ts";
import { ANGLE, FRESH, isSmallBox, labelsOf, layOutProfile, MARGIN_PX } from "./profile-layout.ts";
import { type TypedAngle, useTypedAngle } from "./use-typed-angle.ts";
import "../drag/drawing.css";
import "./profile.css";
import { nameOrPlace } from "../../../words/names.ts";

/** @param isNamed whether its name lies over its upper left corner */
export function Profile({ isNamed = false }: { isNamed?: boolean }) {
  const [ref, box] = useBox<HTMLDivElement>();
  const plan = usePlan();
  const solved = useSolved();
  const solid = useSolid();
  const words = useWords(drawingWords);
  const format = useFormat();
  const saidId = useId();
  const isSmall = isSmallBox(box);
  const newTier = useWords(planWords).newTier;
  const fresh = useMemo(() => nextTier(plan, newTier(plan.tiers.length + 1)), [plan, newTier]);
  const { frame, knobs } = useMemo(
    () => layOutProfile(fresh ? [...plan.tiers, fresh] : plan.tiers, box, isNamed),
    [plan, fresh, box, isNamed],
  );
  const picture = useMemo(() => profileDrag(plan, frame, fresh), [plan, frame, fresh]);
  const drag = useTierDrag(picture);
  const isDragging = useStudio((state) => state.drag !== null);
  const [own, freshKnob] = [knobs.slice(0, plan.tiers.length), knobs.at(plan.tiers.length)];
  const shown = useMemo(
    () => (isDragging ? knobs.slice(0, plan.tiers.length) : knobs),
    [isDragging, knobs, plan],
  );
  const chosen = useStudio((state) => state.selection.tierId);
  const typed = useTypedAngle(chosen);
  /** The chosen tier's angle, or what is typed to become it. */
  const inDegrees = useMemo(
    () => (typed.text === null ? format.armAngle : () => `${typed.text}_`),
    [typed.text, format],
  );
  const labels = useMemo(
    () => labelsOf({ box, frame, knobs: shown, isNamed, plan, chosen, words, inDegrees }),
    [box, frame, shown, isNamed, plan, chosen, words, inDegrees],
  );
  return (
    <div className="drawing profile" ref={ref}>
      {box.width > 0 ? (
        // biome-ignore lint/a11y/useSemanticElements: a drawing with grips in it has no element of its own
        <svg role="group" aria-label={words.profile} aria-describedby={saidId} {...drag.surface}>
          <ProfileGround frame={frame} plan={plan} section={sectionOf(solved, frame)} labels={labels} />
          {own.map((knob) => (
            <Stem key={knob.tierId} knob={knob} />
          ))}
          {freshKnob && !isDragging ? <Stem knob={freshKnob} isFresh /> : null}
          {own.map((knob) => (
            <TierChord
              key={knob.tierId}
              knob={knob}
              frame={frame}
              solved={solved}
              drag={drag}
              typed={typed}
            />
          ))}
          {fresh && freshKnob && !isDragging ? (
            <FreshKnob knob={freshKnob} fresh={fresh} drag={drag} />
          ) : null}
          {labels
            .filter(({ key }) => key === ANGLE || key === FRESH)
            .map((label) => (
              <LabelText key={label.key} label={label} className={`${LABEL_CLASSES[label.key]} rimmed`} />
            ))}
        </svg>
      ) : null}
      <p className="drawing-said" id={saidId}>
        {words.profileOf(patternSaid(solved, solid, words, format))}
      </p>
      <Readout live={drag.live} box={box} clearOf={clearOf(frame, isSmall)} />
    </div>
  );
}

const LABEL_CLASSES: Readonly<Record<string, string>> = {
  [ANGLE]: "profile-angle strong",
  [FRESH]: "fresh-words",
};

/** Where words would cover what the hand is about: all of a small picture, rim and knobs of a large one. */
const clearOf = (frame: ProfileFrame, isSmall: boolean): ClearOf =>
  isSmall ? { kind: "picture" } : { kind: "left-part", toPx: frame.cx + frame.radius + MARGIN_PX.right - 20 };

function sectionOf(solved: SolvedPlan, frame: ProfileFrame): string {
  const cuts = solved.plan.tiers.map((tier, i) => ({
    direction: tierDirection(tier.side, tier.armAngleDeg),
    h: solved.planes[solved.tiers[i].first].h,
  }));
  const points = cutSection(cuts).map((p) => toScreen(frame, p));
  return points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
}

/** From the rim to a knob. All lie below all knobs: one that runs across another tier's knob must not strike out its number. */
function Stem({ knob: { at, bend, rim }, isFresh = false }: { knob: Knob; isFresh?: boolean }) {
  const className = isFresh ? "profile-stem fresh-stem" : "profile-stem";
  return <path className={className} d={`M${rim.join(" ")}Q${bend.join(" ")} ${at.join(" ")}`} />;
}

interface ChordProps {
  readonly typed: TypedAngle;
  readonly knob: Knob;
  readonly frame: ProfileFrame;
  readonly solved: SolvedPlan;
  readonly drag: TierDragHook;
}

/** A tier's chord, the tick from it to the rim that shows its depth, and its knob. */
function TierChord({ knob, frame, solved, drag, typed }: ChordProps) {
  const { tiers } = usePlan();
  const index = tiers.findIndex((t) => t.id === knob.tierId);
  const tier = tiers[index];
  // of many facets, a tier may be drawn where it was set before it is known how deep it comes
  const isLate = useIsLate();
  const known = solved.tiers.find((t) => t.tierId === tier.id);
  const h = known ? solved.planes[known.first].h : 1;
  const isSelected = useStudio((state) => state.selection.tierId === tier.id);
  const isHovered = useStudio((state) => state.hover.tierId === tier.id);
  const setHover = useStudio((state) => state.setHover);
  const select = useStudio((state) => state.select);
  const words = useWords(drawingWords);
  const format = useFormat();
  const chord = chordOf(tier.side, tier.armAngleDeg, h);
  const [x, y] = knob.at;
  const grab = (event: PointerEvent<SVGElement>) => grabFrom(event, tier, drag);
  return (
    <g
      className="grip"
      role="slider"
      tabIndex={0}
      aria-label={words.handle(nameOrPlace(tier.name, index, words.tierNumber))}
      aria-description={words.handleKeys}
      aria-valuemin={0}
      aria-valuemax={90}
      aria-valuenow={tier.armAngleDeg}
      aria-valuetext={
        isLate || !known
          ? format.armAngle(tier.armAngleDeg)
          : `${format.armAngle(tier.armAngleDeg)}, ${format.length(known.depthMm, 2)}`
      }
      data-tier={tier.id}
      data-selected={isSelected || undefined}
      data-hovered={isHovered || undefined}
      data-unmet={known?.met === false || undefined}
      onPointerDown={grab}
      onPointerEnter={() => setHover({ tierId: tier.id })}
      onPointerLeave={() => setHover({})}
      onFocus={() => select({ tierId: tier.id })}
      onKeyDown={(event) => (typed.onKey(event) ? event.preventDefault() : onKey(event, tier.id, drag))}
      onKeyUp={drag.onKeyUp}
      onBlur={() => {
        drag.onKeyUp();
        typed.enter();
      }}
    >
      {chord ? <Chord chord={chord} frame={frame} /> : null}
      <circle className="grip-reach" cx={x} cy={y} r={22} />
      <circle className="grip-ring" cx={x} cy={y} r={KNOB_PX + 4} />
      <circle className="grip-knob" cx={x} cy={y} r={KNOB_PX} />
      <text x={x} y={y}>
        {index + 1}
      </text>
    </g>
  );
}

interface FreshProps {
  readonly knob: Knob;
  readonly fresh: Tier;
  readonly drag: TierDragHook;
}

/** Where the next tier is pulled in from the rim: hollow, for nothing is cut there yet. */
function FreshKnob({ knob, fresh, drag }: FreshProps) {
  const viewport = useViewport();
  const words = useWords(drawingWords);
  const [x, y] = knob.at;
  const arm = KNOB_PX * 0.45;
  const addByKey = (event: KeyboardEvent<SVGElement>) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    const picture = event.currentTarget.ownerSVGElement;
    // The page answers at once, so that the new tier's own knob is there to be gone to.
    flushSync(() => addTier(viewport, fresh));
    picture?.querySelector<SVGElement>(`[data-tier="${fresh.id}"]`)?.focus();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button of a drawing has no element of its own
    <g
      className="grip fresh"
      role="button"
      tabIndex={0}
      aria-label={words.fresh}
      aria-description={words.pullIn}
      onPointerDown={(event) => {
        const picture = event.currentTarget.ownerSVGElement;
        if (picture) drag.grab(event, picture, { tierId: fresh.id, fresh });
      }}
      onKeyDown={addByKey}
    >
      <circle className="grip-reach" cx={x} cy={y} r={22} />
      <circle className="grip-ring" cx={x} cy={y} r={KNOB_PX + 4} />
      <circle className="grip-knob" cx={x} cy={y} r={KNOB_PX} />
      <path className="fresh-plus" d={`M${x - arm} ${y}h${2 * arm}M${x} ${y - arm}v${2 * arm}`} />
    </g>
  );
}

function Chord({ chord, frame }: { chord: NonNullable<ReturnType<typeof chordOf>>; frame: ProfileFrame }) {
  const [[x1, y1], [x2, y2]] = [toScreen(frame, chord.poleEnd), toScreen(frame, chord.girdleEnd)];
  const [[fx, fy], [rx, ry]] = [toScreen(frame, chord.foot), toScreen(frame, chord.rim)];
  return (
    <>
      <line className="profile-hit" x1={x1} y1={y1} x2={x2} y2={y2} />
      <line className="profile-chord-rim" x1={x1} y1={y1} x2={x2} y2={y2} />
      <line className="profile-chord" x1={x1} y1={y1} x2={x2} y2={y2} />
      <line className="profile-depth" x1={fx} y1={fy} x2={rx} y2={ry} />
    </>
  );
}

/** The picture, not the knob, holds the pointer: the knob moves away under it. */
function grabFrom(event: PointerEvent<SVGElement>, tier: Tier, drag: TierDragHook) {
  const picture = event.currentTarget.ownerSVGElement;
  if (!picture) return;
  event.currentTarget.focus({ preventScroll: true });
  drag.grab(event, picture, { tierId: tier.id });
}

const KEYS: Readonly<Record<string, readonly ["angle" | "depth", 1 | -1]>> = {
  ArrowUp: ["angle", 1],
  ArrowDown: ["angle", -1],
  ArrowLeft: ["depth", 1],
  ArrowRight: ["depth", -1],
};

function onKey(event: KeyboardEvent, tierId: string, drag: TierDragHook) {
  const move = KEYS[event.key];
  if (move) drag.step(event, tierId, move[0], move[1]);
  else if (event.key === "PageUp" || event.key === "PageDown") {
    drag.toNextMeeting(tierId, "depth", event.key === "PageUp" ? 1 : -1);
  } else return;
  event.preventDefault();
}
