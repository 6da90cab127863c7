/** What the chords are drawn on: the cut half-section, the rim with its degrees, the axis, the dop, what is inside. */
import { memo } from "react";
import type { Plan } from "../../../core/plan/document.ts";
import { drawingWords } from "../../messages/drawings.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { isCrossed, type Knob } from "./knobs.ts";
import { dopOutline, type ProfileFrame, rimTicks, toScreen } from "./profile-geometry.ts";

/** Length of a dop that doesn't say how long it is: as far as the picture shows it, over the radius. */
const DOP_SHOWN = 0.22;

/** Degrees stand this far outside the rim, the knobs beyond them. */
const DEGREES_OUT_PX = 25;
/** Half a number of degrees. */
const DEGREES_CLEAR_PX = 14;

type Room = "small" | "some" | "large";

interface GroundProps {
  readonly frame: ProfileFrame;
  readonly plan: Plan;
  /** Points of the cut section for a polygon. */
  readonly section: string;
  readonly room: Room;
  /** Where a stem runs through a number of degrees, the number makes room. */
  readonly knobs: readonly Knob[];
}

export const ProfileGround = memo(function ProfileGround({ frame, plan, section, room, knobs }: GroundProps) {
  const { cx, cy, radius } = frame;
  const words = useWords(drawingWords);
  return (
    <g className="profile-ground">
      <path
        className="profile-round"
        d={`M${cx} ${cy - radius}A${radius} ${radius} 0 0 1 ${cx} ${cy + radius}`}
      />
      <polygon className="profile-section" points={section} />
      <line className="profile-axis" x1={cx} y1={cy - radius - 10} x2={cx} y2={cy + radius + 10} />
      <line className="profile-equator" x1={cx} y1={cy} x2={cx + radius} y2={cy} />
      <Inside frame={frame} plan={plan} />
      <Dop frame={frame} plan={plan} />
      <Rim frame={frame} room={room} knobs={knobs} />
      {room === "small" ? null : (
        <>
          <text className="profile-side quiet" x={cx - 12} y={cy - radius + 6}>
            {words.front}
          </text>
          <text className="profile-side quiet" x={cx - 12} y={cy + radius + 4}>
            {words.back}
          </text>
        </>
      )}
    </g>
  );
});

function Rim({ frame, room, knobs }: Pick<GroundProps, "frame" | "room" | "knobs">) {
  const isLarge = room === "large";
  const format = useFormat();
  return rimTicks(isLarge ? 5 : 10, isLarge ? 10 : 30).map(({ degrees, side, at, isNumbered }) => {
    const out = isNumbered ? 10 : 6;
    const [x1, y1] = toScreen(frame, at);
    const grow = 1 + out / frame.radius;
    const [x2, y2] = toScreen(frame, [at[0] * grow, at[1] * grow]);
    const far = 1 + DEGREES_OUT_PX / frame.radius;
    const [tx, ty] = toScreen(frame, [at[0] * far, at[1] * far]);
    return (
      <g key={`${side}${degrees}`}>
        <line className="profile-tick" x1={x1} y1={y1} x2={x2} y2={y2} />
        {room !== "small" &&
        isNumbered &&
        degrees > 0 &&
        degrees < 90 &&
        !isCrossed([tx, ty], knobs, DEGREES_CLEAR_PX) ? (
          <text className="profile-degrees quiet" x={tx} y={ty}>
            {format.armAngle(degrees, 0)}
          </text>
        ) : null}
      </g>
    );
  });
}

function Dop({ frame, plan }: { frame: ProfileFrame; plan: Plan }) {
  const words = useWords(drawingWords);
  const { dop, diameterMm } = plan.piece;
  if (!dop) return null;
  const length =
    dop.lengthMm === undefined ? DOP_SHOWN : Math.min(DOP_SHOWN, (2 * dop.lengthMm) / diameterMm);
  const outline = dopOutline(dop.side, (2 * dop.diameterMm) / diameterMm, length);
  const corners = outline.points.map((p) => toScreen(frame, p));
  const [x, y] = corners[2];
  return (
    <g>
      <polygon className="profile-dop" points={corners.map((p) => p.join(",")).join(" ")} />
      <text className="quiet" x={x + 7} y={y + (dop.side === "front" ? 10 : -2)}>
        {words.dop}
      </text>
    </g>
  );
}

/** Round things on or near the axis, as they lie in this half; other designs are seen in the piece. */
function Inside({ frame, plan }: { frame: ProfileFrame; plan: Plan }) {
  const scale = (2 * frame.radius) / plan.piece.diameterMm;
  return (plan.piece.inside ?? []).map((design, i) => {
    if (design.kind !== "core" && design.kind !== "bubble" && design.kind !== "speckle") return null;
    const [x, y, z] = design.atMm ?? [0, 0, 0];
    const r = (design.diameterMm / 2) * scale;
    const [px, py] = [frame.cx + Math.hypot(x, y) * scale, frame.cy - z * scale];
    const key = `${design.kind}${i}`;
    return <path key={key} className="profile-inside" d={rightHalf(px, py, r, frame.cx)} />;
  });
}

/** The part of a circle that lies right of the axis. */
function rightHalf(x: number, y: number, r: number, axis: number): string {
  const away = axis - x;
  if (away <= -r) return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
  if (away >= r) return "";
  const half = Math.sqrt(r * r - away * away);
  return `M${axis} ${y - half}A${r} ${r} 0 ${away < 0 ? 1 : 0} 1 ${axis} ${y + half}`;
}
