/**
 * The whole surface unrolled: facets, gaps, edges and corners as they lie, wheel stops along the lower edge. A facet is
 * dragged sideways for the start of its tier, up and down for the arm angle; dragged beside a facet the strip turns.
 */
import {
  type CSSProperties,
  type KeyboardEvent,
  type PointerEvent,
  useId,
  useMemo,
  useRef,
  useState,
} from "react";
import { directionOf, readStop } from "../../../core/bench/rig/set-up.ts";
import type { Solid } from "../../../core/geometry/solid-types.ts";
import type { Vec3 } from "../../../core/geometry/vec.ts";
import { stopsOf, zeroOf } from "../../../core/plan/place.ts";
import { drawingWords } from "../../messages/drawings.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { useSolved, useStudio } from "../../use-studio.ts";
import { useShownReport, useShownSolid, useShownSolved } from "../diary/use-shown.ts";
import { turned } from "../drag/drag-maths.ts";
import { Readout } from "../drag/Readout.tsx";
import { patternSaid } from "../drag/said.ts";
import type { ScreenPoint } from "../drag/tier-hold.ts";
import { type Box, useBox } from "../drag/use-box.ts";
import { type TierDragHook, useTierDrag } from "../drag/use-tier-drag.ts";
import { type AnyMark, allMarks, MarkSaid } from "./MarkSaid.tsx";
import { ORIGIN, type Strip } from "./projection.ts";
import { InkMark, namesOf, SkinGround, SkinNames } from "./SkinGround.tsx";
import {
  ChosenLayer,
  FacetLayer,
  GapLayer,
  GapNumbers,
  gapInWords,
  MeetingLayer,
  markScale,
  missInWords,
} from "./SkinLayers.tsx";
import { skinDrag } from "./skin-drag.ts";
import { type DrawnFacet, drawSkin } from "./skin-drawing.ts";
import { boxOf, numbersThatFit } from "./skin-labels.ts";
import { layOut } from "./skin-layout.ts";
import { nearestTurn } from "./strip-path.ts";
import { WheelEdge } from "./WheelEdge.tsx";
import "./skin.css";
import { nameOrPlace } from "../../../words/names.ts";

/** On a shorter strip the stops are read off the wheel at its edge alone. */
const STOPS_FIT_PX = 900;
const NONE: ReadonlySet<string> = new Set();
/** A finger that lands this near a facet takes hold of it. */
const FINGER_PX = 22;

/** All that is drawn of the skin as it stands: where the strip lies, what is on it, and which words and numbers fit. */
function useDrawnSkin(box: Box) {
  const solved = useShownSolved();
  const { plan } = solved;
  const solid = useShownSolid();
  const report = useShownReport();
  const words = useWords(drawingWords);
  const format = useFormat();
  // The ink mark begins in the middle; turning the strip moves it away.
  const [left, setLeft] = useState(() => ((plan.piece.inkMarkDeg ?? 0) * Math.PI) / 180 - Math.PI);
  const layout = useMemo(() => layOut(box, left), [box, left]);
  const { window } = layout;
  const strip = useMemo(() => ({ ...layout.strip, centre: centreOf(solid) }), [layout, solid]);
  const drawing = useMemo(
    () => drawSkin(solved, solid, report, strip, window),
    [solved, solid, report, strip, window],
  );
  const inkMarkDeg = plan.piece.inkMarkDeg ?? 0;
  const names = useMemo(() => namesOf(layout, inkMarkDeg, words), [layout, inkMarkDeg, words]);
  const numbers = useMemo(() => {
    const boxes = names.map((name) => boxOf(name.words, name.at));
    return numbersThatFit(
      strip,
      drawing,
      boxes,
      (mm) => gapInWords(mm, format),
      (mm) => missInWords(mm, format),
    );
  }, [strip, drawing, names, format]);
  return { solved, solid, layout, strip, drawing, names, numbers, inkMarkDeg, setLeft };
}

