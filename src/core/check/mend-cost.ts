/** What a mend costs, from the reports before and after it, and whether two mends come to the same. */

import type { PlanFinding } from "../plan/finding.ts";
import { wrapDeg } from "../plan/place.ts";
import type { Report, ReportFacet } from "./report.ts";

export interface MendCost {
  /** The tier whose depth changes most, as it was and as it becomes; null where none does. */
  readonly depth: { readonly tierId: string; readonly fromMm: number; readonly mm: number } | null;
  /** Share of the piece's mass that goes; below 0 where more glass stays. */
  readonly massShare: number;
  /** The least extent of any facet that shows, before and after; null where none shows. */
  readonly leastFacetMm: { readonly from: number | null; readonly to: number | null };
  /** Tiers whose facets come to lie otherwise, in cutting order; one that is left out is not among them. */
  readonly tiers: readonly string[];
}

/** Why a mend is offered last. */
export type Doubt = "thin" | "glass" | "brings";

/** Facets thinner than this can hardly be polished, and a fifth of the glass is another piece. Common practice, no source. */
const LEAST_FACET_MM = 0.3;
const MOST_GLASS = 0.2;
/** Depths and angles that differ by less are the same to a hand. */
const SAME = { mm: 0.05, deg: 0.5 } as const;
const MOVED = { mm: 0.005, deg: 0.01 } as const;

const leastFacet = ({ facets }: Report): number | null => {
  const shown = facets.filter(({ swallowed }) => !swallowed);
  return shown.length === 0
    ? null
    : Math.min(...shown.map(({ widthMm, heightMm }) => Math.min(widthMm, heightMm)));
};

/** The first facet of each tier stands for all: they share angle and depth, and turn together. */
const tiersOf = ({ facets }: Report): ReadonlyMap<string, { first: ReportFacet; count: number }> => {
  const tiers = new Map<string, { first: ReportFacet; count: number }>();
  for (const facet of facets) {
    const known = tiers.get(facet.tier);
    if (known) known.count++;
    else tiers.set(facet.tier, { first: facet, count: 1 });
  }
  return tiers;
};

const turnBetween = (a: number, b: number): number => Math.abs(wrapDeg(a - b + 180) - 180);

function isPlacedAlike(a: ReportFacet, b: ReportFacet, within: { mm: number; deg: number }): boolean {
  // at the pole a turn moves nothing
  const turn =
    turnBetween(a.azimuthDeg, b.azimuthDeg) *
    Math.cos((Math.max(a.armAngleDeg, b.armAngleDeg) * Math.PI) / 180);
  return (
    Math.abs(a.planeMm - b.planeMm) <= within.mm &&
    Math.abs(a.armAngleDeg - b.armAngleDeg) <= within.deg &&
    turn <= within.deg
  );
}

export function costOf(before: Report, after: Report): MendCost {
  const [old, now] = [tiersOf(before), tiersOf(after)];
  const changed = [...now].flatMap(([tierId, { first, count }]) => {
    const was = old.get(tierId);
    const isSame = was !== undefined && was.count === count && isPlacedAlike(was.first, first, MOVED);
    return isSame ? [] : [{ tierId, fromMm: was?.first.depthMm ?? 0, mm: first.depthMm }];
  });
  const deepest = changed.reduce<MendCost["depth"]>((most, one) => {
    const by = Math.abs(one.mm - one.fromMm);
    return by > MOVED.mm && by > (most ? Math.abs(most.mm - most.fromMm) : 0) ? one : most;
  }, null);
  const { massG } = before.totals;
  return {
    depth: deepest,
    massShare: massG > 0 ? (massG - after.totals.massG) / massG : 0,
    leastFacetMm: { from: leastFacet(before), to: leastFacet(after) },
    tiers: changed.map(({ tierId }) => tierId),
  };
}

/** What speaks against a mend. A facet as thin as one that was there before is no doubt about the mend. */
export function doubtsOf({ leastFacetMm, massShare }: MendCost, brings: readonly PlanFinding[]): Doubt[] {
  const { from, to } = leastFacetMm;
  const isThin = to !== null && to < LEAST_FACET_MM && !(from !== null && from <= to + MOVED.mm);
  return [
    ...(isThin ? (["thin"] as const) : []),
    ...(massShare > MOST_GLASS ? (["glass"] as const) : []),
    ...(brings.length > 0 ? (["brings"] as const) : []),
  ];
}

/** Whether two plans are the same piece to a hand: the same facets within what it can set. */
export const isSamePiece = (a: Report, b: Report): boolean =>
  a.facets.length === b.facets.length &&
  a.facets.every((facet, i) => facet.id === b.facets[i].id && isPlacedAlike(facet, b.facets[i], SAME));
