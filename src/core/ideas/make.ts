/**
 * Makes candidates: out of nothing, by changes of one, small or wide, by crossing two. Chance comes from outside. Most of what it makes
 * is what one would try at the bench: rings that touch or share edges, the next closing to them or coming to their corners, a flat
 * at the pole; so that many meet.
 */
import type { Random } from "../bench/chances/chance.ts";
import type { Side } from "../plan/document.ts";
import {
  fits,
  type Gene,
  type GeneRule,
  type Genes,
  type Ground,
  isOnStop,
  isPole,
  POLE,
  roundedMm,
  sidesOf,
  withFrontCounts,
} from "./genes.ts";

/** Draws until a candidate fits; a wish that fits nothing by so many is told so. */
const MOST_DRAWS = 60;

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)];
const whole = (random: Random, least: number, most: number): number =>
  least + Math.floor(random() * (most - least + 1));

/** A length as a share of the radius, on the bench's steps. */
const lengthMm = (ground: Ground, random: Random, least: number, most: number): number =>
  roundedMm(ground, ground.radiusMm * (least + (most - least) * random()));

/** Tiers before place `at` that stand on a side, as steps back from it. */
function stepsBack({ keep }: Ground, before: Genes, side: Side): number[] {
  const all = [...keep, ...before];
  return all.flatMap((tier, i) => (tier.side === side ? [all.length - i] : []));
}

/** Girdle rings of both sides may meet as well: any earlier tier can be named. */
function namingRule(ground: Ground, random: Random, before: Genes, side: Side): GeneRule | null {
  const own = stepsBack(ground, before, side);
  const any = Array.from({ length: ground.keep.length + before.length }, (_, i) => i + 1);
  const back =
    own.length > 0 && random() < 0.9
      ? random() < 0.8
        ? own[own.length - 1]
        : pick(random, own)
      : pick(random, any);
  if (back === undefined) return null;
  return { rule: random() < 0.55 ? "close" : "corners", back };
}

function ringRule(ground: Ground, random: Random, before: Genes, side: Side): GeneRule {
  const isFirst = stepsBack(ground, before, side).length === 0;
  const named = random() < (isFirst ? 0.25 : 0.75) ? namingRule(ground, random, before, side) : null;
  if (named) return named;
  const chance = random();
  if (chance < 0.6) return { rule: "touch" };
  return { rule: "edge", mm: lengthMm(ground, random, 0.05, 0.7) };
}

function poleRule(ground: Ground, random: Random, before: Genes, side: Side): GeneRule {
  const named = random() < 0.7 ? namingRule(ground, random, before, side) : null;
  if (named) return named;
  return random() < 0.7
    ? { rule: "width", mm: lengthMm(ground, random, 0.2, 1.4) }
    : { rule: "depth", mm: lengthMm(ground, random, 0.05, 0.4) };
}

/** Quarters of a step at which the wheel has a stop: none and a half for the most part. */
function quarterFor(ground: Ground, random: Random, side: Side, count: number): number {
  const wanted = pick(random, [0, 0, 0, 2, 2, 2, 1, 3]);
  return isOnStop(ground, side, count, wanted) ? wanted : 0;
}

/** The count of a wheel nearest to what is aimed at, or one of its kin. */
function countNear(counts: readonly number[], random: Random, aim: number): number {
  const near = [...counts].sort((a, b) => Math.abs(a - aim) - Math.abs(b - aim));
  const kin = counts.filter((n) => n % near[0] === 0 || near[0] % n === 0);
  const chance = random();
  if (chance < 0.7) return near[0];
  return chance < 0.9 ? pick(random, kin) : pick(random, counts);
}

/** So many rings of one side, from the girdle to the pole or the other way, with their angles set apart. */
function makeSide(
  ground: Ground,
  random: Random,
  before: Genes,
  side: Side,
  tiers: number,
  aim: number,
): Gene[] {
  const counts = ground.counts[side];
  const hasPole = tiers > 0 && (counts.length === 0 || random() < 0.35);
  const rings = tiers - (hasPole ? 1 : 0);
  const base = counts.length > 0 ? countNear(counts, random, aim) : 1;
  // angles a share of the way up each, so that rings of one side stand apart
  const [low, high] = [2 + 40 * random(), 85 + 65 * random()];
  const halfDegs = Array.from({ length: rings }, (_, i) =>
    Math.round(low + ((high - low) * (i + 0.2 + 0.6 * random())) / rings),
  );
  if (random() < 0.25) halfDegs.reverse();
  const made: Gene[] = [];
  const all = () => [...before, ...made];
  for (const own of halfDegs) {
    const count = random() < 0.75 ? base : countNear(counts, random, base);
    const last = made[made.length - 1];
    const half = last ? (last.quarter + 2) % 4 : 0;
    const quarter =
      random() < 0.5 && isOnStop(ground, side, count, half) ? half : quarterFor(ground, random, side, count);
    made.push({ side, count, halfDegs: own, quarter, rule: ringRule(ground, random, all(), side) });
  }
  if (hasPole)
    made.push({ side, count: 1, halfDegs: POLE, quarter: 0, rule: poleRule(ground, random, all(), side) });
  return made;
}

function draw(ground: Ground, random: Random): Genes {
  const { tiers, facets } = ground;
  const sides = sidesOf(ground);
  const wanted = whole(random, tiers[0], tiers[1]);
  // few facets are likelier than many: a wish's bound is wide
  const aimed = facets[0] + (facets[1] - facets[0]) * random() ** 2;
  const front = sides.length === 1 ? wanted : whole(random, 1, Math.max(1, wanted - 1));
  const aim = aimed / Math.max(1, wanted - 0.5);
  const first = makeSide(ground, random, [], "front", front, aim);
  return wanted > front ? [...first, ...makeSide(ground, random, first, "back", wanted - front, aim)] : first;
}

