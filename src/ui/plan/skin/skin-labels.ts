/**
 * Which numbers stand in the facets of the strip: none that would lie on a name, on the width of a gap or a miss, or on a
 * number that matters more. Names come first, then what doesn't meet, then tiers, then stops. Pixels of the strip.
 */
import { heightOf, meetRects, type Rect, widthOf } from "../profile/profile-labels.ts";
import type { Strip } from "./projection.ts";
import type { DrawnFacet, MissMark, SkinDrawing } from "./skin-drawing.ts";
import type { StripPoint } from "./strip-path.ts";

const FONT_PX = 15;
/** Where the width of a gap begins, from the gap's mark. */
export const GAP_NUMBER_AT: StripPoint = [9, -8];
/** Numbers of misses stand only where the strip is long enough that they do not cover each other. */
export const MISSES_FIT_PX = 900;
/** A stop's number wants this much of its facet. */
const STOP_FITS_PX = 30;
/** A tail is never shorter than this, so that it is seen, and as far as it goes on this strip otherwise. */
const LEAST_TAIL_PX = 12;

/** Where a miss's tail ends, and where the base line of its number begins, from the corner. */
export function tailOf({ at, tail }: MissMark): { readonly end: StripPoint; readonly number: StripPoint } {
  const [dx, dy] = [tail[0] - at[0], tail[1] - at[1]];
  const length = Math.hypot(dx, dy);
  const grow = length === 0 ? 0 : Math.max(1, LEAST_TAIL_PX / length);
  const [x, y] = [dx * grow, dy * grow];
  return { end: [x, y], number: [x + 4, y + 5] };
}

/** The box of a line of words that begins (or has its middle) at a place of its base line. */
export function boxOf(words: string, [x, y]: StripPoint, anchor: "start" | "middle" = "start"): Rect {
  const [width, height] = [widthOf([words], FONT_PX), heightOf([words], FONT_PX)];
  const left = anchor === "start" ? x : x - width / 2;
  const top = anchor === "start" ? y - height * 0.75 : y - height / 2;
  return { left, top, right: left + width, bottom: top + height };
}

/** Whether two boxes meet on a strip that goes on past its seam. */
const meetAround = (a: Rect, b: Rect, widthPx: number): boolean =>
  [-widthPx, 0, widthPx].some((turn) => meetRects(a, { ...b, left: b.left + turn, right: b.right + turn }));

export interface SkinNumbers {
  /** Facets whose stop is told, by key. */
  readonly stops: ReadonlySet<string>;
  /** Places of tiers in cutting order whose number is told. */
  readonly tiers: ReadonlySet<number>;
}

export function numbersThatFit(
  strip: Strip,
  { facets, gaps, misses }: SkinDrawing,
  names: readonly Rect[],
  gapWords: (mm: number) => string,
  missWords: (mm: number) => string,
): SkinNumbers {
  const taken = [...names];
  const onStrip = ([x, y]: StripPoint): StripPoint => [x - strip.width * Math.floor(x / strip.width), y];
  for (const { at, mm, isNamed } of gaps)
    if (isNamed) {
      const [x, y] = onStrip(at);
      taken.push(boxOf(gapWords(mm), [x + GAP_NUMBER_AT[0], y + GAP_NUMBER_AT[1]]));
    }
  if (strip.width > MISSES_FIT_PX)
    for (const miss of misses) {
      const [[x, y], [dx, dy]] = [onStrip(miss.at), tailOf(miss).number];
      taken.push(boxOf(missWords(miss.mm), [x + dx, y + dy]));
    }
  /** Takes the place for a number in the middle of a facet, unless it is taken. */
  const take = (words: string, facet: DrawnFacet): boolean => {
    const box = boxOf(words, onStrip(facet.middle), "middle");
    if (taken.some((rect) => meetAround(rect, box, strip.width))) return false;
    taken.push(box);
    return true;
  };
  const tiers = new Set<number>();
  const stops = new Set<string>();
  const asked = new Set<number>();
  for (const facet of facets) {
    if (asked.has(facet.tierIndex)) continue;
    asked.add(facet.tierIndex);
    if (take(String(facet.tierIndex + 1), facet)) tiers.add(facet.tierIndex);
  }
  for (const facet of facets)
    if (facet.stop !== null && facet.widthPx > STOP_FITS_PX && take(facet.stop, facet)) stops.add(facet.key);
  return { stops, tiers };
}
