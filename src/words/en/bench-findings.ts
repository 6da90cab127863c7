/** What the bench's findings say, by code. Names, lengths and angles come ready. */
export const benchFindings = {
  defaultStages:
    "The plan names no abrasives, so the usual ones stand in (common practice). Put in your own under Set-up.",
  startAtStage: (stage: string, depth: string) =>
    `Start this tier at ${stage}: it is only ${depth} deep, and coarser abrasives leave more damage than that.`,
  discDulls: (stage: string, strokes: string, percent: string, isWornOut: boolean) =>
    isWornOut
      ? `The disc of ${stage} won't last: this plan asks about ${strokes} strokes of it. Have a fresh one ready, and calibrate again when you change.`
      : `The disc of ${stage} dulls: after this plan's ${strokes} strokes it takes about ${percent} % of what it takes now. Cut a test facet again in between, or go by the width.`,
  nothingToGrind: "This tier has no depth: there is nothing to grind.",
  coarseBesidePolished: (stage: string, polished: string) =>
    `It is ground with ${stage} right beside polished facets of ${polished}. Wash piece, lap and hands first, or cover the polish.`,
  turnedOften: (n: string) =>
    `In this order the piece is turned over ${n} times, and each time costs alignment. Cut all tiers of one side first.`,
  cutBeforeTurning: (angle: string, height: string, arm: string) =>
    `It can be cut before the piece is turned over, the arm tipped up by ${angle}: pivot ${height} above the surface, arm ${arm}.`,
  reach: {
    "radius-inside-band": (needs: string, limit: string) =>
      `Out of reach: the facet would lie ${needs} from the lap's centre, and the good band begins at ${limit}.`,
    "radius-outside-band": (needs: string, limit: string) =>
      `Out of reach: the facet would lie ${needs} from the lap's centre, and the good band ends at ${limit}.`,
    "pivot-too-low": (needs: string, limit: string) =>
      `Out of reach: the pivot would stand at ${needs}, and its lowest place is ${limit}.`,
    "pivot-too-high": (needs: string, limit: string) =>
      `Out of reach: the pivot would stand at ${needs}, and its highest place is ${limit}.`,
  },
  otherArm: (arm: string, height: string, radius: string) =>
    `In reach with the arm at ${arm}: pivot ${height} up, ${radius} from the lap's centre.`,
  extension: (length: string, by: string) => `An arm of ${length}, ${by} longer, would reach.`,
  shorterArm: (length: string, by: string) => `An arm of ${length}, ${by} shorter, would reach.`,
  guideUpright: (flat: string) =>
    `Another way: hold the dop upright in a square guide block standing on the lap, and stop when flat to opposite skin measures ${flat}.`,
  guide: (lean: string, flat: string) =>
    `Another way: hold the dop in a guide block bored ${lean} from upright standing on the lap, and stop when flat to opposite skin measures ${flat}.`,
  parts: { arm: "The arm", chuck: "The chuck", dop: "The dop" },
  hitsLap: (part: string, mm: string) =>
    `${part} would be ${mm} inside the lap before the facet is finished.`,
  overRim: (mm: string) => `The facet hangs ${mm} over the lap's rim.`,
  overCentre: "The facet lies across the lap's centre, where the surface stands still.",
  undetermined: { angle: "angle", depth: "depth", both: "angle and depth" },
  undeterminedSays: (what: string) => `These measurements leave the ${what} open, so the plan's fills in.`,
  wouldHelp: (what: string, deg: string, mm: string) =>
    `Measuring ${what} would help most: then give or take ${deg} and ${mm}.`,
  disagree: (what: string, measured: string, fitted: string) =>
    `What was measured for ${what} (${measured}) doesn't go with the rest, which says ${fitted}. Measure it again.`,
} as const;
