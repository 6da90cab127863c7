/** A small drawing for each of the trade's words. Plain lines in the colours of the screen; figures are worked out, not traced. */
import type { ReactNode } from "react";
import { helpWords } from "../messages/help.ts";
import { useWords } from "../messages/words.tsx";
import { AngleDrawing } from "../settings/AngleDrawing.tsx";
import "../settings/settings.css";
import "./help.css";

export type TermName =
  | "tier"
  | "arm"
  | "stop"
  | "depth"
  | "meet"
  | "corner"
  | "skin"
  | "dop"
  | "mark"
  | "tolerance";
export const TERMS: readonly TermName[] = [
  "tier",
  "arm",
  "stop",
  "depth",
  "meet",
  "corner",
  "skin",
  "dop",
  "mark",
  "tolerance",
];

const R = 44;
const rad = (deg: number) => (deg * Math.PI) / 180;
const on = (deg: number, r = R) =>
  `${(r * Math.cos(rad(deg))).toFixed(1)} ${(-r * Math.sin(rad(deg))).toFixed(1)}`;

/** A flat across the circle between two angles, as a chord. */
const chord = (from: number, to: number) => `M${on(from)}L${on(to)}`;
const arc = (from: number, to: number, r = R) =>
  `M${on(from, r)}A${r} ${r} 0 ${to - from > 180 ? 1 : 0} 0 ${on(to, r)}`;

/** A belt of facets seen from the side: equal steps of azimuth foreshorten towards the rim. */
function Tier() {
  const edges = [-75, -45, -15, 15, 45, 75].map((azimuth) => R * 0.97 * Math.sin(rad(azimuth)));
  return (
    <>
      <circle className="drawing-skin" r={R} />
      <path className="facet" d={`M${-R * 0.97} -12H${R * 0.97}V12H${-R * 0.97}Z`} />
      {edges.map((x) => (
        <path key={x} className="stroke" d={`M${x.toFixed(1)} -12V12`} />
      ))}
    </>
  );
}

function Stop() {
  const notches = Array.from({ length: 24 }, (_, k) => k * 15);
  return (
    <>
      <circle className="outline" r={R - 6} />
      {notches.map((deg) => (
        <path
          key={deg}
          className={deg === 90 ? "mark" : "stroke"}
          d={`M${on(deg, R - 6)}L${on(deg, deg === 90 ? R - 20 : R)}`}
        />
      ))}
      <circle className="dot" r="3" />
    </>
  );
}

const Depth = () => (
  <>
    <path className="drawing-skin" d={`${arc(60, 120)}L${on(120)}Z`} />
    <path className="outline" d={`${arc(120, 420)}`} />
    <path className="stroke" d={chord(60, 120)} />
    <path className="guide" d={arc(60, 120)} />
    <path className="mark" d={`M0 ${-R}V${(-R * Math.cos(rad(30))).toFixed(1)}`} />
  </>
);

const square = (x: number, clip: string) => <path className="facet" d={`M${x} -14${clip}Z`} />;
const Meet = () => (
  <>
    {square(-48, "h13v28h-13")}
    {square(-35, "h13v28h-13")}
    <path className="firm" d="M-35 -14V14" />
    <circle className="facet" cx="-7" r="9" />
    <circle className="facet" cx="11" r="9" />
    <circle className="touch" cx="2" r="3" />
    <circle className="facet" cx="31" r="7" />
    <circle className="facet" cx="50" r="7" />
    <path className="guide" d="M38 0H43" />
  </>
);

const Corner = () => (
  <>
    <path className="stroke" d="M-26 0L-44 -18M-26 0L-8 -18M-26 0V24" />
    <circle className="dot" cx="-26" r="4" />
    <path className="stroke" d="M22 -3L6 -18M26 -3L44 -18M22 -3H26M24 3V24" />
    <circle className="dot" cx="24" cy="-3" r="3" />
    <path className="mark" d="M24 -3V6" />
  </>
);

/** A ball cut flat in two places, the flats' old round dashed; what is left of the round is drawn heavy. */
const Skin = () => (
  <>
    <path className="drawing-skin" d={`${arc(70, 110)}L${on(160)}A${R} ${R} 0 1 0 ${on(20)}L${on(70)}Z`} />
    <path className="guide" d={arc(20, 70)} />
    <path className="guide" d={arc(110, 160)} />
    <path className="stroke" d={chord(20, 70)} />
    <path className="stroke" d={chord(110, 160)} />
    <path className="heavy" d={arc(70, 110)} />
    <path className="heavy" d={arc(160, 380)} />
  </>
);

const Dop = () => (
  <>
    <circle className="drawing-skin" cy="-14" r="28" />
    <path className="solid" d="M-10 12H10V18H5V48H-5V18H-10Z" />
  </>
);

/** A stroke along a meridian, across the waist. */
const Mark = () => (
  <>
    <circle className="drawing-skin" r={R} />
    <path className="guide" d={`M${-R} 0H${R}`} />
    <path className="mark" d="M12 -18Q19 0 12 18" />
  </>
);

const Tolerance = () => (
  <>
    <path className="stroke" d="M-46 -16L-2 0L-46 16" />
    <path className="stroke" d="M46 -16L2 0L46 16" />
    <path className="mark" d="M-2 -26V-8M2 -26V-8" />
  </>
);

const DRAWINGS: Readonly<Record<Exclude<TermName, "arm">, () => ReactNode>> = {
  tier: Tier,
  stop: Stop,
  depth: Depth,
  meet: Meet,
  corner: Corner,
  skin: Skin,
  dop: Dop,
  mark: Mark,
  tolerance: Tolerance,
};

export function TermDrawing({ term }: { term: TermName }) {
  const words = useWords(helpWords);
  if (term === "arm") return <AngleDrawing />;
  const Drawing = DRAWINGS[term];
  return (
    <svg className="term-drawing" viewBox="-60 -52 120 104" role="img" aria-label={words.pictures[term]}>
      <Drawing />
    </svg>
  );
}
