/** Where the knobs of the tiers stand outside the rim: at their arm angle, farther out where another stands already. */
import type { Tier } from "../../../core/plan/document.ts";
import { type ProfileFrame, type SectionPoint, tierDirection, toScreen } from "./profile-geometry.ts";

export const KNOB_PX = 13;
/** From the rim to the middle of the innermost knobs, and from one row to the next. */
const FIRST_ROW_PX = 54;
const FIRST_ROW_SMALL_PX = 15;
const ROW_PX = 2 * KNOB_PX + 4;
/** Room of the chosen tier's angle beside its knob. */
const ANGLE_PX = { width: 62, height: 24 };

export interface Knob {
  readonly tierId: string;
  readonly at: SectionPoint;
  /** Its point of the rim. */
  readonly rim: SectionPoint;
}

/**
 * One knob a tier, in cutting order; none covers another, and none leaves the picture above or below: where there is no room
 * farther out (a third tier at a pole) it stands beside. @param isSmall no degrees stand between rim and knobs
 */
export function placeKnobs(tiers: readonly Tier[], frame: ProfileFrame, isSmall: boolean): Knob[] {
  const firstRow = isSmall ? FIRST_ROW_SMALL_PX : FIRST_ROW_PX;
  const placed: Knob[] = [];
  for (const tier of tiers) {
    const [r, z] = tierDirection(tier.side, tier.armAngleDeg);
    const out = (row: number): SectionPoint => {
      const reach = 1 + (firstRow + row * ROW_PX) / frame.radius;
      return toScreen(frame, [r * reach, z * reach]);
    };
    const isFree = ([x, y]: SectionPoint) =>
      placed.every(({ at }) => Math.hypot(at[0] - x, at[1] - y) >= 2 * KNOB_PX + 2);
    const isInside = ([, y]: SectionPoint) => y >= KNOB_PX && y <= 2 * frame.cy - KNOB_PX;
    const [x0, y0] = out(0);
    const farther = tiers.map((_, row) => out(row)).filter((at, row) => row === 0 || isInside(at));
    const beside = tiers.map((_, column): SectionPoint => [x0 + (column + 1) * ROW_PX, y0]);
    const at = [...farther, ...beside].find(isFree) ?? [x0, y0];
    placed.push({ tierId: tier.id, at, rim: toScreen(frame, [r, z]) });
  }
  return placed;
}

/** On which side of its knob a tier's angle stands clear of all other knobs and inside the picture; to the right where neither is. */
export function angleSide(knob: Knob, knobs: readonly Knob[]): "left" | "right" {
  const others = knobs.filter(({ tierId }) => tierId !== knob.tierId);
  const isClear = (towards: 1 | -1) => {
    const from = knob.at[0] + towards * KNOB_PX;
    const to = from + towards * ANGLE_PX.width;
    return (
      to >= 0 &&
      others.every(
        ({ at: [x, y] }) =>
          Math.abs(y - knob.at[1]) >= KNOB_PX + ANGLE_PX.height / 2 ||
          x + KNOB_PX <= Math.min(from, to) ||
          x - KNOB_PX >= Math.max(from, to),
      )
    );
  };
  return isClear(1) || !isClear(-1) ? "right" : "left";
}

/** Whether a knob's stem runs through the place of a number this wide about `at`. */
export function isCrossed([x, y]: SectionPoint, knobs: readonly Knob[], clearPx: number): boolean {
  return knobs.some(({ at, rim }) => {
    const [dx, dy] = [at[0] - rim[0], at[1] - rim[1]];
    const t = ((x - rim[0]) * dx + (y - rim[1]) * dy) / (dx * dx + dy * dy || 1);
    const along = Math.min(1, Math.max(0, t));
    return Math.hypot(rim[0] + along * dx - x, rim[1] + along * dy - y) < clearPx;
  });
}
