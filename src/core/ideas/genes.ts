/**
 * A candidate before it is a plan: what may be varied of each tier, in steps that a bench can set. Counts divide the wheel,
 * angles are half degrees, starts lie none, a quarter, a half or three quarters of a step from the wheel's zero, on its stops.
 */
import type { DepthRule, Plan, RuleName, RuleOf, Side, Tier } from "../plan/document.ts";
import { COUNTS, RANGES } from "../plan/limits.ts";
import { evenCounts, stopsOf, wrapDeg, zeroOf } from "../plan/place.ts";
import { namedTierOf, withAmount } from "../plan/rules/amounts.ts";
import { NOTHING_KNOWN, RULES } from "../plan/rules/records.ts";
import { type IdeaWish, type Limits, planOfIdea, radiusOf } from "./wish.ts";

/** A rule as a gene holds it: its length, or in place of the tier that it names `back`, so many tiers before its own, kept ones included. */
type GeneRuleOf<R extends RuleName> = {
  readonly [K in R]: { readonly rule: K } & (RuleOf<K> extends { readonly mm: number }
    ? { readonly mm: number }
    : RuleOf<K> extends { readonly to: string } | { readonly of: string }
      ? { readonly back: number }
      : unknown);
}[R];
export type GeneRule = GeneRuleOf<RuleName>;

/** One tier of a genotype. */
export interface Gene {
  readonly side: Side;
  readonly count: number;
  /** Arm angle in half degrees, 0 .. 180; 180 is a pole. */
  readonly halfDegs: number;
  /** Start in quarters of a step, 0 .. 3. */
  readonly quarter: number;
  readonly rule: GeneRule;
}
export type Genes = readonly Gene[];

export const POLE = 180;
export const isPole = ({ halfDegs }: Pick<Gene, "halfDegs">): boolean => halfDegs === POLE;
/** A ring of fewer is no ring: its facets face each other across the piece. */
const FEWEST_IN_RING = 3;

/** What candidates of a wish may be made of. */
export interface Ground {
  readonly wish: IdeaWish;
  readonly radiusMm: number;
  readonly keep: readonly Tier[];
  /** Counts of a ring on each side, ascending. */
  readonly counts: Readonly<Record<Side, readonly number[]>>;
  /** Tiers and facets that are to be added to the kept ones. */
  readonly tiers: Limits;
  readonly facets: Limits;
  /** Steps in which lengths are varied, mm: such as one sets. */
  readonly stepMm: number;
  readonly stops: Readonly<Record<Side, number | null>>;
  readonly zeroDeg: Readonly<Record<Side, number>>;
  /** Counts of the front's rings, in their order, where they are to stay; null where they are free. */
  readonly frontCounts: readonly number[] | null;
}

/** From this radius on lengths go in halves of a millimetre, below in tenths. */
const COARSE_FROM_MM = 8;

const bothIn = (a: Limits, b: Limits | undefined): Limits =>
  b ? [Math.max(a[0], Math.ceil(b[0])), Math.min(a[1], Math.floor(b[1]))] : a;

export function groundOf(wish: IdeaWish): Ground {
  const keep = wish.keep ?? [];
  const keptFacets = keep.reduce((sum, { count }) => sum + count, 0);
  const plan: Plan = planOfIdea(wish, keep, "");
  const most = Math.min(RANGES.count.max, wish.facets[1]);
  const countsOn = (side: Side): number[] => {
    const stops = stopsOf(plan, side);
    const counts = stops === null ? Array.from({ length: most }, (_, i) => i + 1) : evenCounts(stops);
    return counts.filter((n) => n >= FEWEST_IN_RING && n <= most);
  };
  const tiers = bothIn(wish.tiers, wish.limits?.tiers);
  const facets = bothIn([wish.facets[0], Math.min(wish.facets[1], COUNTS.facets)], wish.limits?.facets);
  return {
    wish,
    radiusMm: radiusOf(wish),
    keep,
    counts: { front: countsOn("front"), back: countsOn("back") },
    tiers: [Math.max(0, tiers[0] - keep.length), tiers[1] - keep.length],
    facets: [Math.max(0, facets[0] - keptFacets), facets[1] - keptFacets],
    stepMm: radiusOf(wish) >= COARSE_FROM_MM ? 0.5 : 0.1,
    stops: { front: stopsOf(plan, "front"), back: stopsOf(plan, "back") },
    zeroDeg: { front: zeroOf(plan, "front"), back: zeroOf(plan, "back") },
    frontCounts: null,
  };
}

