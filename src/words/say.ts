/** What sentences about a plan are made with: its names, and numbers as the person counts them. */
import { startLabel } from "../core/bench/rig/set-up.ts";
import { READS_AS_NOTHING_MM } from "../core/check/findings-facets.ts";
import type { Plan } from "../core/plan/document.ts";
import type { Formats } from "./formats.ts";
import type { Language } from "./language.ts";
import { facetName, stageName, tierName } from "./names.ts";
import { stagesIn } from "./stages.ts";

export interface Say {
  readonly language: Language;
  /** To a hundredth below 1 mm, to a tenth above: as calipers give it. */
  readonly length: (mm: number) => string;
  /** To a hundredth, whatever its size. */
  readonly fine: (mm: number) => string;
  readonly degrees: (deg: number, digits?: number) => string;
  /** An angle of a tier as this person counts it. */
  readonly armAngle: (armAngleDeg: number) => string;
  readonly number: (value: number, digits?: number) => string;
  readonly tier: (id: string) => string;
  readonly facet: (id: string) => string;
  readonly stage: (id: string) => string;
  /** The arm angle of a tier. */
  readonly angleOf: (tierId: string) => string;
  /** What is engraved where a tier would start; null on a free protractor. */
  readonly stop: (tierId: string, startDeg: number) => string | null;
  /** Whether a length is too small to be read. */
  readonly isNothing: (mm: number) => boolean;
}

export function sayOf(plan: Plan, format: Formats, language: Language): Say {
  const stages = stagesIn(plan.rig, language);
  const tierWith = (id: string) => plan.tiers.find((tier) => tier.id === id);
  return {
    language,
    length: (mm) => format.length(mm, Math.abs(mm) < 1 ? 2 : 1),
    fine: (mm) => format.length(mm, 2),
    degrees: (deg, digits = 1) => format.degrees(deg, digits),
    armAngle: (deg) => format.armAngle(deg),
    number: (value, digits = 0) => format.number(value, digits),
    tier: (id) => tierName(plan, id, language),
    facet: (id) => facetName(plan, id, language),
    stage: (id) => stageName(stages, id),
    angleOf: (id) => format.armAngle(tierWith(id)?.armAngleDeg ?? 0),
    stop: (tierId, startDeg) => {
      const tier = tierWith(tierId);
      return tier ? startLabel(plan, tier, startDeg) : null;
    },
    isNothing: (mm) => mm < READS_AS_NOTHING_MM,
  };
}
