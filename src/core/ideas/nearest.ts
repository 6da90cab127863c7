/**
 * What a search begins with where a plan itself is no candidate: the nearest one that is. It need not meet; what comes of it by
 * small changes may.
 */
import type { Tier } from "../plan/document.ts";
import {
  fits,
  type Gene,
  type GeneRule,
  type Genes,
  type Ground,
  genesOf,
  isOnStop,
  isPole,
  POLE,
  roundedMm,
} from "./genes.ts";

/** Width of a pole whose own rule is none for a facet alone, as a share of the radius. */
const POLE_WIDTH = 0.5;

const nearestCount = (counts: readonly number[], count: number): number =>
  [...counts].sort((a, b) => Math.abs(a - count) - Math.abs(b - count) || a - b)[0] ?? count;

/** A facet alone has no neighbour in its tier. @param before tiers that stand before it, kept ones included */
function ruleFor(ground: Ground, { rule }: Gene, isAlone: boolean, before: number): GeneRule {
  const width = { rule: "width", mm: roundedMm(ground, POLE_WIDTH * ground.radiusMm) } as const;
  if (isAlone) {
    if (rule.rule === "touch" || rule.rule === "edge") return width;
    return "back" in rule && (rule.back < 1 || rule.back > before) ? width : rule;
  }
  return "back" in rule && (rule.back < 1 || rule.back > before) ? { rule: "touch" } : rule;
}

function asCandidate(ground: Ground, gene: Gene, before: number): Gene {
  if (isPole(gene)) return { ...gene, count: 1, quarter: 0, rule: ruleFor(ground, gene, true, before) };
  const { side } = gene;
  const count = nearestCount(ground.counts[side], gene.count);
  return {
    side,
    count,
    halfDegs: Math.min(POLE - 1, Math.max(0, gene.halfDegs)),
    quarter: isOnStop(ground, side, count, gene.quarter) ? gene.quarter : 0,
    rule: ruleFor(ground, gene, false, before),
  };
}

/**
 * The candidate nearest to a plan's tiers, kept ones first: counts that the wheel has, one pole a side, the first tiers of as many as
 * the wish takes. Null where it takes none like it.
 */
export function nearestGenes(ground: Ground, tiers: readonly Tier[]): Genes | null {
  const { keep, wish } = ground;
  const own = genesOf(ground, tiers);
  if (fits(ground, own)) return own;
  const poles = new Set(keep.filter(({ armAngleDeg }) => armAngleDeg === 90).map(({ side }) => side));
  const genes: Gene[] = [];
  let facets = 0;
  own.forEach((gene, i) => {
    const made = asCandidate(ground, gene, keep.length + genes.length);
    const isTooMuch = genes.length === ground.tiers[1] || facets + made.count > ground.facets[1];
    const isAside = wish.sides === "front" && made.side === "back";
    if (isTooMuch || isAside || (isPole(made) && poles.has(made.side))) return;
    if (isPole(made)) poles.add(made.side);
    facets += made.count;
    // places counted back are those of the plan: where a tier before was left out they may name another
    const isShifted = genes.length < i && "back" in made.rule;
    genes.push(isShifted && "back" in made.rule ? { ...made, rule: { ...made.rule, back: 1 } } : made);
  });
  return genes.length > 0 && fits(ground, genes) ? genes : null;
}
