/** Stages offered when a plan names none, and the rule of thumb for the damage that each leaves. */
import type { Bond, Rig, Stage } from "../plan/document.ts";

/**
 * Damage reaches about this many grain diameters under the ground face. Rule of thumb: 2 to 3 grain diameters for loose
 * abrasive (AmeriCOM course "The fundamentals of grinding", lesson 2). Such ratios depend on the process.
 */
export const DAMAGE_GRAINS = 2.5;

/**
 * The same by how the grains are held. Loose: as above. Bonded: measured depths under bound abrasives lie between
 * 0.3 L^0.68 and 2 L^0.85 um for grains of L um (Lambropoulos 2000, From abrasive size to subsurface damage in grinding; from
 * memory); the deeper bound is one grain at L = 100 um, 1.3 grains at 15 um. Pad: common practice, no source.
 */
export const BOND_GRAINS: Readonly<Record<Bond, number>> = { loose: 2.5, bonded: 1, pad: 0.5 };

/** Grains that the damage of a stage is counted as where its depth isn't stated; without a bond as for loose grains. */
export const damageGrains = ({ bond }: Pick<Stage, "bond">): number =>
  bond ? BOND_GRAINS[bond] : DAMAGE_GRAINS;

/** Depth of damage that the next stage has to take off, um. */
export const damageUm = (stage: Stage): number => stage.damageUm ?? damageGrains(stage) * stage.grainUm;

/**
 * Common practice, no source: plated diamond coarse to fine, each a quarter to a half of the grain before, then a
 * resin-bonded pre-polish and cerium oxide on a pad. Sizes of the first two are sieve openings (ASTM E11).
 */
const USUAL = {
  rough: { grainUm: 90, grit: { scale: "mesh", number: 170 }, bond: "bonded" },
  medium: { grainUm: 45, grit: { scale: "mesh", number: 325 }, bond: "bonded" },
  fine: { grainUm: 15, bond: "bonded" },
  prepolish: { grainUm: 6, bond: "bonded" },
  polish: { grainUm: 1.5, bond: "pad" },
} as const satisfies Readonly<Record<string, Omit<Stage, "id" | "name">>>;
export type UsualStage = keyof typeof USUAL;

/** The usual stages, called by their ids: `src/words/stages.ts` has their names. */
export const DEFAULT_STAGES: readonly Stage[] = Object.entries(USUAL).map(([id, stage]) => ({
  id,
  name: id,
  ...stage,
}));

/** The abrasives that a rig names, or the usual ones. */
export const stagesOf = (rig: Rig): readonly Stage[] => rig.stages ?? DEFAULT_STAGES;