/** Sides that get tiers of their own: both where the wish says so and there is room for both. */
export const sidesOf = ({ wish, tiers }: Ground): readonly Side[] =>
  wish.sides === "front" || tiers[1] < 2 ? ["front"] : ["front", "back"];

/** The wish's own bound that no candidate can keep, told without trying; null where some may. */
export function impossible(ground: Ground): "tiers" | "facets" | null {
  const { tiers, facets, counts } = ground;
  if (tiers[0] > tiers[1] || tiers[1] < 0) return "tiers";
  if (facets[0] > facets[1] || facets[1] < 0) return "facets";
  const sides = sidesOf(ground);
  const own = sides.flatMap((side) => counts[side]);
  // a pole at most on each side, the rest are rings
  const poles = Math.min(sides.length, tiers[0]);
  const rings = tiers[0] - poles;
  if (own.length === 0 && (rings > 0 || facets[0] > sides.length)) return "facets";
  const fewest = poles + rings * Math.min(...own, Number.MAX_VALUE);
  const most = tiers[1] * Math.max(1, ...own);
  return fewest > facets[1] || most < facets[0] ? "facets" : null;
}

/** Whether the wheel has a stop at so many quarters of a step. */
export function isOnStop(ground: Ground, side: Side, count: number, quarter: number): boolean {
  const stops = ground.stops[side];
  return stops === null || ((stops / count) * quarter) % 4 === 0;
}

export const roundedMm = (ground: Ground, mm: number): number => {
  const steps = Math.max(1, Math.round(mm / ground.stepMm));
  return Math.round(steps * ground.stepMm * 10) / 10;
};

function ruleOf(ids: readonly string[], at: number, { rule }: Gene): DepthRule {
  const other = "back" in rule ? ids[at - rule.back] : "";
  const made = RULES[rule.rule].from({ ...NOTHING_KNOWN, other });
  return "mm" in rule ? withAmount(made, rule.mm) : made;
}

function startOf({ stops, zeroDeg }: Ground, gene: Gene): number {
  if (isPole(gene)) return 0;
  const own = stops[gene.side];
  const step = 360 / gene.count;
  if (own === null) return (gene.quarter * step) / 4;
  return wrapDeg(zeroDeg[gene.side] + (360 * ((own / gene.count) * gene.quarter)) / 4 / own);
}

/** The tiers of a plan: the kept ones, then the candidate's own with ids that none of them has. */
export function tiersOf(ground: Ground, genes: Genes): Tier[] {
  const { keep } = ground;
  const taken = new Set(keep.map(({ id }) => id));
  const ids = keep.map(({ id }) => id);
  for (let k = 1; ids.length < keep.length + genes.length; k++) if (!taken.has(`t${k}`)) ids.push(`t${k}`);
  const own = genes.map((gene, i): Tier => {
    const at = keep.length + i;
    return {
      id: ids[at],
      name: isPole(gene) ? "Pole" : `Ring ${at + 1}`,
      side: gene.side,
      armAngleDeg: gene.halfDegs / 2,
      count: gene.count,
      startDeg: startOf(ground, gene),
      depth: ruleOf(ids, at, gene),
    };
  });
  return [...keep, ...own];
}

