/** Where the strip lies in its box, and where a given azimuth stands on it. Pixels. */
import type { Box } from "../drag/use-box.ts";
import { LONGEST_ASPECT, STRIP_ASPECT, type Strip, stripOf, stripX } from "./projection.ts";
import type { Window } from "./skin-drawing.ts";
import { shiftsToShow } from "./strip-path.ts";

/** Free at both sides: a strip that ran to the page's edge would seem to go on beyond it. */
const SIDE_PX = 16;
const TOP_PX = 10;
const WHEEL_PX = 38;
const LEAST_TURN_PX = 60;
/** The strip is drawn past both borders by this part of a turn, so that the facet across the seam is seen whole. */
const OVERLAP = 0.035;

export interface SkinLayout {
  readonly strip: Strip;
  readonly window: Window;
  /** Where the strip begins in the picture. */
  readonly x: number;
  readonly y: number;
}

/** As large as the box allows. @param left azimuth at the left border, radians */
export function layOut({ width, height }: Box, left: number): SkinLayout {
  const byWidth = (width - 2 * SIDE_PX) / (1 + 2 * OVERLAP);
  const room = height - TOP_PX - WHEEL_PX;
  const aspect = Math.min(STRIP_ASPECT, Math.max(LONGEST_ASPECT, room / byWidth));
  const turn = Math.max(LEAST_TURN_PX, Math.min(byWidth, room / aspect));
  const strip = stripOf(turn, left, aspect);
  const past = OVERLAP * turn;
  const y = TOP_PX + Math.max(0, (height - TOP_PX - WHEEL_PX - strip.height) / 2);
  return { strip, window: { from: -past, to: turn + past }, x: (width - turn) / 2, y };
}

/** Places of a single azimuth within the window, for marks that stand on it. */
export const placesOf = ({ strip, window }: SkinLayout, azimuth: number): number[] => {
  const x = stripX(strip, azimuth);
  return shiftsToShow(strip, [[x, 0]], window.from, window.to).map((turn) => x + turn * strip.width);
};
