/** The stops of the wheel along the strip's lower edge; degrees where there is no wheel. */
import { memo } from "react";
import { useFormat } from "../../use-format.ts";
import { type Strip, stripX } from "./projection.ts";
import type { Window } from "./skin-drawing.ts";
import { shiftsToShow } from "./strip-path.ts";

/** Numbers stand at least this far apart. */
const NUMBER_EVERY_PX = 52;
const FREE_STEPS = 36;

/** The least divisor of `stops` at which numbered stops are far enough apart. */
function numberEvery(stops: number, widthPx: number): number {
  for (let every = 1; every < stops; every++) {
    if (stops % every === 0 && (widthPx / stops) * every >= NUMBER_EVERY_PX) return every;
  }
  return stops;
}

interface EdgeProps {
  readonly strip: Strip;
  readonly window: Window;
  readonly stops: number | null;
  /** Azimuth of stop 0, degrees. */
  readonly zeroDeg: number;
  /** Whether the numbers engraved there grow with the azimuth. */
  readonly isWith: boolean;
  /** What is written on stop 0. */
  readonly zeroLabel: string | undefined;
  /** Stops at which the chosen tier's facets stand. */
  readonly taken: ReadonlySet<number>;
}

export const WheelEdge = memo(function WheelEdge({
  strip,
  window,
  stops,
  zeroDeg,
  isWith,
  zeroLabel,
  taken,
}: EdgeProps) {
  const format = useFormat();
  const count = stops ?? FREE_STEPS;
  const every = numberEvery(count, strip.width);
  const y = strip.height;
  return (
    <g className="wheel-edge">
      {Array.from({ length: count }, (_, k) => k).map((k) => {
        const x = stripX(strip, ((zeroDeg + (k * 360) / count) * Math.PI) / 180);
        const engraved = isWith ? k : (count - k) % count;
        const isNumbered = engraved % every === 0;
        const isTaken = taken.has(k);
        return shiftsToShow(strip, [[x, y]], window.from, window.to).map((turn) => (
          <g key={`${k} ${turn}`} transform={`translate(${(x + turn * strip.width).toFixed(2)} ${y})`}>
            <line
              className={isTaken ? "wheel-stop wheel-taken" : "wheel-stop"}
              y1={3}
              y2={isTaken ? 13 : isNumbered ? 10 : 7}
            />
            {isNumbered ? (
              <text className="quiet" y={28}>
                {stops === null
                  ? format.degrees((engraved * 360) / count, 0)
                  : engraved === 0
                    ? zeroLabel || 0
                    : engraved}
              </text>
            ) : null}
          </g>
        ));
      })}
    </g>
  );
});