/** Turns the whole so that the first ring starts at zero: turned plans are the same piece. */
function upright(ground: Ground, genes: Genes): Genes {
  if (ground.keep.length > 0 || genes.length === 0) return genes;
  return [{ ...genes[0], quarter: 0 }, ...genes.slice(1)];
}

/** Tries until what is made fits; null when it never does. */
function untilFits(ground: Ground, make: () => Genes): Genes | null {
  for (let k = 0; k < MOST_DRAWS; k++) {
    const genes = withFrontCounts(ground, upright(ground, make()));
    if (fits(ground, genes)) return genes;
  }
  return null;
}

/** A candidate out of nothing; null where chance finds none that the wish's own bounds take. */
export const makeCandidate = (ground: Ground, random: Random): Genes | null =>
  untilFits(ground, () => draw(ground, random));

const replaced = (genes: Genes, at: number, by: Partial<Gene>): Genes =>
  genes.map((gene, i) => (i === at ? { ...gene, ...by } : gene));

/** How far a change goes. */
export interface Reach {
  /** The most that an angle moves by, half degrees; half of them move by a quarter of it or less. */
  readonly halfDegs: number;
  /** How often a count becomes one that it divides or that divides it, and how often any of the wheel's; else the one next to it. */
  readonly kin: number;
  readonly any: number;
}
export const SMALL: Reach = { halfDegs: 16, kin: 0, any: 0.3 };
export const WIDE: Reach = { halfDegs: 64, kin: 0.4, any: 0.3 };

/** An angle a little or a lot away. */
function turned(random: Random, reach: Reach, { halfDegs }: Gene): number {
  const by = Math.ceil(random() ** 2 * reach.halfDegs) * (random() < 0.5 ? -1 : 1);
  return Math.min(POLE - 1, Math.max(0, halfDegs + by));
}

function otherCount(ground: Ground, random: Random, { kin, any }: Reach, { side, count }: Gene): number {
  const counts = ground.counts[side];
  const chance = random();
  if (chance >= 1 - any) return pick(random, counts);
  if (chance >= 1 - any - kin) {
    const others = counts.filter((n) => n !== count && (n % count === 0 || count % n === 0));
    return pick(random, others) ?? count;
  }
  return counts[counts.indexOf(count) + (random() < 0.5 ? 1 : -1)] ?? count;
}

function otherRule(ground: Ground, random: Random, genes: Genes, at: number): GeneRule {
  const gene = genes[at];
  const { rule, side } = gene;
  if ("mm" in rule && random() < 0.6)
    return { ...rule, mm: roundedMm(ground, rule.mm * (0.7 + 0.6 * random())) };
  const before = genes.slice(0, at);
  return (isPole(gene) ? poleRule : ringRule)(ground, random, before, side);
}

/** One change. What it breaks is found by `fits`, and another is tried. */
function changed(ground: Ground, random: Random, reach: Reach, genes: Genes): Genes {
  if (genes.length === 0) return genes;
  const at = Math.floor(random() * genes.length);
  const gene = genes[at];
  const chance = random();
  if (chance < 0.4 && !isPole(gene)) return replaced(genes, at, { halfDegs: turned(random, reach, gene) });
  if (chance < 0.52 && !isPole(gene)) {
    const quarter = quarterFor(ground, random, gene.side, gene.count);
    return replaced(genes, at, { quarter });
  }
  if (chance < 0.66 && !isPole(gene)) {
    const count = otherCount(ground, random, reach, gene);
    // rings of one count for the most part change together
    const isAll = random() < 0.6;
    return genes.map((own, i) => (i === at || (isAll && own.count === gene.count) ? { ...own, count } : own));
  }
  if (chance < 0.82) return replaced(genes, at, { rule: otherRule(ground, random, genes, at) });
  if (chance < 0.9) return genes.filter((_, i) => i !== at);
  const [added] = makeSide(ground, random, genes.slice(0, at + 1), gene.side, 1, gene.count);
  return [...genes.slice(0, at + 1), added, ...genes.slice(at + 1)];
}

/** One to three changes of a candidate; out of nothing where none of them fits. */
export const varyCandidate = (ground: Ground, random: Random, genes: Genes, reach: Reach): Genes | null =>
  untilFits(ground, () => {
    let next = genes;
    const chance = random();
    // one change for the most part: what sends light back is lost by more
    for (let k = chance < 0.6 ? 1 : chance < 0.9 ? 2 : 3; k > 0; k--)
      next = changed(ground, random, reach, next);
    return next;
  }) ?? makeCandidate(ground, random);

/** The front of one with the back of another; on one side, the first tiers of one with the last of another. */
export const crossCandidates = (
  ground: Ground,
  random: Random,
  a: Genes,
  b: Genes,
  reach: Reach,
): Genes | null =>
  untilFits(ground, () => {
    const of = (genes: Genes, side: Side) => genes.filter((gene) => gene.side === side);
    if (sidesOf(ground).length > 1 && random() < 0.6) return [...of(a, "front"), ...of(b, "back")];
    const crossed = (side: Side): Genes => {
      const [from, to] = [of(a, side), of(b, side)];
      const cut = whole(random, 0, from.length);
      return [...from.slice(0, cut), ...to.slice(Math.min(to.length, cut))];
    };
    return sidesOf(ground).flatMap((side) => crossed(side));
  }) ?? varyCandidate(ground, random, a, reach);
