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

/** Where the facet is widest, below hMax; its width there may be 0. */
function widestBelow(width: Width, hMax: number): number {
  const step = (hMax + 1) / PROBES;
  let best = hMax;
  for (let i = 0; i < PROBES; i++) {
    const h = hMax - i * step;
    if (width(h) > width(best)) best = h;
  }
  return peakOf(width, Math.max(-1, best - step), Math.min(hMax, best + step));
}

/** Greatest h at which one facet reaches the width asked, or its peak when it never does. */
function reach(width: Width, asked: number, hWhole: number): { h: number; width: number } {
  if (width(hWhole) >= asked - EPSILON) return { h: hWhole, width: asked };
  const peak = widestBelow(width, hWhole);
  const widest = width(peak);
  if (widest < asked) return { h: peak, width: widest };
  return { h: boundaryOf((h) => width(h) - asked, peak, hWhole), width: asked };
}

/** Facets that stand for all: one of each group whose slices at two depths agree. */
function representatives(context: TierContext, hWhole: number): number[] {
  const seen = new Map<string, number>();
  context.normals.forEach((_, k) => {
    const width = widthOfFacet(context, k);
    const key = [hWhole, hWhole * 0.9 - 0.05].map((h) => width(h).toFixed(8)).join();
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
  const found = best(representatives(context, hWhole));
  if (found.width <= 0) return { depth: 0, unmet: { why: "covered", asked } };
  if (found.width < asked - EPSILON)
    return { depth: 1 - found.h, unmet: { why: "too-wide", asked, got: found.width } };
  return { depth: 1 - found.h };
}
