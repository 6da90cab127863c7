/** What the bench's findings say, by code. */
import type { MeasureName } from "../../core/bench/as-cut/measurements.ts";
import type { BenchFindingWords } from "../bench-findings.ts";
import { isWornOut, roundPercent, roundStrokes } from "../rounding.ts";
import type { Say } from "../say.ts";
import { measures } from "./measures.ts";

const PARTS = { arm: "The arm", chuck: "The chuck", dop: "The dop" } as const;

const measured = (measure: MeasureName, value: number, say: Say): string =>
  measure === "readDeg" ? say.degrees(value) : say.length(value);
/** One length, or least and greatest. */
const figures = (mm: number | readonly [number, number], say: Say): string =>
  typeof mm === "number" ? say.length(mm) : `${say.length(mm[0])} to ${say.length(mm[1])}`;
const deviation = (deg: number, say: Say): string => say.degrees(deg, Math.abs(deg) < 0.1 ? 2 : 1);

export const benchFindings: BenchFindingWords = {
  "default-stages": () =>
    "The plan names no abrasives, so the usual ones stand in (common practice). Put in your own under Set-up.",
  "start-at-stage": ({ data }, say) =>
    `Start this tier at ${say.stage(data.stage)}: it is only ${say.length(data.depthMm)} deep, and coarser abrasives leave more damage than that.`,
  "disc-dulls": ({ data }, say) => {
    const [stage, strokes] = [say.stage(data.stage), say.number(roundStrokes(data.plannedStrokes))];
    return isWornOut(data.share)
      ? `The disc of ${stage} won't last: this plan asks about ${strokes} strokes of it. Have a fresh one ready, and calibrate again when you change.`
      : `The disc of ${stage} dulls: after this plan's ${strokes} strokes it takes about ${say.number(roundPercent(data.share))} % of what it takes now. Cut a test facet again in between, or go by the width.`;
  },
  "nothing-to-grind": () => "This tier has no depth: there is nothing to grind.",
  "coarse-beside-polished": ({ data }, say) =>
    `It is ground with ${say.stage(data.stage)} right beside polished facets of ${say.tier(data.polishedTier)}. Wash piece, lap and hands first, or cover the polish.`,
  "turned-over-often": ({ data }) =>
    `In this order the piece is turned over ${data.turnOvers} times, and each time costs alignment. Cut all tiers of one side first.`,
  "cut-before-turning": ({ data, tier = "" }, say) =>
    `It can be cut before the piece is turned over, the arm tipped up by ${say.angleOf(tier)}: pivot ${say.length(data.pivotHeightMm)} above the surface, arm ${say.length(data.armLengthMm)}.`,
  "radius-inside-band": ({ data }, say) =>
    `Out of reach: the facet would lie ${say.length(data.needsMm)} from the lap's centre, and the good band begins at ${say.length(data.limitMm)}.`,
  "radius-outside-band": ({ data }, say) =>
    `Out of reach: the facet would lie ${say.length(data.needsMm)} from the lap's centre, and the good band ends at ${say.length(data.limitMm)}.`,
  "pivot-too-low": ({ data }, say) =>
    `Out of reach: the pivot would stand at ${say.length(data.needsMm)}, and its lowest place is ${say.length(data.limitMm)}.`,
  "pivot-too-high": ({ data }, say) =>
    `Out of reach: the pivot would stand at ${say.length(data.needsMm)}, and its highest place is ${say.length(data.limitMm)}.`,
  "other-arm-length": ({ data }, say) =>
    `In reach with the arm at ${say.length(data.armLengthMm)}: pivot ${say.length(data.pivotHeightMm)} up, ${say.length(data.contactRadiusMm)} from the lap's centre.`,
  "extension-needed": ({ data }, say) =>
    `An arm of ${say.length(data.lengthMm)}, ${say.length(data.byMm)} longer, would reach.`,
  "shorter-arm-needed": ({ data }, say) =>
    `An arm of ${say.length(data.lengthMm)}, ${say.length(-data.byMm)} shorter, would reach.`,
  "guide-by-hand": ({ data }, say) => {
    const how =
      data.leanDeg === 0
        ? "upright in a square guide block"
        : `in a guide block bored ${say.degrees(data.leanDeg)} from upright`;
    const until =
      data.caliperMm === null
        ? `the facet is ${say.length(data.widthMm)} wide`
        : `calipers, one jaw flat on the facet, read ${figures(data.caliperMm, say)}`;
    return `Another way: hold the dop ${how} standing on the lap, and stop when ${until}.`;
  },
  "hits-lap": ({ data }, say) =>
    `${PARTS[data.part]} would be ${say.length(data.overlapMm)} inside the lap before the facet is finished.`,
  "facet-over-rim": ({ data }, say) => `The facet hangs ${say.length(data.overMm)} over the lap's rim.`,
  "facet-over-dead-centre": () => "The facet lies across the lap's centre, where the surface stands still.",
  undetermined: ({ data }, say) => {
    const what =
      data.angleFromPlan && data.depthFromPlan ? "angle and depth" : data.angleFromPlan ? "angle" : "depth";
    const open = `These measurements leave the ${what} open, so the plan's fills in.`;
    const help = data.wouldHelp;
    return help === null
      ? open
      : `${open} Measuring ${measures[help.measure]} would help most: then give or take ${deviation(help.armAngleSdDeg, say)} and ${say.length(help.depthSdMm)}.`;
  },
  "measurements-disagree": ({ data: { measure, measured: read, fitted } }, say) =>
    `What was measured for ${measures[measure]} (${measured(measure, read, say)}) doesn't go with the rest, which says ${measured(measure, fitted, say)}. Measure it again.`,
  "facet-too-deep": ({ data, facets = [] }, say) =>
    `${facets.map(say.facet).join()} went ${say.length(data.extraMm)} deeper than its tier.`,
};
