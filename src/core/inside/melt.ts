/** What all coloured glass that is melted into the piece has in common: a soft edge, how milky it is, the hand's irregularity. */
import { hash, unitOf } from "../optics/hash.ts";
import { RANGES } from "../plan/limits.ts";
import { count, maybe, mm } from "./fields.ts";
import { type SceneDesign, THINNEST } from "./scene-design.ts";

const share = count(RANGES.unit, 0.05);

/** For what is melted only when one of these is said. */
export const MELT_IF_SAID = {
  /** Over how much the colour falls off at its edge. */
  fadeMm: maybe(mm(RANGES.fadeMm)),
  /** 0 clear coloured glass .. 1 scattering so much that one sees its face alone. */
  milky: maybe(share),
  /** 0 exact .. 1; `seed` says which of many. */
  irregularity: maybe(share),
  seed: maybe(count(RANGES.seed)),
} as const;

interface Melt {
  readonly fadeMm?: number;
  readonly milky?: number;
  readonly irregularity?: number;
  readonly seed?: number;
}
export const USUAL = { fadeMm: 0.3, milky: 0.3, irregularity: 0, seed: 1 } as const;

/** For what is always melted. */
export const MELT = {
  fadeMm: maybe(mm(RANGES.fadeMm), USUAL.fadeMm),
  milky: maybe(share, USUAL.milky),
  irregularity: maybe(share, USUAL.irregularity),
  seed: maybe(count(RANGES.seed), USUAL.seed),
} as const;

export const isMelted = (design: Melt & { readonly vein?: number }): boolean =>
  [...Object.keys(MELT_IF_SAID), "vein"].some((name) => design[name as keyof Melt] !== undefined);

/** Phases 0 .. 2 pi of a seed's irregularity. */
function phasesOf(seed: number): readonly [number, number, number] {
  const a = hash(seed);
  const b = hash(a);
  return [a, b, hash(b)].map((h) => 2 * Math.PI * unitOf(h)) as unknown as [number, number, number];
}

/** @param shape four numbers at most, see `media.ts` */
export function melted(
  design: Melt,
  toUnit: number,
  shape: readonly number[],
): Pick<SceneDesign, "extra" | "more"> {
  const { fadeMm, milky, irregularity, seed } = { ...USUAL, ...design };
  const [p = 0, q = 0, r = 0, s = 0] = shape;
  return {
    extra: milky,
    more: [Math.max(THINNEST, fadeMm * toUnit), irregularity, p, q, r, s, ...phasesOf(seed)],
  };
}
/** Thickness in unit-sphere lengths, no less than can be met. */
export const thickness = (mm: number, toUnit: number): number => Math.max(THINNEST, mm * toUnit);
