/** What is true of a tier after solving, told from the exact report: how its neighbours stand, how wide its facets are. */

export interface TruthSource {
  readonly facets: readonly {
    readonly id: string;
    readonly tier: string;
    readonly widthMm: number;
    readonly depthMm: number;
    readonly swallowed: boolean;
  }[];
  readonly pairs: readonly {
    readonly a: string;
    readonly b: string;
    readonly state: "gap" | "touch" | "edge";
    readonly gapMm: number;
    readonly edgeMm: number;
  }[];
}

export interface Span {
  readonly least: number;
  readonly most: number;
}

export interface TierTruth {
  readonly all: number;
  /** Facets of which something is left. */
  readonly left: number;
  readonly depthMm: number;
  /** Null when nothing is left. */
  readonly widthMm: Span | null;
  readonly edges: number;
  readonly touches: number;
  readonly gaps: number;
  readonly edgeMm: Span | null;
  /** Gaps of round skin; null when there are none. */
  readonly gapMm: Span | null;
}

const spanOf = (values: readonly number[]): Span | null =>
  values.length === 0 ? null : { least: Math.min(...values), most: Math.max(...values) };

const tierOf = (facetId: string): string => facetId.slice(0, facetId.lastIndexOf("/"));

interface Own {
  readonly facets: TruthSource["facets"];
  readonly pairs: TruthSource["pairs"];
}
const NOTHING: Own = { facets: [], pairs: [] };
const ownOf = new WeakMap<TruthSource, ReadonlyMap<string, Own>>();

/** Each tier's facets and the pairs within it, told apart once for all tiers: there may be thousands. */
function byTier(source: TruthSource): ReadonlyMap<string, Own> {
  const known = ownOf.get(source);
  if (known) return known;
  const tiers = new Map<
    string,
    { facets: TruthSource["facets"][number][]; pairs: TruthSource["pairs"][number][] }
  >();
  for (const facet of source.facets) {
    const own = tiers.get(facet.tier);
    if (own) own.facets.push(facet);
    else tiers.set(facet.tier, { facets: [facet], pairs: [] });
  }
  for (const pair of source.pairs) {
    const tier = tierOf(pair.a);
    if (tierOf(pair.b) === tier) tiers.get(tier)?.pairs.push(pair);
  }
  ownOf.set(source, tiers);
  return tiers;
}

/** Neighbours within the tier only: how it meets other tiers is told by theirs and by findings. */
export function tierTruth(source: TruthSource, tierId: string): TierTruth {
  const { facets: own, pairs } = byTier(source).get(tierId) ?? NOTHING;
  const left = own.filter((facet) => !facet.swallowed);
  const edges = pairs.filter((pair) => pair.state === "edge");
  const gaps = pairs.filter((pair) => pair.state === "gap");
  return {
    all: own.length,
    left: left.length,
    depthMm: own[0]?.depthMm ?? 0,
    widthMm: spanOf(left.map((facet) => facet.widthMm)),
    edges: edges.length,
    touches: pairs.length - edges.length - gaps.length,
    gaps: gaps.length,
    edgeMm: spanOf(edges.map((pair) => pair.edgeMm)),
    // A gap below zero means that other facets cover the place between: there is no skin to measure.
    gapMm: spanOf(gaps.filter((pair) => pair.gapMm > 0).map((pair) => pair.gapMm)),
  };
}
