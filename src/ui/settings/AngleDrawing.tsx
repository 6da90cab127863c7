/** The two ways to count the arm's angle, drawn: from level (arm angle) and from plumb (cutting angle). */
import { settingsWords } from "../messages/settings.ts";
import { useWords } from "../messages/words.tsx";
import { useStudio } from "../use-studio.ts";

const ARM_DEG = 36;
const REACH = 150;
const HINGE = { x: 30, y: 34 };

const at = (deg: number, reach: number) => {
  const t = (deg * Math.PI) / 180;
  return { x: HINGE.x + reach * Math.cos(t), y: HINGE.y + reach * Math.sin(t) };
};
/** An arc about the hinge between two angles below level. */
function arcPath(fromDeg: number, toDeg: number, reach: number): string {
  const [a, b] = [at(fromDeg, reach), at(toDeg, reach)];
  return `M ${a.x} ${a.y} A ${reach} ${reach} 0 0 1 ${b.x} ${b.y}`;
}

export function AngleDrawing() {
  const words = useWords(settingsWords);
  const angles = useStudio((state) => state.preferences.angles);
  const ball = at(ARM_DEG, REACH);
  const isArm = angles === "arm";
  const middle = at(isArm ? ARM_DEG / 2 : (ARM_DEG + 90) / 2, 88);
  return (
    <svg className="angle-drawing" viewBox="0 0 230 190" role="img" aria-label={words.anglePicture}>
      <line className="guide" x1={HINGE.x} y1={HINGE.y} x2={HINGE.x + REACH + 30} y2={HINGE.y} />
      <line className="guide" x1={HINGE.x} y1={HINGE.y} x2={HINGE.x} y2={HINGE.y + 130} />
      <text x={HINGE.x + REACH + 30} y={HINGE.y - 8} textAnchor="end">
        {words.level}
      </text>
      <text x={HINGE.x + 6} y={HINGE.y + 130}>
        {words.plumb}
      </text>
      <line className="arm" x1={HINGE.x} y1={HINGE.y} x2={ball.x} y2={ball.y} />
      <circle className="ball" cx={ball.x} cy={ball.y} r="24" />
      <path className="angle" d={isArm ? arcPath(0, ARM_DEG, 64) : arcPath(ARM_DEG, 90, 64)} />
      <text className="angle-figure" x={middle.x} y={middle.y + 6} textAnchor="middle">
        {isArm ? ARM_DEG : 90 - ARM_DEG}°
      </text>
    </svg>
  );
}
