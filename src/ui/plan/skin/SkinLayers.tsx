/** The strip's layers, from the skin's ground up to corners. Shape says what is what: see the marks in skin.css. */
import { memo, type ReactNode } from "react";
import type { Formats } from "../../../words/formats.ts";
import { useFormat } from "../../use-format.ts";
import { useStudio } from "../../use-studio.ts";
import type { Strip } from "./projection.ts";
import type { CornerMark, Drawn, DrawnFacet, DrawnGap, Mark, MissMark, SkinDrawing } from "./skin-drawing.ts";
import { GAP_NUMBER_AT, MISSES_FIT_PX, tailOf } from "./skin-labels.ts";
import type { StripPoint } from "./strip-path.ts";

/** A finger or the pointer finds a mark within this. */
const MARK_REACH_PX = 10;
/** Smaller misses than a hundredth of a millimetre are no misses to a person. */
const LEAST_MISS_MM = 0.01;

/** Marks are smaller on a short strip, where they lie closer: 1 from 1100 px on. */
export const markScale = ({ width }: Strip): number => Math.min(1, Math.max(0.5, width / 1100));

const HOME: StripPoint = [0, 0];

/** A thing drawn about `at`, once for every turn in which it shows. Moving it changes nothing but where it stands. */
function Turns({
  strip,
  shifts,
  at: [x, y] = HOME,
  children,
}: {
  strip: Strip;
  shifts: readonly number[];
  at?: StripPoint;
  children: ReactNode;
}) {
  return shifts.map((turn) => (
    <g key={turn} transform={`translate(${(x + turn * strip.width).toFixed(2)} ${y.toFixed(2)})`}>
      {children}
    </g>
  ));
}

const Paths = ({ strip, items, className }: { strip: Strip; items: readonly Drawn[]; className: string }) =>
  items.map((item) => (
    <Turns key={item.key} strip={strip} shifts={item.shifts}>
      <path className={className} d={item.path} />
    </Turns>
  ));

export const FacetLayer = memo(function FacetLayer({
  strip,
  drawing: { facets, outlines },
  stops,
}: {
  strip: Strip;
  drawing: SkinDrawing;
  /** Facets whose stop is told. */
  stops: ReadonlySet<string>;
}) {
  const drawn = facets.map((facet) => (
    <Turns key={facet.key} strip={strip} shifts={facet.shifts}>
      <path className="skin-facet" d={facet.path} data-facet={facet.key} />
      {stops.has(facet.key) ? (
        <text className="skin-number" transform={`translate(${facet.middle.join(" ")})`}>
          {facet.stop}
        </text>
      ) : null}
    </Turns>
  ));
  return (
    <>
      {drawn}
      <path className="skin-outline" d={outlines} />
    </>
  );
});

export const MeetingLayer = memo(function MeetingLayer({
  strip,
  drawing,
}: {
  strip: Strip;
  drawing: SkinDrawing;
}) {
  const format = useFormat();
  const scale = markScale(strip);
  const cornerPx = ({ missMm }: CornerMark) => (missMm < LEAST_MISS_MM ? 3 : 4) * scale;
  return (
    <g className="skin-meetings">
      <path className="skin-edge" d={drawing.edges} />
      <path className="skin-touch" d={dots(strip, drawing.touches, () => 4.5 * scale)} />
      <path className="skin-corner" d={dots(strip, drawing.corners, cornerPx)} />
      {drawing.misses.map((miss) => (
        <Miss key={miss.key} strip={strip} miss={miss} words={missInWords(miss.mm, format)} />
      ))}
      <Reaches strip={strip} marks={drawing.touches} />
      <Reaches strip={strip} marks={drawing.corners} />
    </g>
  );
});

