/** Stages offered when a plan names none, and the rule of thumb for the damage that each leaves. */
import { BONDS } from "../../plan/bonds.ts";
import type { Rig, Stage } from "../../plan/document.ts";

/** What a stage that doesn't say how its grains are held is counted as. Such ratios depend on the process. */
export const DAMAGE_GRAINS = BONDS.loose.damageGrains;

/** Grains that the damage of a stage is counted as where its depth isn't stated; without a bond as for loose grains. */
export const damageGrains = ({ bond }: Pick<Stage, "bond">): number =>
  bond ? BONDS[bond].damageGrains : DAMAGE_GRAINS;

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
