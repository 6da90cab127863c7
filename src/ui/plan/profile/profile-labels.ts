/**
 * Where words stand in the profile, so that none lies on another, on a knob, on the glass or beyond the picture. Each asks for
 * a place, the most needed first; one that finds none stays away. Wishes of one key are the same words broken otherwise: the
 * first that finds a place stands. Pixels, y down.
 */
import type { Box } from "../drag/use-box.ts";
import { type Knob, RING_PX, stemPoints } from "./knobs.ts";
import type { ProfileFrame, SectionPoint } from "./profile-geometry.ts";

export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Label {
  readonly key: string;
  /** Its lines, and the middle of them all. */
  readonly lines: readonly string[];
  readonly at: SectionPoint;
  readonly rect: Rect;
}

/** What wants to be written, and where its middle may stand, best first. */
export interface Wish {
  readonly key: string;
  readonly lines: readonly string[];
  readonly fontPx: number;
  /** Given the size of the words. */
  readonly places: (width: number, height: number) => Iterable<SectionPoint>;
  /** Whether it must not lie on a stem either: most words are rimmed and may. */
  readonly offStems?: boolean;
}

/** A letter is no wider than this on average, over its height, in the bundled face and in the one that stands in for it. */
const LETTER = 0.62;
const LINE = 1.25;
/** Between words and anything else. */
const CLEAR_PX = 2;
/** Nearer to the rim than this, words would seem to belong to the glass. */
const OFF_GLASS_PX = 4;

export const widthOf = (lines: readonly string[], fontPx: number): number =>
  Math.max(...lines.map((line) => line.length)) * fontPx * LETTER;
export const heightOf = (lines: readonly string[], fontPx: number): number => lines.length * fontPx * LINE;

const rectAbout = ([x, y]: SectionPoint, width: number, height: number): Rect => ({
  left: x - width / 2,
  top: y - height / 2,
  right: x + width / 2,
  bottom: y + height / 2,
});

export const meetRects = (a: Rect, b: Rect): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a circle reaches into a rectangle. */
export const meetsCircle = (
  { left, top, right, bottom }: Rect,
  [x, y]: SectionPoint,
  radius: number,
): boolean =>
  Math.hypot(x - Math.min(right, Math.max(left, x)), y - Math.min(bottom, Math.max(top, y))) < radius;

/** Whether the round glass as it is drawn, right of its axis, reaches into a rectangle. */
export const meetsGlass = (rect: Rect, { cx, cy, radius }: ProfileFrame, clearPx = 0): boolean =>
  rect.right > cx && meetsCircle({ ...rect, left: Math.max(rect.left, cx) }, [cx, cy], radius + clearPx);

const holds = (rect: Rect, [x, y]: SectionPoint): boolean =>
  x > rect.left && x < rect.right && y > rect.top && y < rect.bottom;

export interface Ground {
  readonly box: Box;
  readonly frame: ProfileFrame;
  readonly knobs: readonly Knob[];
  /** What else is drawn there: the dop, the name of the picture. */
  readonly taken: readonly Rect[];
}

/** A place for each wish that finds one. */
export function placeLabels(wishes: readonly Wish[], ground: Ground): Label[] {
  const { box, frame, knobs } = ground;
  const stems = knobs.flatMap((knob) => stemPoints(knob));
  const labels: Label[] = [];
  const isFree = (rect: Rect, offStems: boolean): boolean =>
    rect.left >= 0 &&
    rect.top >= 0 &&
    rect.right <= box.width &&
    rect.bottom <= box.height &&
    !meetsGlass(rect, frame, OFF_GLASS_PX) &&
    !knobs.some(({ at }) => meetsCircle(rect, at, RING_PX + CLEAR_PX)) &&
    !ground.taken.some((taken) => meetRects(rect, taken)) &&
    !labels.some((label) => meetRects(rect, label.rect)) &&
    !(offStems && stems.some((point) => holds(rect, point)));
  for (const { key, lines, fontPx, places, offStems = false } of wishes) {
    if (labels.some((label) => label.key === key)) continue;
    const [width, height] = [widthOf(lines, fontPx), heightOf(lines, fontPx)];
    for (const at of places(width, height)) {
      const rect = rectAbout(at, width, height);
      if (!isFree(rect, offStems)) continue;
      labels.push({ key, lines, at, rect });
      break;
    }
  }
  return labels;
}

/** Steps of the search for a place. */
const STEP_PX = 6;
const DIRECTIONS = 16;

const toSide = (width: number): number => RING_PX + CLEAR_PX + 3 + width / 2;
export const rightOf = ([x, y]: SectionPoint, width: number): SectionPoint => [x + toSide(width), y];

/**
 * Places about a knob, its right side first, then its left, then round and round farther out, as far as words still seem to
 * belong to it.
 */
export function* besideKnob([x, y]: SectionPoint, width: number, height: number, farthest: number) {
  yield rightOf([x, y], width);
  yield [x - toSide(width), y] as const;
  for (let out = 0; out <= farthest; out += STEP_PX)
    for (let turn = 0; turn < DIRECTIONS; turn++) {
      // right first, then a little above and below it, and so on round to the left
      const angle = ((turn % 2 ? 1 : -1) * Math.ceil(turn / 2) * 2 * Math.PI) / DIRECTIONS;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      // the box that leaves the ring just clear in this direction
      const reach = RING_PX + CLEAR_PX + 1 + out;
      yield [x + dx * (reach + width / 2), y + dy * (reach + height / 2)] as const;
    }
}

/** Words broken into lines of at most so many letters; a longer word has a line of its own. */
export function brokenInto(words: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