export function Skin() {
  const [ref, box] = useBox<HTMLDivElement>();
  const { solved, solid, layout, strip, drawing, names, numbers, inkMarkDeg, setLeft } = useDrawnSkin(box);
  const { plan } = solved;
  const words = useWords(drawingWords);
  const format = useFormat();
  const saidId = useId();
  const marks = useMemo(() => allMarks(drawing), [drawing]);
  const [markKey, setMarkKey] = useState<string | null>(null);
  const mark = marks.find(({ key }) => key === markKey) ?? null;
  const drag = useTierDrag(useMemo(() => skinDrag(plan, strip, layout.y), [plan, strip, layout.y]));
  const turn = useTurning(strip, setLeft);
  const setHover = useStudio((state) => state.setHover);
  const selectedTier = useStudio((state) => state.selection.tierId);
  const tierIds = useMemo(() => plan.tiers.map((t) => t.id), [plan]);
  const side = plan.tiers.find((t) => t.id === selectedTier)?.side ?? "front";
  const taken = useTakenStops(selectedTier);

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    const picture = event.currentTarget;
    const bounds = picture.getBoundingClientRect();
    const at: ScreenPoint = [event.clientX - bounds.left - layout.x, event.clientY - bounds.top - layout.y];
    const pressed = marks.find(({ key }) => key === markUnder(event.target));
    setMarkKey(pressed?.key ?? null);
    const facetId = facetUnder(event) ?? pressed?.facets.at(-1) ?? nearestFacet(drawing.facets, strip, at);
    if (facetId) drag.grab(event, picture, { tierId: facetId.slice(0, facetId.lastIndexOf("/")), facetId });
    else turn.begin(event, picture);
  };
  return (
    <div className="drawing skin" ref={ref}>
      {box.width > 0 ? (
        // biome-ignore lint/a11y/useSemanticElements: a drawing with grips in it has no element of its own
        <svg
          role="group"
          aria-label={words.skin}
          aria-describedby={saidId}
          style={{ "--mark": markScale(strip) } as CSSProperties}
          {...drag.surface}
          onPointerDown={onPointerDown}
          onPointerMove={(event) => {
            if (!turn.move(event)) drag.surface.onPointerMove(event);
          }}
          onPointerUp={() => {
            turn.end();
            drag.surface.onPointerUp();
          }}
          onPointerOver={(event) => {
            const facetId = facetUnder(event);
            setHover(facetId ? { facetId } : {});
          }}
          onPointerLeave={() => setHover({})}
        >
          <SkinGround layout={layout} />
          <g transform={`translate(${layout.x} ${layout.y})`}>
            <g clipPath="url(#skin-window)">
              <GapLayer strip={strip} gaps={drawing.gaps} />
              <FacetLayer
                strip={strip}
                drawing={drawing}
                stops={strip.width > STOPS_FIT_PX ? numbers.stops : NONE}
              />
              <InkMark layout={layout} azimuthDeg={inkMarkDeg} />
              <MeetingLayer strip={strip} drawing={drawing} />
              <ChosenLayer strip={strip} facets={drawing.facets} tierIds={tierIds} />
              <GapNumbers strip={strip} gaps={drawing.gaps} />
              <SkinNames names={names} />
            </g>
            <WheelEdge
              strip={strip}
              window={layout.window}
              stops={stopsOf(plan, side)}
              isWith={directionOf(plan, side) === "with"}
              zeroLabel={plan.rig.setUps?.[side]?.zeroLabel}
              zeroDeg={zeroOf(plan, side)}
              taken={taken}
            />
            <StripTurner strip={strip} inkMarkDeg={inkMarkDeg} setLeft={setLeft} />
            {plan.tiers.map((tier, index) => (
              <TierGrip
                key={tier.id}
                tierId={tier.id}
                index={index}
                drawing={drawing.facets}
                strip={strip}
                isNumbered={numbers.tiers.has(index)}
                drag={drag}
                onNextMark={() => setMarkKey(nextMark(marks, tier.id, markKey))}
              />
            ))}
          </g>
        </svg>
      ) : null}
      <p className="drawing-said" id={saidId}>
        {words.skinOf(patternSaid(solved, solid, words, format))}
      </p>
      <MarkSaid mark={drag.live ? null : mark} solved={solved} layout={layout} width={box.width} />
      <Readout live={drag.live} box={box} />
    </div>
  );
}

