/**
 * `width`: the least depth at which the widest facet of the tier is as wide as asked.
 *
 * Facets at all depths stack up to a convex body in (h, across, meridian), so the width of a facet is concave in h.
 * An uncut circle is the widest a facet can be at its depth: where it is left whole across, the answer is closed.
 */
import { boundaryOf, peakOf } from "../../geometry/search.ts";
import { sliceFacet, widthOf } from "../../geometry/slice.ts";
import { EPSILON } from "../../geometry/tolerance.ts";
import { type Answer, planesAt, type TierContext } from "./tier-context.ts";

/** Depths tried when looking for one where the facet is there at all. */
const PROBES = 64;

type Width = (h: number) => number;

const widthOfFacet =
  (context: TierContext, k: number): Width =>
  (h) =>
    h >= 1 || h <= -1 ? 0 : widthOf(sliceFacet(context.earlier.length + k, planesAt(context, h)));

/** A distance at or below hMax at which the width is `enough`, or where it is greatest when it never is. */
function wideEnough(width: Width, enough: number, hMax: number): number {
  const step = (hMax + 1) / PROBES;
  let [best, widest] = [hMax, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < PROBES; i++) {
    const h = hMax - i * step;
    const found = width(h);
    if (found > widest) [best, widest] = [h, found];
    if (widest >= enough) return best;
  }
  return peakOf(width, Math.max(-1, best - step), Math.min(hMax, best + step));
}

/** Greatest h at which one facet reaches the width asked, or its peak when it never does. */
function reach(width: Width, asked: number, hWhole: number): { h: number; width: number } {
  if (width(hWhole) >= asked - EPSILON) return { h: hWhole, width: asked };
  const wide = wideEnough(width, asked, hWhole);
  if (width(wide) < asked) {
    // a facet that earlier tiers narrow can be at its widest before its whole circle would be so wide
    const widest = wideEnough(width, Number.POSITIVE_INFINITY, 1);
    return { h: widest, width: width(widest) };
  }
  return { h: boundaryOf((h) => width(h) - asked, wide, hWhole), width: asked };
}

/** Shares of the depth range at which facets are compared before one is taken to stand for others. */
const COMPARED_AT = [0.95, 0.6];

/** Facets that stand for all: one of each group whose widths agree at several depths. */
function representatives(context: TierContext, hWhole: number): number[] {
  const seen = new Map<string, number>();
  context.normals.forEach((_, k) => {
    const width = widthOfFacet(context, k);
    const key = COMPARED_AT.map((share) => width(hWhole - (1 - share) * (1 + hWhole)).toFixed(9)).join();
    if (!seen.has(key)) seen.set(key, k);
  });
  return [...seen.values()];
}

/** @param asked width, as a fraction of the radius */
export function depthForWidth(context: TierContext, asked: number): Answer {
  if (asked <= 0) return { depth: 0 };
  const hWhole = asked >= 2 ? 0 : Math.sqrt(1 - (asked / 2) ** 2);
  const best = (facets: readonly number[]) =>
    facets
      .map((k) => reach(widthOfFacet(context, k), asked, hWhole))
      .reduce((a, b) => (b.width > a.width + EPSILON || (b.width >= a.width - EPSILON && b.h > a.h) ? b : a));
  const all = context.normals.map((_, k) => k);
  // no circle is so wide any shallower
  if (all.some((k) => widthOfFacet(context, k)(hWhole) >= asked - EPSILON)) return { depth: 1 - hWhole };
  let found = best(representatives(context, hWhole));
  // Agreement at a few depths is no proof: a facet that is wider here got there first, so all are asked.
  if (all.some((k) => widthOfFacet(context, k)(found.h) > found.width + EPSILON)) found = best(all);
  if (found.width <= 0) return { depth: 0, unmet: { why: "covered" } };
  if (found.width < asked - EPSILON)
    return { depth: 1 - found.h, unmet: { why: "too-wide", asked, got: found.width } };
  return { depth: 1 - found.h };
}
