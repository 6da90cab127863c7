/** The rig in one tier, drawn to scale from the side: lap with its good band, arm, hinge, dop, piece, the facet flat on the lap. */

import type { RigSetting } from "../../../core/bench/rig/rig.ts";
import { clearances, type Part, type Point, type RigDrawing } from "../../../core/bench/rig/rig-pose.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useBox } from "../../plan/drag/use-box.ts";
import { useFormat } from "../../use-format.ts";

/** Size of letters, px on the screen, and room around the drawing counted in letters: a measure at the right, one below. */
const LETTERS_PX = 15;
const ROOM = { left: 1, right: 6.5, top: 2, foot: 2.6 } as const;
const LAP_THICK_MM = 8;

const points = (list: readonly Point[]): string => list.map(([x, z]) => `${x},${-z}`).join(" ");

/** The part of the bench that is shown, mm, and the letters' size on it, so that they come out alike on every screen. */
function boundsOf(d: RigDrawing, widthPx: number) {
  const xs = [-d.lapRadiusMm, d.lapRadiusMm, d.hinge[0], d.centre[0] - d.radiusMm, d.centre[0] + d.radiusMm];
  const zs = [d.hinge[1], d.centre[1] + d.radiusMm, ...d.dop.map((p) => p[1]), ...d.chuck.map((p) => p[1])];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  // Letters take LETTERS_PX / widthPx of the whole width, which holds the rig and the room for letters beside it.
  const share = LETTERS_PX / Math.max(widthPx, 280);
  const letters = ((right - left) * share) / (1 - share * (ROOM.left + ROOM.right));
  const top = Math.max(...zs) + ROOM.top * letters;
  const foot = Math.min(0, d.hinge[1]) - LAP_THICK_MM - ROOM.foot * letters;
  return {
    letters,
    left: left - ROOM.left * letters,
    top,
    width: right - left + (ROOM.left + ROOM.right) * letters,
    height: top - foot,
  };
}

function Lap({ drawing }: { drawing: RigDrawing }) {
  const { lapRadiusMm, bandMm } = drawing;
  return (
    <g>
      <rect className="rig-lap" x={-lapRadiusMm} y={0} width={2 * lapRadiusMm} height={LAP_THICK_MM} />
      {[-1, 1].map((side) => (
        <rect
          key={side}
          className="rig-band"
          x={side > 0 ? bandMm[0] : -bandMm[1]}
          y={0}
          width={bandMm[1] - bandMm[0]}
          height={LAP_THICK_MM / 2}
        />
      ))}
      <line className="rig-axis" x1={0} x2={0} y1={-LAP_THICK_MM * 2} y2={LAP_THICK_MM * 2.5} />
    </g>
  );
}

/** The piece and what holds it; `ghost` is the moment of first touch, before anything is ground. */
function Held({ drawing }: { drawing: RigDrawing }) {
  // What would stand in the lap is drawn so; the finding beside the picture says it in words.
  const stuck = clearances(drawing).flatMap(({ part, mm }) => (mm < 0 ? [part] : []));
  const marked = (part: Part) => stuck.includes(part) || undefined;
  const { centre, radiusMm, armEnd, hinge, dop, chuck, facet, atTouch } = drawing;
  return (
    <g>
      {atTouch ? (
        <g className="rig-touch">
          <circle cx={atTouch.centre[0]} cy={-atTouch.centre[1]} r={radiusMm} />
          <line
            x1={atTouch.centre[0]}
            y1={-atTouch.centre[1]}
            x2={atTouch.armEnd[0]}
            y2={-atTouch.armEnd[1]}
          />
        </g>
      ) : null}
      <polyline className="rig-arm" data-stuck={marked("arm")} points={points([centre, armEnd, hinge])} />
      {chuck.length > 0 ? (
        <polygon className="rig-chuck" data-stuck={marked("chuck")} points={points(chuck)} />
      ) : null}
      {dop.length > 0 ? (
        <polygon className="rig-dop" data-stuck={marked("dop")} points={points(dop)} />
      ) : null}
      <clipPath id="rig-above">
        <rect
          x={centre[0] - radiusMm * 2}
          y={-centre[1] - radiusMm * 2}
          width={radiusMm * 4}
          height={centre[1] + radiusMm * 2}
        />
      </clipPath>
      <circle className="rig-piece" cx={centre[0]} cy={-centre[1]} r={radiusMm} clipPath="url(#rig-above)" />
      <line className="rig-facet" x1={facet[0][0]} x2={facet[1][0]} y1={0} y2={0} />
      <circle className="rig-hinge" cx={hinge[0]} cy={-hinge[1]} r={3} />
    </g>
  );
}

/** Pivot height, arm length and contact radius, each beside the line that it measures. */
function Measures({
  drawing,
  setting,
  letters,
}: {
  drawing: RigDrawing;
  setting: RigSetting;
  letters: number;
}) {
  const { length } = useFormat();
  const { hinge, centre, armEnd } = drawing;
  const gap = letters * 0.6;
  const middle = [(centre[0] + armEnd[0]) / 2, (centre[1] + armEnd[1]) / 2];
  const isRight = centre[0] >= 0;
  return (
    <g className="rig-measures" fontSize={letters}>
      <line x1={hinge[0] + gap} x2={hinge[0] + gap} y1={0} y2={-hinge[1]} />
      <line x1={hinge[0] - gap} x2={hinge[0] + gap * 2} y1={0} y2={0} />
      <text x={hinge[0] + gap * 1.8} y={-hinge[1] / 2 + letters / 3}>
        {length(setting.pivotHeightMm)}
      </text>
      <text x={middle[0]} y={-middle[1] - letters * 1.1} textAnchor="middle">
        {length(setting.armLengthMm)}
      </text>
      <line x1={0} x2={centre[0]} y1={LAP_THICK_MM + gap} y2={LAP_THICK_MM + gap} />
      <text
        x={centre[0] / 2}
        y={LAP_THICK_MM + gap + letters * 1.1}
        textAnchor={Math.abs(centre[0]) < letters * 5 ? (isRight ? "start" : "end") : "middle"}
      >
        {length(setting.contactRadiusMm)}
      </text>
    </g>
  );
}

export function RigPicture({
  drawing,
  setting,
  name,
}: {
  drawing: RigDrawing;
  setting: RigSetting;
  /** The tier, in words. */
  name: string;
}) {
  const words = useWords(benchWords);
  const { length, degrees } = useFormat();
  const [box, { width }] = useBox<HTMLDivElement>();
  const { left, top, width: across, height, letters } = boundsOf(drawing, width);
  const dip = setting.dipAtTouchDeg;
  return (
    <figure className="rig-picture" ref={box}>
      <svg
        viewBox={`${left} ${-top} ${across} ${height}`}
        role="img"
        aria-label={words.rig.pictureOf(
          name,
          length(setting.pivotHeightMm),
          length(setting.armLengthMm),
          length(setting.contactRadiusMm),
        )}
      >
        <Lap drawing={drawing} />
        <Held drawing={drawing} />
        <Measures drawing={drawing} setting={setting} letters={letters} />
      </svg>
      <figcaption className="small soft">
        {dip === null
          ? words.rig.noTouch
          : dip < 0
            ? words.rig.captionUp(degrees(-dip))
            : words.rig.caption(degrees(dip))}
      </figcaption>
    </figure>
  );
}
