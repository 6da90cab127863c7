/** Turns of the whole piece about its axis that bring it upon itself, whatever its arm angles and depths are. */
import type { PlacedFacet, SolvedPlan } from "../plan/solved.ts";
import type { Item } from "./kept.ts";

/** Azimuths this near are one, degrees: far below what stops differ by, far above rounding. */
const SAME_DEG = 1e-6;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
const isAtPole = (facet: PlacedFacet): boolean => facet.armAngleDeg === 90;

/** Where each facet comes under one turn; null when the turn doesn't bring all upon others of their tiers. */
function turnedBy(deg: number, { facets, tiers }: SolvedPlan): number[] | null {
  const to: number[] = [];
  for (const { first, count } of tiers) {
    const taken = new Set<number>();
    for (let k = first; k < first + count; k++) {
      const azimuth = facets[k].azimuthDeg + deg;
      const isThere = (other: number) => {
        const off = Math.abs(((((facets[other].azimuthDeg - azimuth) % 360) + 540) % 360) - 180);
        return !taken.has(other) && (isAtPole(facets[k]) || off < SAME_DEG);
      };
      const found = Array.from({ length: count }, (_, i) => first + i).find(isThere);
      if (found === undefined) return null;
      taken.add(found);
      to.push(found);
    }
  }
  return to;
}

/** The smallest turn that does, as where each facet comes; the identity where none does. */
function smallestTurn(solved: SolvedPlan): number[] {
  const counts = solved.tiers
    .filter(({ first }) => !isAtPole(solved.facets[first]))
    .map(({ count }) => count);
  const most = counts.reduce(gcd, 0);
  for (let n = most; n > 1; n--) {
    const to = most % n === 0 ? turnedBy(360 / n, solved) : null;
    if (to) return to;
  }
  return solved.facets.map((_, k) => k);
}

/** Items that turns bring upon each other, as one of them and all: what holds for one holds for all. */
export interface AlikeItems {
  readonly item: Item;
  readonly all: readonly Item[];
}

export function alikeItems(items: readonly Item[], solved: SolvedPlan): AlikeItems[] {
  const to = smallestTurn(solved);
  const ascending = (item: Item) => [...item].sort((a, b) => a - b);
  const seen = new Map<string, { item: Item; all: Item[] }>();
  for (const item of items) {
    const known = seen.get(ascending(item).join());
    if (known) {
      known.all.push(item);
      continue;
    }
    const alike = { item, all: [item] };
    let turned = ascending(item);
    do {
      seen.set(turned.join(), alike);
      turned = ascending(turned.map((k) => to[k]));
    } while (!seen.has(turned.join()));
  }
  return [...new Set(seen.values())];
}