/** Stops at which a tier's facets stand; the same set as long as they stay, so that the wheel is not drawn again. */
function useTakenStops(tierId: string | null): ReadonlySet<number> {
  const { facets, plan } = useSolved();
  const stops = facets
    .filter((f) => plan.tiers[f.tierIndex].id === tierId && f.wheelStop !== null)
    .map((f) => f.wheelStop)
    .join(" ");
  return useMemo(() => new Set(stops === "" ? [] : stops.split(" ").map(Number)), [stops]);
}

/** The middle of the piece as long as it is inside; a point inside what is left when a tier is ground past it. */
const centreOf = ({ facets, centroid }: Solid): Vec3 =>
  facets.some(({ plane, swallowed }) => !swallowed && plane.h <= 0) ? centroid : ORIGIN;

/** The mark of this tier after the present one, round and round; null when it has none. */
function nextMark(marks: readonly AnyMark[], tierId: string, now: string | null): string | null {
  const own = marks.filter(({ facets }) => facets.some((id) => id.startsWith(`${tierId}/`)));
  if (own.length === 0) return null;
  return own[(own.findIndex(({ key }) => key === now) + 1) % own.length].key;
}

const markUnder = (target: EventTarget): string | null =>
  target instanceof Element ? (target.closest("[data-mark]")?.getAttribute("data-mark") ?? null) : null;
/** The facet under the pointer, also where a mark lies over it. */
const facetUnder = ({ clientX, clientY }: PointerEvent): string | null =>
  document
    .elementsFromPoint(clientX, clientY)
    .find((element) => element.hasAttribute("data-facet"))
    ?.getAttribute("data-facet") ?? null;

/** The facet whose middle is nearest, in any turn, when a finger could have meant it. */
function nearestFacet(facets: readonly DrawnFacet[], strip: Strip, [x, y]: ScreenPoint): string | null {
  let best: string | null = null;
  let least = FINGER_PX;
  for (const { key, middle } of facets) {
    const around =
      ((((middle[0] - x + strip.width / 2) % strip.width) + strip.width) % strip.width) - strip.width / 2;
    const away = Math.hypot(around, middle[1] - y);
    if (away < least) [best, least] = [key, away];
  }
  return best;
}

/** Turning the strip by dragging beside the facets. */
function useTurning(strip: Strip, setLeft: (change: (left: number) => number) => void) {
  const last = useRef<{ pointer: number; x: number } | null>(null);
  return {
    begin: (event: PointerEvent<SVGSVGElement>, picture: Element) => {
      if (event.button !== 0) return;
      picture.setPointerCapture(event.pointerId);
      last.current = { pointer: event.pointerId, x: event.clientX };
    },
    move: (event: PointerEvent<SVGSVGElement>): boolean => {
      if (last.current?.pointer !== event.pointerId) return false;
      const dx = event.clientX - last.current.x;
      last.current = { pointer: event.pointerId, x: event.clientX };
      setLeft((left) => nearestTurn(left - (dx / strip.width) * 2 * Math.PI, -Math.PI));
      return true;
    },
    end: () => {
      last.current = null;
    },
  };
}

/** Below this, numbers of tiers would cover their facets. */
const NUMBERS_FIT_PX = 640;

const KEY_TURN_DEG = 15;
const FINE_TURN_DEG = 1;

