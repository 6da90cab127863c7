/**
 * The rig drawn to scale, and what touches what. Side view in the plane through the lap's axis and the hinge: x from the
 * lap's axis, the hinge at x = pivotToAxisMm, z up from the grinding surface, mm. The dop's axis runs from the piece's
 * centre towards the hinge, rising by the arm angle (falling when the arm is tipped up, angle below 0).
 */
import { cosDeg, sinDeg } from "../../geometry/plane.ts";
import type { Arm, Lap, SetUpDop } from "../../plan/document.ts";
import { hingeReach, type RigSetting, type TierPose } from "./rig.ts";

export type Point = readonly [x: number, z: number];
export type Segment = readonly [Point, Point];

/** What the piece is held by: the dop's end sits `seatMm` from the piece's centre. */
export interface Holder {
  readonly dop: SetUpDop;
  readonly seatMm: number;
}

export interface RigDrawing {
  readonly lapRadiusMm: number;
  readonly bandMm: readonly [number, number];
  readonly hinge: Point;
  /** Where the line square to the dop's axis through the hinge meets the axis; the hinge itself without offset. */
  readonly armEnd: Point;
  readonly centre: Point;
  readonly radiusMm: number;
  /** Foot of the facet on the lap. */
  readonly contact: Point;
  /** From the facet's end away from the pole to its pole-side end, on the surface. */
  readonly facet: Segment;
  readonly dop: readonly Point[];
  readonly chuck: readonly Point[];
  /** Centre and arm end at first touch, when glass meets the lap; null when the arm can't stand so. */
  readonly atTouch: { readonly centre: Point; readonly armEnd: Point } | null;
}

/** A point `s` along the dop's axis from the centre and `below` under it. */
const along = (centre: Point, dipDeg: number, s: number, below: number): Point => [
  centre[0] + s * cosDeg(dipDeg) + below * sinDeg(dipDeg),
  centre[1] + s * sinDeg(dipDeg) - below * cosDeg(dipDeg),
];

const box = (centre: Point, dipDeg: number, from: number, to: number, radius: number): readonly Point[] => [
  along(centre, dipDeg, from, radius),
  along(centre, dipDeg, to, radius),
  along(centre, dipDeg, to, -radius),
  along(centre, dipDeg, from, -radius),
];

/** Where the dop ends on a ball: its rim meets the skin. A dop wider than the ball sits at the centre's plane. */
export const seatOnBall = (radiusMm: number, dopDiameterMm: number): number =>
  Math.sqrt(Math.max(0, radiusMm ** 2 - (dopDiameterMm / 2) ** 2));

/**
 * The rig in one tier.
 * @param facetMm extent of the facet from its foot, [away from the pole, towards the pole], mm
 * A dop without length runs to the arm's end, and then has no chuck.
 */
export function drawRig(
  arm: Arm,
  lap: Lap,
  pose: TierPose,
  setting: RigSetting,
  holder: Holder | null,
  facetMm: readonly [number, number],
): RigDrawing {
  const { armLengthMm: length, pivotHeightMm } = setting;
  const dip = pose.armAngleDeg;
  const offset = arm.hingeOffsetMm ?? 0;
  const hinge: Point = [arm.pivotToAxisMm, pivotHeightMm];
  const centreAt = (dipDeg: number, height: number): Point => [
    arm.pivotToAxisMm - hingeReach(length, dipDeg, offset),
    height,
  ];
  const centre = centreAt(dip, pose.planeMm);
  const seat = holder?.seatMm ?? 0;
  const dopEnd = holder?.dop.lengthMm === undefined ? length : Math.min(length, seat + holder.dop.lengthMm);
  const touchDip = setting.dipAtTouchDeg;
  const atTouch =
    touchDip === null
      ? null
      : {
          centre: centreAt(touchDip, pose.radiusMm),
          armEnd: along(centreAt(touchDip, pose.radiusMm), touchDip, length, 0),
        };
  const chuckDiameter = holder?.dop.chuckDiameterMm;
  return {
    lapRadiusMm: lap.diameterMm / 2,
    bandMm: lap.bandMm,
    hinge,
    armEnd: along(centre, dip, length, 0),
    centre,
    radiusMm: pose.radiusMm,
    contact: [centre[0], 0],
    facet: [
      [centre[0] - facetMm[0], 0],
      [centre[0] - facetMm[1], 0],
    ],
    dop: holder ? box(centre, dip, seat, dopEnd, holder.dop.diameterMm / 2) : [],
    chuck: chuckDiameter && dopEnd < length ? box(centre, dip, dopEnd, length, chuckDiameter / 2) : [],
    atTouch,
  };
}

