/** What stands still in the profile whatever is chosen: the dop, the rim's degrees, and where their words want to stand. */
import type { Plan } from "../../../core/plan/document.ts";
import {
  dopOutline,
  type ProfileFrame,
  type RimTick,
  rimTicks,
  type SectionPoint,
  toScreen,
} from "./profile-geometry.ts";
import type { Rect, Wish } from "./profile-labels.ts";

/** Length of a dop that doesn't say how long it is: as far as the picture shows it, over the radius. */
const DOP_SHOWN = 0.22;
/** Degrees stand this far outside the rim, the knobs of a large picture beyond them. */
const DEGREES_OUT_PX = 25;
/** From this radius on there is a tick for every five degrees and a number for every ten; a small rim has fewer. */
const FINE_FROM_PX = 140;
/** A smaller rim is not numbered, and its poles go without names. */
const NUMBERED_FROM_PX = 90;
const NAME_FONT_PX = 15;

const GROUND = "ground ";
export const isOfGround = (key: string): boolean => key.startsWith(GROUND);

export const ticksOf = ({ radius }: ProfileFrame): RimTick[] =>
  radius >= FINE_FROM_PX ? rimTicks(5, 10) : rimTicks(10, 30);

/** Corners of the dop as it is drawn; null where none is planned. */
export function dopCorners(frame: ProfileFrame, { piece: { dop, diameterMm } }: Plan): SectionPoint[] | null {
  if (!dop) return null;
  const length =
    dop.lengthMm === undefined ? DOP_SHOWN : Math.min(DOP_SHOWN, (2 * dop.lengthMm) / diameterMm);
  return dopOutline(dop.side, (2 * dop.diameterMm) / diameterMm, length).points.map((p) =>
    toScreen(frame, p),
  );
}

export function dopRect(frame: ProfileFrame, plan: Plan): Rect | null {
  const corners = dopCorners(frame, plan);
  if (!corners) return null;
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Names of the poles left of the axis, the dop's beside it, degrees outside the rim. */
export function groundWishes(
  frame: ProfileFrame,
  plan: Plan,
  words: { readonly front: string; readonly back: string; readonly dop: string },
  inDegrees: (degrees: number) => string,
): Wish[] {
  const { cx, cy, radius } = frame;
  const wishes: Wish[] = [];
  const wish = (name: string, said: string, places: Wish["places"], offStems = false) =>
    wishes.push({ key: `${GROUND}${name}`, lines: [said], fontPx: NAME_FONT_PX, places, offStems });
  const dop = dopRect(frame, plan);
  if (dop) {
    const outer = plan.piece.dop?.side === "front" ? dop.top : dop.bottom;
    wish("dop", words.dop, (width, height) => [
      [dop.right + 7 + width / 2, outer + (plan.piece.dop?.side === "front" ? height : -height) / 2],
      [cx - 9 - width / 2, outer],
      [cx - 9 - width / 2, (dop.top + dop.bottom) / 2],
    ]);
  }
  if (radius < NUMBERED_FROM_PX) return wishes;
  wish("front", words.front, (width) => [[cx - 12 - width / 2, cy - radius]]);
  wish("back", words.back, (width) => [[cx - 12 - width / 2, cy + radius]]);
  const far = 1 + DEGREES_OUT_PX / radius;
  for (const { degrees, side, at, isNumbered } of ticksOf(frame))
    if (isNumbered && degrees > 0 && degrees < 90)
      wish(
        `${side}${degrees}`,
        inDegrees(degrees),
        () => [toScreen(frame, [at[0] * far, at[1] * far])],
        true,
      );
  return wishes;
}
