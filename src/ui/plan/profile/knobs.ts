/**
 * Where the knobs of the tiers stand outside the rim: at their arm angle, moved along the rim as little as keeps them clear
 * of one another, in a second row farther out only where one row can't hold them. Their order along the rim is that of the
 * angles, so that in one row no stem crosses another.
 */
import type { Tier } from "../../../core/plan/document.ts";
import { type ProfileFrame, type SectionPoint, tierDirection, toScreen } from "./profile-geometry.ts";

export const KNOB_PX = 13;
/** The ring round a knob that is chosen, pointed at or in focus. */
export const RING_PX = KNOB_PX + 4;
/** From the rim to the middle of the innermost knobs, and from one row to the next. */
const FIRST_ROW_PX = { large: 54, small: 15 };
const ROW_PX = 2 * KNOB_PX + 4;
/** From one knob to the next along a row: ring beside ring, or where it is crowded knob beside knob. */
const APART_PX = 2 * RING_PX;
const LEAST_APART_PX = 2 * KNOB_PX + 2;
/** Between a knob and the border of the picture. */
const BORDER_PX = 1;
/** Half a turn of the rim holds no more: then rows are as full as they come. */
const MOST_ROWS = 6;

export interface Knob {
  readonly tierId: string;
  readonly at: SectionPoint;
  /** Its point of the rim. */
  readonly rim: SectionPoint;
  /** Where its stem bends: straight out from the rim, as far as the knob. */
  readonly bend: SectionPoint;
}

/** One knob a tier, in cutting order; none covers another, and none leaves the picture above or below. */
export function placeKnobs(tiers: readonly Tier[], frame: ProfileFrame, isSmall: boolean): Knob[] {
  const first = isSmall ? FIRST_ROW_PX.small : FIRST_ROW_PX.large;
  const own = tiers.map(
    ({ side, armAngleDeg }) => ((side === "front" ? 1 : -1) * armAngleDeg * Math.PI) / 180,
  );
  const inOrder = tiers.map((_, i) => i).sort((a, b) => own[a] - own[b] || b - a);
  const rowRadius = (row: number) => frame.radius + first + row * ROW_PX;
  const inRows = (count: number, apartPx: number): (readonly number[])[] | null => {
    const rows: (readonly number[])[] = [];
    for (let row = 0; row < count; row++) {
      const members = inOrder.filter((_, place) => place % count === row);
      const spread = spreadAlong(
        members.map((i) => own[i]),
        2 * Math.asin(Math.min(1, apartPx / (2 * rowRadius(row)))),
        highest(rowRadius(row), frame),
      );
      if (!spread) return null;
      rows.push(spread);
    }
    return rows;
  };
  let rows: (readonly number[])[] | null = inRows(1, APART_PX);
  for (let count = 1; !rows && count <= MOST_ROWS; count++) rows = inRows(count, LEAST_APART_PX);
  const placed = rows ?? [inOrder.map((i) => own[i])];
  return tiers.map((tier, i) => {
    const place = inOrder.indexOf(i);
    const row = place % placed.length;
    const reach = rowRadius(row) / frame.radius;
    const elevation = placed[row][Math.floor(place / placed.length)];
    const [r, z] = tierDirection(tier.side, tier.armAngleDeg);
    return {
      tierId: tier.id,
      at: toScreen(frame, [reach * Math.cos(elevation), reach * Math.sin(elevation)]),
      rim: toScreen(frame, [r, z]),
      bend: toScreen(frame, [r * reach, z * reach]),
    };
  });
}

/** How far up or down a knob may stand on a row without leaving the picture, radians from the equator. */
function highest(rowRadius: number, { cy }: ProfileFrame): number {
  return Math.asin(Math.min(1, Math.max(0, (cy - KNOB_PX - BORDER_PX) / rowRadius)));
}

/**
 * Values in ascending order, moved as little as possible (least squares) so that each is at least `apart` above the one
 * before and none is beyond `most` up or down; null where they don't fit. Pool adjacent violators: Ayer et al. 1955.
 */
export function spreadAlong(
  wanted: readonly number[],
  apart: number,
  most: number,
): readonly number[] | null {
  const room = 2 * most - (wanted.length - 1) * apart;
  if (room < 0) return null;
  const blocks: { sum: number; count: number }[] = [];
  wanted.forEach((value, i) => {
    let block = { sum: value - i * apart, count: 1 };
    for (
      let below = blocks.at(-1);
      below && below.sum / below.count > block.sum / block.count;
      below = blocks.at(-1)
    ) {
      blocks.pop();
      block = { sum: block.sum + below.sum, count: block.count + below.count };
    }
    blocks.push(block);
  });
  const pooled = blocks.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
  return pooled.map((value, i) => Math.min(room - most, Math.max(-most, value)) + i * apart);
}

/** Points along a knob's stem, from the rim to the knob: a quadratic Bezier curve that leaves the rim straight outward. */
export function stemPoints({ rim, bend, at }: Knob, pieces = 8): SectionPoint[] {
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const t = i / pieces;
    const [a, b, c] = [(1 - t) ** 2, 2 * t * (1 - t), t * t];
    return [a * rim[0] + b * bend[0] + c * at[0], a * rim[1] + b * bend[1] + c * at[1]] as const;
  });
}
