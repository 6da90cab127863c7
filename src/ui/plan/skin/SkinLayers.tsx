/** The strip's layers, from the skin's ground up to corners. Shape says what is what: see the marks in skin.css. */
import { memo, type ReactNode } from "react";
import { useFormat } from "../../use-format.ts";
import { useStudio } from "../../use-studio.ts";
import type { Strip } from "./projection.ts";
import type { CornerMark, Drawn, DrawnFacet, DrawnGap, Mark, SkinDrawing } from "./skin-drawing.ts";

/** A miss is drawn this much larger than it is, and never longer than MOST_TAIL_PX. */
const TAIL_PX_PER_MM = 160;
const MOST_TAIL_PX = 34;
/** Smaller misses than a hundredth of a millimetre are no misses to a person. */
const LEAST_MISS_MM = 0.01;
const NUMBER_FITS_PX = 30;

/** Marks are smaller on a short strip, where they lie closer: 1 from 1100 px on. */
export const markScale = ({ width }: Strip): number => Math.min(1, Math.max(0.5, width / 1100));

/** A thing drawn once for every turn in which it shows. */
function Turns({
  strip,
  shifts,
  children,
}: {
  strip: Strip;
  shifts: readonly number[];
  children: ReactNode;
}) {
  return shifts.map((turn) => (
    <g key={turn} transform={turn === 0 ? undefined : `translate(${turn * strip.width} 0)`}>
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
  facets,
  withStops,
}: {
  strip: Strip;
  facets: readonly DrawnFacet[];
  withStops: boolean;
}) {
  return facets.map((facet) => (
    <Turns key={facet.key} strip={strip} shifts={facet.shifts}>
      <path className="skin-facet" d={facet.path} data-facet={facet.key} />
      <path className="skin-outline" d={facet.outline} />
      {withStops && facet.stop !== null && facet.widthPx > NUMBER_FITS_PX ? (
        <text className="skin-number quiet" x={facet.middle[0]} y={facet.middle[1]}>
          {facet.stop}
        </text>
      ) : null}
    </Turns>
  ));
});

export const MeetingLayer = memo(function MeetingLayer({
  strip,
  drawing,
}: {
  strip: Strip;
  drawing: SkinDrawing;
}) {
  return (
    <g className="skin-meetings">
      <Paths strip={strip} items={drawing.edges} className="skin-edge" />
      {drawing.touches.map((touch) => (
        <TouchMark key={touch.key} strip={strip} touch={touch} />
      ))}
      {drawing.corners.map((corner) => (
        <Corner key={corner.key} strip={strip} corner={corner} />
      ))}
    </g>
  );
});

const TouchMark = ({ strip, touch }: { strip: Strip; touch: Mark }) => (
  <Turns strip={strip} shifts={touch.shifts}>
    <circle className="skin-touch" cx={touch.at[0]} cy={touch.at[1]} r={4.5 * markScale(strip)} />
  </Turns>
);

function Corner({ strip, corner }: { strip: Strip; corner: CornerMark }) {
  const format = useFormat();
  const [x, y] = corner.at;
  const misses = corner.missMm >= LEAST_MISS_MM;
  const tail = Math.min(MOST_TAIL_PX, 8 + corner.missMm * TAIL_PX_PER_MM);
  return (
    <Turns strip={strip} shifts={corner.shifts}>
      <circle className="skin-corner" cx={x} cy={y} r={3 * markScale(strip)} />
      {misses ? (
        <>
          <line className="skin-tail" x1={x} y1={y} x2={x + tail} y2={y - tail / 2} />
          <text className="rimmed" x={x + tail + 3} y={y - tail / 2 + 4}>
            {format.length(corner.missMm, 2)}
          </text>
        </>
      ) : null}
    </Turns>
  );
}

/** Hatched bands, under the facets that leave them. */
export const GapLayer = memo(function GapLayer({ strip, gaps }: { strip: Strip; gaps: readonly DrawnGap[] }) {
  return <Paths strip={strip} items={gaps} className="skin-gap" />;
});

/** Widths of gaps: one of each kind, and all around the chosen facet. */
export function GapNumbers({ strip, gaps }: { strip: Strip; gaps: readonly DrawnGap[] }) {
  const format = useFormat();
  const chosen = useStudio((state) => state.selection.facetId);
  const shown = gaps.filter((gap) => gap.isNamed || (chosen !== null && gap.facets.includes(chosen)));
  return shown.map((gap) => (
    <Turns key={gap.key} strip={strip} shifts={gap.shifts}>
      <text className="skin-gap-number rimmed" x={gap.at[0] + 9} y={gap.at[1] - 8}>
        {format.length(gap.mm, gap.mm < 1 ? 2 : 1)}
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
