/** How the profile is laid out in its box: how large the piece is, and what is written beside it. */
import type { Plan, Tier } from "../../../core/plan/document.ts";
import type { Box } from "../drag/use-box.ts";
import { KNOB_PX, type Knob, placeKnobs, RING_PX } from "./knobs.ts";
import type { ProfileFrame } from "./profile-geometry.ts";
import { dopRect, groundWishes } from "./profile-ground.ts";
import { besideKnob, brokenInto, type Label, placeLabels, rightOf, type Wish } from "./profile-labels.ts";

/** Room around the half-disc: for degrees and knobs outside the rim, and names on the axis side. */
export const MARGIN_PX = { left: 62, right: 128, top: 72, bottom: 72 };
/** In a lower box knobs stand close to the rim, and degrees only where none do: the piece is larger for it. */
const SMALL_MARGIN_PX = { left: 20, right: 60, top: 32, bottom: 32 };
const SMALL_BELOW_PX = 460;
export const isSmallBox = ({ height }: Box): boolean => height < SMALL_BELOW_PX;
const LEAST_RADIUS_PX = 40;
/** What stands beside the knobs of a small picture, an angle or what to do: the piece makes room for it as far as it can. */
const BESIDE_SMALL_PX = 120;
/** In the strip the picture's name lies over its upper left corner, where the half-section leaves room. */
const NAME_PX = { width: 96, height: 44 };

export interface ProfileLayout {
  readonly frame: ProfileFrame;
  /** One for each tier, in their order. */
  readonly knobs: readonly Knob[];
}

/** The piece as large as box and knobs allow. @param isNamed whether the picture's name lies over its upper left corner */
export function layOutProfile(tiers: readonly Tier[], box: Box, isNamed: boolean): ProfileLayout {
  const frame = frameIn(box, isNamed);
  const knobs = placeKnobs(tiers, frame, isSmallBox(box));
  const beyond = Math.max(0, ...knobs.map(({ at }) => at[0] + RING_PX - box.width));
  if (beyond === 0) return { frame, knobs };
  // Knobs in several rows, in a narrow box: they take their room from the piece.
  const smaller = { ...frame, radius: Math.max(LEAST_RADIUS_PX, frame.radius - beyond - KNOB_PX) };
  return { frame: smaller, knobs: placeKnobs(tiers, smaller, isSmallBox(box)) };
}

/** The piece as large as the box allows, the axis upright. */
function frameIn(box: Box, isNamed: boolean): ProfileFrame {
  const { width, height } = box;
  const isSmall = isSmallBox(box);
  const margin = isSmall ? SMALL_MARGIN_PX : MARGIN_PX;
  const left = isNamed ? NAME_PX.width + RING_PX : margin.left;
  const byHeight = (height - margin.top - margin.bottom) / 2;
  const byWidth = width - left - margin.right;
  const radius = Math.max(LEAST_RADIUS_PX, Math.min(byHeight, byWidth));
  const used = left + radius + (isSmall ? BESIDE_SMALL_PX : margin.right);
  return { cx: left + Math.max(0, (width - used) / 2), cy: height / 2, radius };
}

export const ANGLE = "angle";
export const FRESH = "fresh";
/** An angle belongs to its knob as far as this. */
const ANGLE_FARTHEST_PX = 90;
/** Words of what to do become narrower where there is little room. */
const FRESH_LETTERS = [40, 18, 12, 8];

interface Written {
  readonly box: Box;
  readonly frame: ProfileFrame;
  readonly knobs: readonly Knob[];
  readonly isNamed: boolean;
  readonly plan: Plan;
  /** The tier whose angle is told; null for none. */
  readonly chosen: string | null;
  readonly words: Readonly<Record<"front" | "back" | "dop" | "pullIn", string>>;
  readonly inDegrees: (degrees: number, digits?: number) => string;
}

/** What is written in the picture: the chosen tier's angle and what to do first, then names and degrees. */
export function labelsOf({ box, frame, knobs, isNamed, plan, chosen, words, inDegrees }: Written): Label[] {
  const about = (knob: Knob) => (width: number, height: number) =>
    besideKnob(knob.at, width, height, ANGLE_FARTHEST_PX);
  const wishes: Wish[] = [];
  const tier = plan.tiers.find(({ id }) => id === chosen);
  const knob = knobs.find(({ tierId }) => tierId === chosen);
  if (tier && knob)
    wishes.push({ key: ANGLE, lines: [inDegrees(tier.armAngleDeg)], fontPx: 20, places: about(knob) });
  if (plan.tiers.length === 0 && knobs.length > 0) {
    const wish = (letters: number, places: Wish["places"]): Wish => ({
      key: FRESH,
      lines: brokenInto(words.pullIn, letters),
      fontPx: 17,
      places,
    });
    // rather broken into lines beside the plus than whole and farther away
    for (const letters of FRESH_LETTERS) wishes.push(wish(letters, (width) => [rightOf(knobs[0].at, width)]));
    for (const letters of FRESH_LETTERS) wishes.push(wish(letters, about(knobs[0])));
  }
  wishes.push(...groundWishes(frame, plan, words, (degrees) => inDegrees(degrees, 0)));
  const name = isNamed ? { left: 0, top: 0, right: NAME_PX.width, bottom: NAME_PX.height } : null;
  const taken = [dopRect(frame, plan), name].filter((rect) => rect !== null);
  return placeLabels(wishes, { box, frame, knobs, taken });
}