/** Turns the strip by keys: it has the wheel's edge for its own. */
function StripTurner({
  strip,
  inkMarkDeg,
  setLeft,
}: {
  strip: Strip;
  inkMarkDeg: number;
  setLeft: (change: (left: number) => number) => void;
}) {
  const words = useWords(drawingWords);
  const format = useFormat();
  const middleDeg = turned(((strip.left + Math.PI) * 180) / Math.PI);
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (event.key === "Home") setLeft(() => (inkMarkDeg * Math.PI) / 180 - Math.PI);
    else if (way === undefined) return;
    else {
      const by = (way * (event.shiftKey ? FINE_TURN_DEG : KEY_TURN_DEG) * Math.PI) / 180;
      setLeft((left) => nearestTurn(left + by, -Math.PI));
    }
    event.preventDefault();
  };
  return (
    <g
      className="skin-turner"
      role="slider"
      tabIndex={0}
      aria-label={words.turnStrip}
      aria-description={words.turnKeys}
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={Math.round(middleDeg)}
      aria-valuetext={format.degrees(middleDeg, 0)}
      onKeyDown={onKeyDown}
    >
      <rect x={-2} y={strip.height + 1} width={strip.width + 4} height={32} rx={3} />
    </g>
  );
}

interface GripProps {
  readonly tierId: string;
  readonly index: number;
  readonly drawing: readonly DrawnFacet[];
  readonly strip: Strip;
  /** Whether its number lies on nothing that matters more. */
  readonly isNumbered: boolean;
  readonly drag: TierDragHook;
  readonly onNextMark: () => void;
}

/** The tier's first facet as what keys take hold of, with the tier's number in it. */
function TierGrip({ tierId, index, drawing, strip, isNumbered, drag, onNextMark }: GripProps) {
  const solved = useSolved();
  const { plan } = solved;
  const words = useWords(drawingWords);
  const format = useFormat();
  const select = useStudio((state) => state.select);
  const isSelected = useStudio((state) => state.selection.tierId === tierId);
  const tier = plan.tiers[index];
  const first = solved.facets[solved.tiers[index].first];
  const facet = drawing.find((f) => f.tierIndex === index);
  if (!facet || !tier) return null;
  const start =
    first.wheelStop === null ? format.degrees(first.azimuthDeg) : words.stop(readStop(plan, first).label);
  const x = facet.middle[0] - strip.width * Math.floor(facet.middle[0] / strip.width);
  return (
    <g
      className="skin-grip"
      role="slider"
      tabIndex={0}
      aria-label={words.skinHandle(nameOrPlace(tier.name, index, words.tierNumber))}
      aria-description={`${words.skinKeys} ${words.markKeys}`}
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={first.azimuthDeg}
      aria-valuetext={`${start}, ${format.armAngle(tier.armAngleDeg)}`}
      data-tier={tierId}
      transform={`translate(${x} ${facet.middle[1]})`}
      onFocus={() => select({ tierId })}
      onKeyDown={(event) => {
        if (event.key === "Enter") onNextMark();
        else onKey(event, tierId, drag);
      }}
      onKeyUp={drag.onKeyUp}
      onBlur={drag.onKeyUp}
    >
      <circle className="skin-grip-ring" r={14} />
      {isNumbered && (strip.width > NUMBERS_FIT_PX || isSelected) ? (
        <text className="skin-tier-number strong rimmed">{index + 1}</text>
      ) : null}
    </g>
  );
}

const KEYS: Readonly<Record<string, readonly ["start" | "angle", 1 | -1]>> = {
  ArrowLeft: ["start", -1],
  ArrowRight: ["start", 1],
  ArrowUp: ["angle", 1],
  ArrowDown: ["angle", -1],
};

function onKey(event: KeyboardEvent, tierId: string, drag: TierDragHook) {
  const move = KEYS[event.key];
  if (move) drag.step(event, tierId, move[0], move[1]);
  else if (event.key === "PageUp" || event.key === "PageDown") {
    drag.toNextMeeting(tierId, "angle", event.key === "PageUp" ? 1 : -1);
  } else return;
  event.preventDefault();
}
