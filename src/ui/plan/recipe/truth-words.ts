/** The truth of a tier as a line to read. */

import type { plan as en } from "../../../words/en/plan.ts";
import type { Formats } from "../../../words/formats.ts";
import type { Translated } from "../../../words/language.ts";
import type { Span, TierTruth } from "./tier-truth.ts";

type PlanWords = Translated<typeof en>;

/** Widths and edges are told to a tenth, as calipers on wet glass give them; depths to a hundredth. */
const WIDTH_DIGITS = 1;
const DEPTH_DIGITS = 2;

/** One figure when both ends read the same, else both. */
function spanInWords(
  span: Span,
  format: Formats,
  digits: number,
  one: (mm: string) => string,
  range: (least: string, most: string) => string,
): string {
  const [least, most] = [format.length(span.least, digits), format.length(span.most, digits)];
  return least === most ? one(most) : range(format.figure(span.least, digits).figure, most);
}

function meeting(truth: TierTruth, words: PlanWords["truth"], format: Formats): string | null {
  const { edges, touches, gaps } = truth;
  if (edges + touches + gaps === 0) return null;
  if (edges > 0 && touches + gaps === 0)
    return spanInWords(truth.edgeMm!, format, WIDTH_DIGITS, words.edges, words.edgesRange);
  if (touches > 0 && edges + gaps === 0) return words.touch;
  if (gaps > 0 && edges + touches === 0)
    return truth.gapMm
      ? spanInWords(truth.gapMm, format, WIDTH_DIGITS, words.gaps, words.gapsRange)
      : words.between;
  return words.mixed(String(edges), String(touches), String(gaps));
}

/** "share 1.4 mm edges; 3.2 mm wide; 0.85 mm deep" */
export function truthInWords(
  truth: TierTruth,
  words: PlanWords["truth"],
  format: Formats,
  /** That later tiers take some of its facets away, as a finding tells. */
  isLost: boolean,
): string {
  if (truth.left === 0) return truth.depthMm === 0 ? words.nothing : isLost ? words.none : words.neverCut;
  return [
    truth.left < truth.all ? words.some(String(truth.left), String(truth.all)) : null,
    meeting(truth, words, format),
    truth.widthMm ? spanInWords(truth.widthMm, format, WIDTH_DIGITS, words.wide, words.wideRange) : null,
    words.deep(format.length(truth.depthMm, DEPTH_DIGITS)),
  ]
    .filter((part) => part !== null)
    .join("; ");
}
