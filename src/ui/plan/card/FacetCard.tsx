/** The chosen facet laid flat, with its sizes and what lies at each of its sides; printed at 1:1 to hold against the glass. */
import { useMemo } from "react";
import { readStop } from "../../../core/bench/rig/set-up.ts";
import { SKIN } from "../../../core/geometry/solid-types.ts";
import type { SolvedPlan } from "../../../core/plan/solved.ts";
import type { drawings } from "../../../words/en/drawings.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Translated } from "../../../words/language.ts";
import { Button } from "../../controls/Button.tsx";
import { drawingWords } from "../../messages/drawings.ts";
import { useLanguage, useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { useSolid, useSolved, useStudio } from "../../use-studio.ts";
import { useBox } from "../drag/use-box.ts";
import { type FlatFacet, type FlatSide, flatFacet } from "./card-geometry.ts";
import { type CardWords, CHECK_MM, cardPage, printPage } from "./card-print.ts";
import "./card.css";
import { nameOrPlace } from "../../../words/names.ts";
import { cautionWords } from "../../messages/cautions.ts";

type Words = Translated<typeof drawings>;

/** Pixels of the drawing at most, without the dimensions and names around it. */
const DRAWN_PX = 320;
const LEAST_DRAWN_PX = 120;
/** Room for names at both sides and, at the left, for the height; for names above; for names and the width below. */
const SIDE_PX = 108;
const ABOVE_PX = 52;
const BELOW_PX = 88;
/** Shorter sides on the screen are named in the list alone. */
const NAMED_FROM_PX = 30;

/** "Shoulder 4", or the skin. */
function neighbourName(solved: SolvedPlan, side: FlatSide, words: Words): string {
  if (side.with === SKIN) return words.card.roundSkin;
  const { id, tierIndex } = solved.facets[side.with];
  return `${solved.plan.tiers[tierIndex].name} ${id.slice(id.lastIndexOf("/") + 1)}`;
}

function cardWords(
  solved: SolvedPlan,
  index: number,
  flat: FlatFacet,
  words: Words,
  format: Formats,
  caution: string,
): CardWords {
  const placed = solved.facets[index];
  const tier = solved.plan.tiers[placed.tierIndex];
  const stop =
    placed.wheelStop === null
      ? words.card.noStop(format.degrees(placed.azimuthDeg))
      : words.stop(readStop(solved.plan, placed).label);
  const depth = format.length(solved.tiers[placed.tierIndex].depthMm, 2);
  const k = placed.id.slice(placed.id.lastIndexOf("/") + 1);
  return {
    title: words.card.facet(
      nameOrPlace(tier.name, placed.tierIndex, words.tierNumber),
      k,
      String(tier.count),
    ),
    setting: words.card.setting(format.armAngle(placed.armAngleDeg), stop, depth),
    wide: `${format.length(flat.widthMm)} ${words.card.wide}`,
    high: `${format.length(flat.heightMm)} ${words.card.high}`,
    sides: flat.sides.map((s) => `${neighbourName(solved, s, words)}, ${format.length(s.lengthMm)}`),
    check: words.card.check(format.length(CHECK_MM)),
    seen: words.card.seen,
    caution,
  };
}

export default function FacetCard() {
  const words = useWords(drawingWords);
  const language = useLanguage();
  const caution = useWords(cautionWords)["paper-by-the-lap"];
  const format = useFormat();
  const solved = useSolved();
  const solid = useSolid();
  const facetId = useStudio((state) => state.selection.facetId);
  const index = solved.facets.findIndex((f) => f.id === facetId);
  const flat = useMemo(
    () => (index < 0 ? null : flatFacet(solid.facets[index], solved.radiusMm)),
    [index, solid, solved],
  );
  if (index < 0) return <p>{words.card.none}</p>;
  if (!flat) return <p>{words.card.swallowed}</p>;
  const said = cardWords(solved, index, flat, words, format, caution);
  return (
    <div className="card">
      <h3 className="card-title">{said.title}</h3>
      <p className="card-setting">{said.setting}</p>
      <FlatDrawing flat={flat} solved={solved} />
      <p className="card-note">{words.card.seen}</p>
      <ol className="card-sides">
        {flat.sides.map((side, i) => (
          <li key={side.path}>{said.sides[i]}</li>
        ))}
      </ol>
      <Button look="outlined" onPress={() => printPage(cardPage(flat, said, language))}>
        {words.card.print}
      </Button>
      <p className="card-note">{said.caution}</p>
    </div>
  );
}

/** The facet as large as the paper's width allows, its letters at their own size. */
function FlatDrawing({ flat, solved }: { flat: FlatFacet; solved: SolvedPlan }) {
  const [ref, box] = useBox<HTMLDivElement>();
  const words = useWords(drawingWords);
  const format = useFormat();
  const room = Math.min(DRAWN_PX, Math.max(LEAST_DRAWN_PX, box.width - 2 * SIDE_PX));
  const scale = Math.min(room / flat.widthMm, DRAWN_PX / flat.heightMm);
  const [w, h] = [flat.widthMm * scale, flat.heightMm * scale];
  const [width, height] = [w + 2 * SIDE_PX, h + ABOVE_PX + BELOW_PX];
  const below = h / 2 + BELOW_PX - 18;
  const beside = -w / 2 - SIDE_PX + 14;
  return (
    <div className="card-paper" ref={ref}>
      {box.width > 0 ? (
        <svg
          className="card-drawing"
          width={width}
          height={height}
          viewBox={`${-width / 2} ${-h / 2 - ABOVE_PX} ${width} ${height}`}
          role="img"
          aria-label={`${format.length(flat.widthMm)} ${words.card.wide}, ${format.length(flat.heightMm)} ${words.card.high}`}
        >
          <path className="card-facet" d={flat.path} transform={`scale(${scale})`} />
          {flat.sides.map((side) => (
            <Side key={side.path} side={side} scale={scale} name={neighbourName(solved, side, words)} />
          ))}
          <Dimension from={[-w / 2, below]} to={[w / 2, below]} said={format.length(flat.widthMm)} />
          <Dimension from={[beside, h / 2]} to={[beside, -h / 2]} said={format.length(flat.heightMm)} />
        </svg>
      ) : null}
    </div>
  );
}

/** One side: firm where it is shared, thin where round skin begins; its name and length outside it. */
function Side({ side, scale, name }: { side: FlatSide; scale: number; name: string }) {
  const format = useFormat();
  const isShared = side.with !== SKIN;
  const [ox, oy] = side.outward;
  const [x, y] = [side.middle[0] * scale + ox * 12, side.middle[1] * scale + oy * 12];
  const anchor = ox > 0.35 ? "start" : ox < -0.35 ? "end" : "middle";
  const drop = oy * 14 + (oy < -0.35 ? -14 : 0);
  return (
    <g>
      <path className={isShared ? "card-shared" : "card-skin"} d={side.path} transform={`scale(${scale})`} />
      {side.lengthMm * scale >= NAMED_FROM_PX ? (
        <text x={x} y={y + drop} textAnchor={anchor}>
          <tspan className="card-name">{name}</tspan>
          <tspan x={x} dy="1.2em">
            {format.length(side.lengthMm)}
          </tspan>
        </text>
      ) : null}
    </g>
  );
}

function Dimension({
  from,
  to,
  said,
}: {
  from: readonly [number, number];
  to: readonly [number, number];
  said: string;
}) {
  const isUpright = from[0] === to[0];
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const end = ([ex, ey]: readonly [number, number]) =>
    isUpright ? `M${ex - 6} ${ey}h12` : `M${ex} ${ey - 6}v12`;
  return (
    <g className="card-dimension">
      <path d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}${end(from)}${end(to)}`} />
      <text className="card-figure" x={x} y={y} transform={isUpright ? `rotate(-90 ${x} ${y})` : undefined}>
        {said}
      </text>
    </g>
  );
}
