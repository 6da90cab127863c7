/** What the chords are drawn on: the cut half-section, the rim with its degrees, the axis, the dop, what is inside. */
import { memo } from "react";
import type { Plan } from "../../../core/plan/document.ts";
import { type ProfileFrame, toScreen } from "./profile-geometry.ts";
import { dopCorners, isOfGround, ticksOf } from "./profile-ground.ts";
import type { Label } from "./profile-labels.ts";

interface GroundProps {
  readonly frame: ProfileFrame;
  readonly plan: Plan;
  /** Points of the cut section for a polygon. */
  readonly section: string;
  /** Names and degrees, where there is a place for them. */
  readonly labels: readonly Label[];
}

export const ProfileGround = memo(function ProfileGround({ frame, plan, section, labels }: GroundProps) {
  const { cx, cy, radius } = frame;
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
      <Rim frame={frame} />
      {labels
        .filter(({ key }) => isOfGround(key))
        .map((label) => (
          <LabelText key={label.key} label={label} className="quiet" />
        ))}
    </g>
  );
});

/** Words in the middle of their place. */
export function LabelText({ label: { lines, at, rect }, className }: { label: Label; className: string }) {
  const line = (rect.bottom - rect.top) / lines.length;
  const first = at[1] - ((lines.length - 1) * line) / 2;
  return (
    <text className={`profile-label ${className}`}>
      {lines.map((words, i) => (
        <tspan key={words} x={at[0]} y={first + i * line}>
          {words}
        </tspan>
      ))}
    </text>
  );
}

function Rim({ frame }: { frame: ProfileFrame }) {
  return ticksOf(frame).map(({ degrees, side, at, isNumbered }) => {
    const grow = 1 + (isNumbered ? 10 : 6) / frame.radius;
    const [[x1, y1], [x2, y2]] = [toScreen(frame, at), toScreen(frame, [at[0] * grow, at[1] * grow])];
    return <line key={`${side}${degrees}`} className="profile-tick" x1={x1} y1={y1} x2={x2} y2={y2} />;
  });
}

function Dop({ frame, plan }: { frame: ProfileFrame; plan: Plan }) {
  const corners = dopCorners(frame, plan);
  if (!corners) return null;
  return <polygon className="profile-dop" points={corners.map((p) => p.join(",")).join(" ")} />;
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
