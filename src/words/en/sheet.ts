/** The bench sheet in English. */

import { glassInWords } from "../glasses.ts";
import type { SheetWords } from "../sheet.ts";
import { cautions } from "./cautions.ts";
import { counted, plural } from "./counted.ts";
import { glasses } from "./glasses.ts";
import { verdict } from "./verdict.ts";

const PARTS = { arm: "arm", chuck: "chuck", dop: "dop" } as const;

export const sheetWordsEn: SheetWords = {
  language: "en",
  decimal: ".",
  units: { mm: "mm", inch: "in", deg: "\u00b0" },
  glass: (glass) => glassInWords(glass, glasses),
  about: (diameter, glass, count, wheel) => `${diameter}, ${glass}, ${counted.facets(count)}, ${wheel}`,
  verdict,
  stop: (label) => `stop ${label}`,
  wheel: (stops) => (stops === null ? "free protractor" : `wheel of ${stops} stops`),
  before: "Before the first cut",
  preparations: {
    "choose-dop": "dop that fits",
    "clean-and-cement": "cleaned and cemented",
    "centre-and-check-run-out": "centred, run-out checked",
    "mark-stop-zero": "stop 0 marked in ink",
    "look-for-stress": "looked at between crossed polarisers for stress",
    "warm-slowly": "glass and cement warmed slowly",
    "test-facet-on-scrap": "test facet on scrap of the same glass",
  },
  side: (side) => (side === "front" ? "Front" : "Back"),
  turnOver: (side) => `Turn the piece over: ${side === "front" ? "front" : "back"}`,
  trialFacet:
    "Cement to new dop, mark stop 0, cut a trial facet lightly, measure how far it is off, then go on.",
  mark: (reading) => `The ink mark is up at ${reading}.`,
  tier: (name, count, angle, first, width) =>
    `${name}: ${counted.facets(count)} at ${angle}, from stop ${first}, ${plural(count, { one: "", other: "each " })}ground ${width} wide.`,
  pivot: (height, arm) => `Pivot ${height} above the disc, arm ${arm}.`,
  opposite: (kind, tier) =>
    kind === "skin" ? "to the skin" : kind === "edge" ? `to the edge of ${tier}` : `to the flat of ${tier}`,
  calipers: (mm, to) => `Calipers ${mm.join(" to ")} ${to}.`,
  noCalipers: "Go by the width: the dop is in the way of calipers.",
  hingeMoves: (stage, by, isUp) => `For ${stage} ${isUp ? "raise" : "lower"} the pivot by ${by}.`,
  guide: (lean, until) =>
    `By hand: hold the dop ${lean ? `in a guide leaning ${lean} from upright` : "upright in a square guide"}. To stop: ${until}`,
  outOfReach: "Out of this arm's reach.",
  stage: (name, width, widths) => `${name}: ${width}${widths.length > 0 ? ` (${widths.join(", ")})` : ""}`,
  endsWith: (stage, finish) =>
    `Stop after ${stage}: this tier stays ${finish === "ground" ? "ground" : "pre-polished"}.`,
  bracketWidths:
    "In brackets: width while ground of the first facet, then of the next; the last ends as said",
  stopWidths: (unit) => `Under a stop: its last width while ground, ${unit}`,
  strokes: (least, most) =>
    least === most
      ? `${most} ${plural(most, { one: "stroke", other: "strokes" })}`
      : `${least} to ${most} strokes`,
  strokesUnknown: "No strokes named: go by the width",
  discs: "Discs stand differently thick.",
  polishEnds: "Polish until a loupe shows no grey, at a slant against a lamp",
  washFirst: "Wash first: piece, lap and hands, before coarse grit",
  measures: ["width", "pole", "thick", "angle"],
  measured: "Blanks: as measured, width, across the pole, thickness by calipers, angle read",
  pictures: "Pictures: a facet when finished, true to size; solid: edge with a neighbour, dotted: round skin",
  swallowed: "Nothing of this facet is left on the finished piece.",
  nothingToGrind: "Nothing to grind: depth 0.",
  polished: (tier) => `Beside polished ${tier}: wash first.`,
  hitsLap: (part) =>
    part === "arm"
      ? "The arm would hit the lap: use a longer dop."
      : `The ${PARTS[part]} would hit the lap: use a narrower one or a longer dop.`,
  overRim: (mm) => `The facet hangs ${mm} over the lap's rim.`,
  overCentre: "The facet lies across the lap's centre, where nothing moves.",
  beforeTurning: (height, arm) =>
    `Can be cut before turning over, the arm tipped up: pivot ${height}, arm ${arm}.`,
  tooMuch: "This plan is too much for two pages: made smaller it could not be read at arm's length.",
  startAt: (stage) => `Start at ${stage}: coarser ones damage deeper than this tier.`,
  unmet: "The plan's rule for this tier can't be met; this is the nearest that can.",
  gauges: "Width gauges",
  checkBar: (length) => `${length}: check with a ruler first`,
  cautionsTitle: "Take care",
  cautions,
  notes: "Notes",
};
