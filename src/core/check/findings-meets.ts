/** Meets that miss: edges and patches of skin too short to see, and round skin left between tiers. */
import { SKIN } from "../geometry/solid-types.ts";
import type { Vec3 } from "../geometry/vec.ts";
import type { PlanFinding } from "../plan/finding.ts";
import { wrapDeg } from "../plan/place.ts";
import { leftCorners, missedCorners } from "./asked-corners.ts";
import type { Checked } from "./findings.ts";

/** Up to this many tolerances long, a short edge or bit of skin reads as a corner that was missed. Common practice, no source. */
const NEAR_MISS_TOLERANCES = 8;

/** A short piece where a corner should be: its ends on the unit sphere or inside it, the facets that nearly meet. */
export interface Miss {
  readonly facets: readonly number[];
  readonly mm: number;
  readonly skin: boolean;
  readonly from: Vec3;
  readonly to: Vec3;
}

type Meeting = Pick<Checked, "solid" | "solved">;

/** Short pieces between two corners: true edges, or arcs of skin between the ends of two edges. */
function shortPieces({ solid, solved }: Meeting, fromMm: number, toMm: number): Miss[] {
  const within = (length: number) => length * solved.radiusMm > fromMm && length * solved.radiusMm <= toMm;
  const edges = solid.edges
    .filter((e) => within(e.length))
    .map(
      ({ a, b, from, to, length }): Miss => ({
        facets: [a, b],
        mm: length * solved.radiusMm,
        skin: false,
        from,
        to,
      }),
    );
  const arcs = solid.facets.flatMap((facet, i) =>
    facet.outline.flatMap((piece, k): Miss[] => {
      if (piece.with !== SKIN || facet.outline.length < 2 || !within(piece.length)) return [];
      const before = facet.outline[(k + facet.outline.length - 1) % facet.outline.length].with;
      const after = facet.outline[(k + 1) % facet.outline.length].with;
      if (before === SKIN || after === SKIN || before === after) return [];
      const { from, to } = piece;
      return [{ facets: [i, before, after], mm: piece.length * solved.radiusMm, skin: true, from, to }];
    }),
  );
  return [...edges, ...arcs];
}

/** Corners that nearly come to a point: pieces longer than the tolerance, and short enough to read as a missed corner. */
export const nearMisses = (meeting: Meeting, toleranceMm: number): Miss[] =>
  shortPieces(meeting, toleranceMm, NEAR_MISS_TOLERANCES * toleranceMm);

/** Misses of one kind gathered by the latest tier that takes part, which is the one to mend. */
function byTier(
  checked: Checked,
  misses: readonly Miss[],
  say: (tier: string, own: readonly Miss[], worst: number) => PlanFinding,
): PlanFinding[] {
  const { solved } = checked;
  const latest = (m: Miss) => Math.max(...m.facets.map((i) => solved.facets[i].tierIndex));
  return solved.tiers.flatMap((tier, t) => {
    const own = misses.filter((m) => latest(m) === t);
    return own.length === 0 ? [] : [say(tier.tierId, own, Math.max(...own.map((m) => m.mm)))];
  });
}

const idsOf = ({ solved }: Checked, misses: readonly Miss[]): string[] =>
  [...new Set(misses.flatMap((m) => m.facets))].sort((a, b) => a - b).map((i) => solved.facets[i].id);

/** Corners that a rule asked for and its tier passes by, whatever their size. */
const askedMisses = (checked: Checked): Miss[] => {
  const { radiusMm } = checked.solved;
  return missedCorners(checked, checked.toleranceMm / radiusMm).map(({ facets, at, miss }) => ({
    facets,
    mm: miss * radiusMm,
    skin: true,
    from: at,
    to: at,
  }));
};

function leftFindings(checked: Checked): PlanFinding[] {
  const { radiusMm, facets: own } = checked.solved;
  return leftCorners(checked, checked.toleranceMm / radiusMm).map(
    ({ tierId, of, facets, count, all, miss }): PlanFinding => ({
      code: "corners-left",
      severity: "info",
      tier: tierId,
      facets: facets.map((i) => own[i].id),
      data: { of, count, all, missMm: miss * radiusMm },
    }),
  );
}

function missFindings(checked: Checked): PlanFinding[] {
  const { toleranceMm } = checked;
  const near = [...askedMisses(checked), ...nearMisses(checked, toleranceMm)];
  // Exact corners leave no edge at all: the shortest that counts is a hundredth of what the person permits.
  const short = shortPieces(checked, toleranceMm / 100, toleranceMm);
  return [
    ...byTier(checked, near, (tier, own, worst) => ({
      code: "near-miss",
      severity: "warn",
      tier,
      facets: idsOf(checked, own),
      data: { count: own.length, missMm: worst, skin: own.some((m) => m.skin) },
    })),
    ...byTier(checked, short, (tier, own, worst) => ({
      code: "short-edge",
      severity: "info",
      tier,
      facets: idsOf(checked, own),
      data: { count: own.length, longestMm: worst },
    })),
  ];
}

/**
 * Whether two facets stand beside each other round the axis. Facets that face each other across the pole border the same
 * cap of skin too, but that is no band between their tiers.
 */
function areBeside({ solved }: Checked, a: number, b: number): boolean {
  const [fa, fb] = [solved.facets[a], solved.facets[b]];
  const reach = (i: number) => 180 / solved.plan.tiers[i].count;
  if (fa.armAngleDeg === 90 || fb.armAngleDeg === 90) return true;
  const turn = Math.abs(wrapDeg(fa.azimuthDeg - fb.azimuthDeg + 180) - 180);
  return turn <= reach(fa.tierIndex) + reach(fb.tierIndex) + 1e-6;
}

/** Round skin between two tiers, one finding a pair of tiers. */
function skinFindings(checked: Checked): PlanFinding[] {
  const { solved, pairs } = checked;
  const between = new Map<string, { a: number; b: number; mm: number[]; facets: Set<number> }>();
  for (const { a, b, state, gap } of pairs) {
    const [ta, tb] = [solved.facets[a].tierIndex, solved.facets[b].tierIndex];
    if (ta === tb || state !== "gap" || gap <= 0 || !areBeside(checked, a, b)) continue;
    const key = `${ta} ${tb}`;
    const entry = between.get(key) ?? { a: ta, b: tb, mm: [], facets: new Set<number>() };
    entry.mm.push(gap * solved.radiusMm);
    entry.facets.add(a).add(b);
    between.set(key, entry);
  }
  return [...between.values()].map((entry): PlanFinding => {
    const [ida, idb] = [solved.tiers[entry.a].tierId, solved.tiers[entry.b].tierId];
    const [least, most] = [Math.min(...entry.mm), Math.max(...entry.mm)];
    return {
      code: "skin-between",
      severity: "info",
      tier: idb,
      facets: [...entry.facets].sort((x, y) => x - y).map((i) => solved.facets[i].id),
      data: { tiers: [ida, idb], leastMm: least, mostMm: most },
    };
  });
}

export const meetFindings = (checked: Checked): PlanFinding[] => [
  ...missFindings(checked),
  ...leftFindings(checked),
  ...skinFindings(checked),
];
