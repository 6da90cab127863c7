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
export const DEFAULT_STAGES: readonly Stage[] = [
  {
    id: "rough",
    name: "Diamond 170 mesh",
    grainUm: 90,
    grit: { scale: "mesh", number: 170 },
    bond: "bonded",
  },
  {
    id: "medium",
    name: "Diamond 325 mesh",
    grainUm: 45,
    grit: { scale: "mesh", number: 325 },
    bond: "bonded",
  },
  { id: "fine", name: "Diamond 15 µm", grainUm: 15, bond: "bonded" },
  { id: "prepolish", name: "Pre-polish 6 µm", grainUm: 6, bond: "bonded" },
  { id: "polish", name: "Cerium oxide on a pad", grainUm: 1.5, bond: "pad" },
];

/** The same stages' names in another language, by their ids. English is above. */
type StageNames = Readonly<Record<string, string>>;
const STAGE_NAMES: Readonly<Record<string, StageNames>> = {
  de: {
    rough: "Diamant 170 mesh",
    medium: "Diamant 325 mesh",
    fine: "Diamant 15 µm",
    prepolish: "Vorpolitur 6 µm",
    polish: "Ceroxid auf Polierpad",
  },
};

const named = new Map<string, readonly Stage[]>();

/** The stages of a plan that names none, called as a person of that language calls them. */
function defaultStages(language: string): readonly Stage[] {
  const names = STAGE_NAMES[language];
  if (!names) return DEFAULT_STAGES;
  const known =
    named.get(language) ?? DEFAULT_STAGES.map((stage) => ({ ...stage, name: names[stage.id] ?? stage.name }));
  named.set(language, known);
  return known;
}

/** The abrasives that a rig names, or the usual ones. */
export const stagesOf = (rig: Rig, language = "en"): readonly Stage[] =>
  rig.stages ?? defaultStages(language);