/** A piece held by hand: the dop lies against the face of a block that stands on the lap. Side view, x from the facet's foot. */
export interface GuideDrawing {
  readonly centre: Point;
  readonly radiusMm: number;
  /** As in `RigDrawing`. */
  readonly facet: Segment;
  readonly dop: readonly Point[];
  /** The block's section; empty where the dop lies so low that none fits under it. */
  readonly block: readonly Point[];
}

/** Room between the piece and the block, the block's thickness at the top, and the least height of its face, mm. Ours. */
const GUIDE = { clearMm: 3, topMm: 10, leastMm: 2 } as const;
/** Of the piece's diameter: a dop that the plan says nothing of. */
const USUAL_DOP = { across: 0.45, long: 1.2 } as const;

/** The other way for a tier that the arm can't reach. The facet's extents as in `drawRig`. */
export function drawGuide(
  pose: TierPose,
  holder: Holder | null,
  facetMm: readonly [number, number],
): GuideDrawing {
  const { armAngleDeg: dip, planeMm, radiusMm } = pose;
  const centre: Point = [0, planeMm];
  const half = (holder?.dop.diameterMm ?? 2 * radiusMm * USUAL_DOP.across) / 2;
  const seat = holder?.seatMm ?? seatOnBall(radiusMm, 2 * half);
  const end = seat + (holder?.dop.lengthMm ?? 2 * radiusMm * USUAL_DOP.long);
  // The block's face lies along the dop's lower side, from just above the piece to the dop's end.
  const low = along(centre, dip, radiusMm + GUIDE.clearMm, half);
  const high = along(centre, dip, end, half);
  const foot = Math.max(low[0], radiusMm + GUIDE.clearMm);
  const back = Math.max(high[0], foot) + GUIDE.topMm;
  const fits = Math.min(low[1], high[1]) >= GUIDE.leastMm;
  return {
    centre,
    radiusMm,
    facet: [
      [-facetMm[0], 0],
      [-facetMm[1], 0],
    ],
    dop: box(centre, dip, seat, end, half),
    block: fits ? [low, high, [back, high[1]], [back, 0], [foot, 0], [foot, low[1]]] : [],
  };
}

/** Lowest height of a segment over the lap's disc, mm; null when no part of it is over the lap. */
export function lowestOverLap(lapRadiusMm: number, [p, q]: Segment): number | null {
  const dx = q[0] - p[0];
  const at = (x: number) => (x - p[0]) / dx;
  const crossings = dx === 0 ? [] : [at(-lapRadiusMm), at(lapRadiusMm)].filter((t) => t > 0 && t < 1);
  const heights = [0, ...crossings, 1].flatMap((t) => {
    const x = p[0] + t * dx;
    return Math.abs(x) <= lapRadiusMm * (1 + Number.EPSILON) ? [p[1] + t * (q[1] - p[1])] : [];
  });
  return heights.length ? Math.min(...heights) : null;
}

export type Part = "arm" | "chuck" | "dop";
export interface Clearance {
  readonly part: Part;
  /** Lowest height of the part over the lap; below 0 it collides. */
  readonly mm: number;
}

/** Clearance over the lap of what carries the piece, for the parts that are over the lap at all. */
export function clearances(drawing: RigDrawing): readonly Clearance[] {
  const lowest = (outline: readonly Point[]): number | null => {
    const sides = outline.map((p, i): Segment => [p, outline[(i + 1) % outline.length]]);
    const heights = sides.flatMap((side) => lowestOverLap(drawing.lapRadiusMm, side) ?? []);
    return heights.length ? Math.min(...heights) : null;
  };
  // The arm's own thickness is not known: its line between holder and hinge stands for it.
  const parts: readonly (readonly [Part, number | null])[] = [
    ["dop", lowest(drawing.dop)],
    ["chuck", lowest(drawing.chuck)],
    ["arm", lowest([drawing.armEnd, drawing.hinge])],
  ];
  return parts.flatMap(([part, mm]) => (mm === null ? [] : [{ part, mm }]));
}

/** Where a ruler can touch the rig, so that it can be set without a point in the air or in glass. */
export interface RulerPoints {
  /** From the hinge's pin to the skin on the piece's far side, along the dop's axis: arm length + radius. */
  readonly hingeToFarSkinMm: number;
  /** From the grinding surface to the top of the hinge's pin, less half the pin: the pivot height itself. */
  readonly surfaceToHingeMm: number;
}

export const rulerPoints = (pose: TierPose, setting: RigSetting): RulerPoints => ({
  hingeToFarSkinMm: setting.armLengthMm + pose.radiusMm,
  surfaceToHingeMm: setting.pivotHeightMm,
});