/** Circles about marks, in every turn in which they show: one path, so that a move of the hand changes one. */
const dots = <M extends Mark>(strip: Strip, marks: readonly M[], radiusOf: (mark: M) => number): string =>
  marks
    .map((mark) => {
      const r = Number(radiusOf(mark).toFixed(2));
      return mark.shifts
        .map((turn) => {
          const x = mark.at[0] + turn * strip.width - r;
          return `M${x.toFixed(2)} ${mark.at[1].toFixed(2)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
        })
        .join("");
    })
    .join("");

/** Round a mark, what the hand meets; `data-mark` says which one it is. */
const Reach = ({ mark, strip }: { mark: Mark; strip: Strip }) => (
  <circle className="skin-reach" data-mark={mark.key} r={MARK_REACH_PX * markScale(strip)} />
);

/** A hand that drags a facet meets no marks. */
function Reaches({ strip, marks }: { strip: Strip; marks: readonly Mark[] }) {
  const isDragging = useStudio((state) => state.drag !== null);
  if (isDragging) return null;
  return marks.map((mark) => (
    <Turns key={mark.key} strip={strip} shifts={mark.shifts} at={mark.at}>
      <Reach mark={mark} strip={strip} />
    </Turns>
  ));
}

/** A dot with a tail toward where the planes come apart, enlarged, and the number. */
function Miss({ strip, miss, words }: { strip: Strip; miss: MissMark; words: string }) {
  const {
    end: [ex, ey],
    number: [nx, ny],
  } = tailOf(miss);
  return (
    <Turns strip={strip} shifts={miss.shifts} at={miss.at}>
      <line className="skin-tail" x2={ex} y2={ey} />
      <circle className="skin-missed" r={4 * markScale(strip)} />
      {strip.width > MISSES_FIT_PX ? (
        <text className="skin-miss-number rimmed" transform={`translate(${nx} ${ny})`}>
          {words}
        </text>
      ) : null}
      <Reach mark={miss} strip={strip} />
    </Turns>
  );
}

/** Hatched bands, under the facets that leave them. */
export const GapLayer = memo(function GapLayer({ strip, gaps }: { strip: Strip; gaps: readonly DrawnGap[] }) {
  return gaps.map((gap) => (
    <Turns key={gap.key} strip={strip} shifts={gap.shifts}>
      <path className="skin-gap" d={gap.path} data-mark={gap.key} />
    </Turns>
  ));
});

export const gapInWords = (mm: number, format: Formats): string => format.length(mm, mm < 1 ? 2 : 1);

export const missInWords = (mm: number, format: Formats): string => format.length(mm, 2);

/** Widths of gaps: one of each kind, and all around the chosen facet. */
export function GapNumbers({ strip, gaps }: { strip: Strip; gaps: readonly DrawnGap[] }) {
  const format = useFormat();
  const chosen = useStudio((state) => state.selection.facetId);
  const shown = gaps.filter((gap) => gap.isNamed || (chosen !== null && gap.facets.includes(chosen)));
  return shown.map((gap) => (
    <Turns key={gap.key} strip={strip} shifts={gap.shifts} at={gap.at}>
      <text className="skin-gap-number rimmed" x={GAP_NUMBER_AT[0]} y={GAP_NUMBER_AT[1]}>
        {gapInWords(gap.mm, format)}
      </text>
    </Turns>
  ));
}

const outlined = ({ key, outline, shifts }: DrawnFacet): Drawn => ({ key, path: outline, shifts });

/** Outlines of what is hovered (one line) and chosen (two lines): facets, or all facets of a tier. */
export function ChosenLayer({
  strip,
  facets,
  tierIds,
}: {
  strip: Strip;
  facets: readonly DrawnFacet[];
  tierIds: readonly string[];
}) {
  const selection = useStudio((state) => state.selection);
  const hover = useStudio((state) => state.hover);
  const isIn = (pick: typeof selection, facet: DrawnFacet) =>
    pick.facetId === null ? pick.tierId === tierIds[facet.tierIndex] : pick.facetId === facet.key;
  const ofTier = facets.filter(
    (f) => selection.facetId !== null && selection.tierId === tierIds[f.tierIndex],
  );
  const selected = facets.filter((f) => isIn(selection, f));
  const hovered = facets.filter((f) => isIn(hover, f));
  return (
    <g className="skin-chosen">
      <Paths strip={strip} items={ofTier} className="skin-tier-fill" />
      <Paths strip={strip} items={selected} className="skin-selected-fill" />
      <Paths strip={strip} items={ofTier.map(outlined)} className="skin-tier" />
      <Paths strip={strip} items={hovered.map(outlined)} className="skin-hovered" />
      <Paths strip={strip} items={selected.map(outlined)} className="skin-selected-outer" />
      <Paths strip={strip} items={selected.map(outlined)} className="skin-selected-inner" />
    </g>
  );
}
