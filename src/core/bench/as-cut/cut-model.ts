/** What calipers would read on a finished tier cut at a given angle and depth, later tiers uncut. mm and degrees. */
import { gapBetween } from "../../geometry/circles.ts";
import { cosDeg, facetFrame, type Plane, sinDeg } from "../../geometry/plane.ts";
import { extentOf, heightOf, type Slice, sliceFacet, widthOf } from "../../geometry/slice.ts";
import type { Side } from "../../plan/document.ts";
import { hingeRise } from "../rig/rig.ts";
import { overlaps } from "../stages/half-cut.ts";
import type { Alike } from "./alike.ts";
import { acrossFrom } from "./caliper.ts";

/** All that a tier's measurements depend on besides its angle and depth. */
export interface CutTier {
  readonly radiusMm: number;
  readonly side: Side;
  readonly azimuthsDeg: readonly number[];
  /** Planes of earlier tiers as they stand, unit sphere. */
  readonly earlier: readonly Plane[];
  /** Which of its facets stand alike, so that means need one of each kind only. */
  readonly alike: readonly Alike[];
}

export const LENGTHS = [
  "widthMm",
  "heightMm",
  "gapMm",
  "edgeMm",
  "acrossMm",
  "flatToSkinMm",
  "caliperMm",
] as const;
export type LengthName = (typeof LENGTHS)[number];

/** The tier at one angle and depth: planes and, on demand, the slices of its facets. */
export interface Cut {
  readonly tier: CutTier;
  readonly armAngleDeg: number;
  readonly depthMm: number;
  readonly planes: readonly Plane[];
  /** Earlier tiers and this one. */
  readonly body: readonly Plane[];
  readonly sliceOf: (k: number) => Slice;
}

/** @param depthsMm one depth for all facets, or one each */
export function cutTier(tier: CutTier, armAngleDeg: number, depthsMm: number | readonly number[]): Cut {
  const at = (k: number) => (typeof depthsMm === "number" ? depthsMm : depthsMm[k]);
  const own = tier.azimuthsDeg.map(
    (azimuth, k): Plane => ({
      n: facetFrame(armAngleDeg, azimuth, tier.side).n,
      h: 1 - at(k) / tier.radiusMm,
    }),
  );
  const all = [...tier.earlier, ...own];
  // Most of the time goes into slices, and a gap or a flat-to-skin needs none: each is made when first asked for.
  const slices: Slice[] = [];
  const sliceOf = (k: number) => {
    slices[k] ??= sliceFacet(tier.earlier.length + k, all, (j) => !overlaps(own[k], all[j]));
    return slices[k];
  };
  return { tier, armAngleDeg, depthMm: at(0), planes: own, body: all, sliceOf };
}

/** Distance from the axis to the pole-side end of facet k, unit sphere; below 0 when it reaches past the pole. */
function poleEnd({ tier, armAngleDeg, planes, sliceOf }: Cut, k: number): number {
  const [, , yMin, yMax] = extentOf(sliceOf(k));
  const poleward = tier.side === "front" ? yMax : -yMin;
  return planes[k].h * cosDeg(armAngleDeg) - poleward * sinDeg(armAngleDeg);
}

/** Calipers over the pole from facet k to the one opposite; for an odd count to the first one past opposite. */
function across(cut: Cut, k: number): number {
  const { azimuthsDeg } = cut.tier;
  const other = (k + Math.floor(azimuthsDeg.length / 2)) % azimuthsDeg.length;
  const [a, b] = [poleEnd(cut, k), poleEnd(cut, other)];
  return Math.sqrt(Math.max(0, a * a + b * b - 2 * a * b * cosDeg(azimuthsDeg[other] - azimuthsDeg[k])));
}

function sharedEdge({ tier, sliceOf }: Cut, a: number, b: number): number {
  const slice = sliceOf(a);
  const label = tier.earlier.length + b;
  return slice.labels.reduce((sum, own, i) => {
    if (own !== label) return sum;
    const next = (i + 1) % slice.xs.length;
    return sum + Math.hypot(slice.xs[next] - slice.xs[i], slice.ys[next] - slice.ys[i]);
  }, 0);
}

/** The next neighbour of facet k that the tier pairs it with; null for a facet alone. */
const nextOf = (count: number, k: number): number | null => (count < 2 ? null : (k + 1) % count);

/** One facet's reading in mm; null when this length does not exist on it (a facet alone has no gap). */
export function lengthAt(cut: Cut, name: LengthName, k: number): number | null {
  const { radiusMm, azimuthsDeg } = cut.tier;
  const next = nextOf(azimuthsDeg.length, k);
  switch (name) {
    case "widthMm":
      return widthOf(cut.sliceOf(k)) * radiusMm;
    case "heightMm":
      return heightOf(cut.sliceOf(k)) * radiusMm;
    case "flatToSkinMm":
      return (1 + cut.planes[k].h) * radiusMm;
    case "caliperMm": {
      const far = acrossFrom(cut.body, cut.tier.earlier.length + k);
      return far && far.reach * radiusMm;
    }
    case "gapMm":
      return next === null ? null : gapBetween(cut.planes[k], cut.planes[next]) * radiusMm;
    case "edgeMm":
      return next === null ? null : sharedEdge(cut, k, next) * radiusMm;
    case "acrossMm":
      return next === null ? null : across(cut, k) * radiusMm;
  }
}

/** Mean reading over the tier, mm; null when the length does not exist on it. */
export function lengthOf(cut: Cut, name: LengthName): number | null {
  const { azimuthsDeg, alike } = cut.tier;
  const isPaired = name === "gapMm" || name === "edgeMm";
  // Two facets are one pair, not two: the second's next neighbour is the first again.
  if (isPaired && azimuthsDeg.length === 2) return lengthAt(cut, name, 0);
  let [sum, count] = [0, 0];
  for (const own of alike) {
    const value = lengthAt(cut, name, own.k);
    if (value === null) return null;
    sum += value * own.count;
    count += own.count;
  }
  return sum / count;
}

/** Pivot height above the surface that goes with the finished facet. */
export const pivotHeightOf = (cut: Cut, armLengthMm: number, hingeOffsetMm: number): number =>
  cut.tier.radiusMm - cut.depthMm + hingeRise(armLengthMm, cut.armAngleDeg, hingeOffsetMm);
