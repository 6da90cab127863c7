/**
 * The law of the profile's words, over plans as people make them and boxes as screens give them: none on another, on a knob,
 * on the glass, on the picture's name or beyond the picture; and knobs keep clear of each other and of the borders.
 */
import { describe, expect, it } from "vitest";
import type { Plan } from "../../../../src/core/plan/document.ts";
import { KNOB_PX } from "../../../../src/ui/plan/profile/knobs.ts";
import {
  meetRects,
  meetsCircle,
  meetsGlass,
  type Rect,
} from "../../../../src/ui/plan/profile/profile-labels.ts";
import { ANGLE, FRESH, labelsOf, layOutProfile } from "../../../../src/ui/plan/profile/profile-layout.ts";
import { nextTier } from "../../../../src/ui/plan/recipe/next-tier.ts";
import { planOf } from "../../../plans/generator.ts";

interface Case {
  readonly what: string;
  readonly box: { readonly width: number; readonly height: number };
  readonly isNamed: boolean;
}
/** The profile's boxes on a phone, on its side, on a tablet, and at 1280, 1440 and 1920: in the strip, and large. */
const CASES: readonly Case[] = [
  { what: "phone", box: { width: 390, height: 262 }, isNamed: false },
  { what: "on its side", box: { width: 306, height: 290 }, isNamed: false },
  { what: "tablet, strip", box: { width: 283, height: 240 }, isNamed: true },
  { what: "tablet, large", box: { width: 820, height: 376 }, isNamed: false },
  { what: "1280, strip", box: { width: 291, height: 216 }, isNamed: true },
  { what: "1440, strip", box: { width: 328, height: 243 }, isNamed: true },
  { what: "1920, strip", box: { width: 437, height: 288 }, isNamed: true },
  { what: "1440, large", box: { width: 950, height: 610 }, isNamed: false },
  { what: "1920, large", box: { width: 1267, height: 740 }, isNamed: false },
];
const PLANS = 120;
/** The longer of the two languages. */
const WORDS = {
  front: "Vorderseite",
  back: "Rückseite",
  dop: "Kittstock",
  pullIn: "nach innen ziehen schleift",
};
const inDegrees = (degrees: number, digits = 1) => `${degrees.toFixed(digits)}°`;

const layOut = (plan: Plan, { box, isNamed }: Case, chosen: string | null) => {
  const fresh = nextTier(plan, "next");
  const { frame, knobs } = layOutProfile(fresh ? [...plan.tiers, fresh] : plan.tiers, box, isNamed);
  const labels = labelsOf({ box, frame, knobs, isNamed, plan, chosen, words: WORDS, inDegrees });
  return { frame, knobs, labels };
};

/** What breaks the law, in words. */
function wrongIn(plan: Plan, one: Case, chosen: string | null): string[] {
  const { frame, knobs, labels } = layOut(plan, one, chosen);
  const { width, height } = one.box;
  const name: Rect = { left: 0, top: 0, right: 96, bottom: 44 };
  const wrong: string[] = [];
  labels.forEach(({ key, rect }, i) => {
    for (const other of labels.slice(0, i))
      if (meetRects(rect, other.rect)) wrong.push(`${key} on ${other.key}`);
    for (const { at, tierId } of knobs)
      if (meetsCircle(rect, at, KNOB_PX)) wrong.push(`${key} on the knob of ${tierId}`);
    if (meetsGlass(rect, frame)) wrong.push(`${key} on the glass`);
    if (one.isNamed && meetRects(rect, name)) wrong.push(`${key} on the picture's name`);
    if (rect.left < 0 || rect.top < 0 || rect.right > width || rect.bottom > height)
      wrong.push(`${key} beyond the picture`);
  });
  knobs.forEach(({ at: [x, y], tierId }, i) => {
    for (const other of knobs.slice(0, i))
      if (Math.hypot(other.at[0] - x, other.at[1] - y) < 2 * KNOB_PX)
        wrong.push(`knob ${tierId} on ${other.tierId}`);
    if (x + KNOB_PX > width || y < KNOB_PX || y > height - KNOB_PX)
      wrong.push(`knob ${tierId} beyond the picture`);
    if (one.isNamed && meetsCircle(name, [x, y], KNOB_PX)) wrong.push(`knob ${tierId} on the picture's name`);
  });
  return wrong;
}

describe.each(CASES)("the profile's words ($what)", (one) => {
  it("never lie on each other, on a knob or on the glass, whatever is planned and chosen", () => {
    for (let seed = 0; seed < PLANS; seed++) {
      const plan = planOf(seed);
      for (const chosen of [null, ...plan.tiers.map(({ id }) => id)])
        expect({ seed, chosen, wrong: wrongIn(plan, one, chosen) }).toEqual({ seed, chosen, wrong: [] });
    }
  });

  it("tell the chosen tier's angle in all but the fullest pictures, and what to do on an uncut marble", () => {
    let told = 0;
    let asked = 0;
    for (let seed = 0; seed < PLANS; seed++) {
      const plan = planOf(seed);
      for (const { id } of plan.tiers) {
        asked++;
        if (layOut(plan, one, id).labels.some(({ key }) => key === ANGLE)) told++;
      }
    }
    expect(told / asked).toBeGreaterThan(0.97);
    const uncut = { ...planOf(1), tiers: [] };
    const { frame, knobs } = layOutProfile(planOf(1).tiers.slice(0, 1), one.box, one.isNamed);
    const labels = labelsOf({ ...one, frame, knobs, plan: uncut, chosen: null, words: WORDS, inDegrees });
    expect(labels.map(({ key }) => key)).toContain(FRESH);
  });
});
