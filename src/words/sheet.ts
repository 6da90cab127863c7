/** The words that the bench sheet is written in, one object a language. Values come in already formatted, with units. */

import type { Part } from "../core/bench/rig/rig-pose.ts";
import type { Finish, Glass, Side } from "../core/plan/document.ts";
import type { CautionWords } from "./cautions.ts";
import type { Language } from "./language.ts";
import type { VerdictWords } from "./verdict.ts";

export interface SheetWords {
  readonly language: Language;
  readonly decimal: "." | ",";
  readonly units: { readonly mm: string; readonly inch: string; readonly deg: string };
  readonly glass: (glass: Glass) => string;
  /** "30 mm borosilicate, 37 facets, wheel of 96 stops" */
  readonly about: (diameter: string, glass: string, facets: number, wheel: string) => string;
  /** Whether the piece meets, as the screens say it. */
  readonly verdict: VerdictWords;
  readonly stop: (label: string) => string;
  readonly wheel: (stops: number | null) => string;
  readonly before: string;
  readonly preparations: Readonly<Record<string, string>>;
  readonly side: (side: Side) => string;
  readonly turnOver: (side: Side) => string;
  readonly trialFacet: string;
  /** Where the ink mark on the skin comes to on this side's wheel. */
  readonly mark: (reading: string) => string;
  /** "Belt: 12 facets at 20 deg, from stop 0, each ground 7.3 mm wide." */
  readonly tier: (name: string, count: number, angle: string, first: string, width: string) => string;
  readonly pivot: (height: string, arm: string) => string;
  /** What the far jaw of the calipers rests on, to go on a length: "to the edge of Girdle". */
  readonly opposite: (kind: "skin" | "edge" | "face", tier: string) => string;
  /** Where facets differ, two lengths. */
  readonly calipers: (mm: readonly string[], to: string) => string;
  /** Where the dop is in the way of calipers. */
  readonly noCalipers: string;
  readonly hingeMoves: (stage: string, by: string, isUp: boolean) => string;
  /** `lean` from upright; null for a dop held upright. */
  readonly guide: (lean: string | null, until: string) => string;
  readonly outOfReach: string;
  /** A stage with the width to stop at and, as figures without a unit, those that earlier facets have while they are ground. */
  readonly stage: (name: string, width: string, whileGround: readonly string[]) => string;
  /** For a tier that is left ground or pre-polished: the stage it ends with. */
  readonly endsWith: (stage: string, finish: Finish) => string;
  /** What the figures in brackets are. */
  readonly bracketWidths: string;
  /** What the figures under the stops are. */
  readonly stopWidths: (unit: string) => string;
  readonly strokes: (least: number, most: number) => string;
  /** What holds where a line names no strokes. */
  readonly strokesUnknown: string;
  /** Said once before the moves of `hingeMoves`. */
  readonly discs: string;
  readonly polishEnds: string;
  /** What `polished` asks for, where some tier does. */
  readonly washFirst: string;
  /** What is measured on a finished tier, in a word each, with a blank to write in after it. */
  readonly measures: readonly string[];
  /** What is to be written in those blanks. */
  readonly measured: string;
  /** What the pictures show. */
  readonly pictures: string;
  readonly swallowed: string;
  readonly nothingToGrind: string;
  readonly polished: (tier: string) => string;
  /** What the arm, chuck or dop would hit the lap with, and what helps. */
  readonly hitsLap: (part: Part) => string;
  readonly overRim: (mm: string) => string;
  readonly overCentre: string;
  /** For a back tier that can be cut before the piece is turned over. */
  readonly beforeTurning: (height: string, arm: string) => string;
  /** For a plan with more than two pages hold. */
  readonly tooMuch: string;
  readonly startAt: (stage: string) => string;
  readonly unmet: string;
  readonly gauges: string;
  readonly checkBar: (length: string) => string;
  readonly cautionsTitle: string;
  readonly cautions: CautionWords;
  readonly notes: string;
}