function geneRuleOf(ground: Ground, tiers: readonly Tier[], at: number): GeneRule {
  const { depth } = tiers[at];
  // candidates meet: a gap kept on purpose becomes a touch
  if (depth.rule === "gap") return { rule: "touch" };
  if ("to" in depth || "of" in depth)
    return { rule: depth.rule, back: at - tiers.findIndex(({ id }) => id === namedTierOf(depth)) };
  if ("mm" in depth) return { rule: depth.rule, mm: roundedMm(ground, depth.mm) };
  return { rule: depth.rule };
}

/** A plan's tiers after the kept ones, in a candidate's steps, whether the wish takes them or not. */
export function genesOf(ground: Ground, tiers: readonly Tier[]): Genes {
  const first = ground.keep.length;
  return tiers.slice(first).map((tier, i): Gene => {
    const quarters = (4 * (tier.startDeg - ground.zeroDeg[tier.side]) * tier.count) / 360;
    return {
      side: tier.side,
      count: tier.count,
      halfDegs: Math.round(2 * tier.armAngleDeg),
      quarter: tier.armAngleDeg === 90 ? 0 : ((Math.round(quarters) % 4) + 4) % 4,
      rule: geneRuleOf(ground, tiers, first + i),
    };
  });
}

/** Equal for candidates that agree in side, count, angle, start and rule of all their tiers. */
export const keyOf = (genes: Genes): string =>
  genes
    .map(({ side, count, halfDegs, quarter, rule }) => {
      const by = "mm" in rule ? rule.mm : "back" in rule ? rule.back : "";
      return `${side[0]}${count},${halfDegs},${quarter},${rule.rule}${by}`;
    })
    .join(";");

const isFrontRing = (gene: Gene): boolean => gene.side === "front" && !isPole(gene);

/** The candidate with the counts that the front's rings are to have, as far as it has so many. */
export function withFrontCounts({ frontCounts }: Ground, genes: Genes): Genes {
  if (!frontCounts) return genes;
  let at = 0;
  return genes.map((gene) =>
    isFrontRing(gene) ? { ...gene, count: frontCounts[at++] ?? gene.count } : gene,
  );
}

/** Counts of the front's rings, in their order. */
export const frontCountsOf = (tiers: readonly Pick<Tier, "side" | "armAngleDeg" | "count">[]): number[] =>
  tiers.filter(({ side, armAngleDeg }) => side === "front" && armAngleDeg < 90).map(({ count }) => count);

/** Whether the wish's own bounds and the wheel take this candidate. */
export function fits(ground: Ground, genes: Genes): boolean {
  const { tiers, facets, keep, counts, wish } = ground;
  const sum = genes.reduce((own, { count }) => own + count, 0);
  if (genes.length < tiers[0] || genes.length > tiers[1] || sum < facets[0] || sum > facets[1]) return false;
  const front = genes.filter(isFrontRing);
  const { frontCounts } = ground;
  if (frontCounts && front.length !== frontCounts.length) return false;
  if (frontCounts?.some((count, i) => front[i].count !== count)) return false;
  const sides = new Set([...keep, ...genes].map(({ side }) => side));
  if (wish.sides === "front" && genes.some(({ side }) => side === "back")) return false;
  if (wish.sides === "both" && genes.length > 0 && wish.tiers[1] > 1 && sides.size < 2) return false;
  return genes.every((gene, i) => {
    const { side, count, halfDegs, quarter, rule } = gene;
    if (isPole(gene) && genes.some((other, j) => j < i && isPole(other) && other.side === side)) return false;
    const isCounted = isPole(gene) ? count === 1 : counts[side].includes(count) && halfDegs < POLE;
    const isNamed = !("back" in rule) || (rule.back >= 1 && rule.back <= keep.length + i);
    const isRuled = isPole(gene) ? rule.rule !== "touch" && rule.rule !== "edge" : true;
    return isCounted && isNamed && isRuled && halfDegs >= 0 && isOnStop(ground, side, count, quarter);
  });
}
