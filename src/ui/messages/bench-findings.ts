/** Findings of the bench in the words, units and names of the screen; those of the plan itself as they are said there. */
import { stagesOf } from "../../core/bench/bench.ts";
import type { Plan } from "../../core/plan/document.ts";
import type { Finding } from "../../core/plan/solved.ts";
import { benchFindings as de } from "../../words/de/bench-findings.ts";
import { benchFindings as en } from "../../words/en/bench-findings.ts";
import { dictionary, type Language, type Translated } from "../../words/language.ts";
import type { Formats } from "../use-format.ts";
import type { benchWords } from "./bench.ts";
import { findingInWords, type findingWords } from "./findings.ts";

export const benchFindingWords = dictionary(en, de);

type Measures = (typeof benchWords)[Language]["asCut"]["measures"];

interface AllWords {
  readonly bench: Translated<typeof en>;
  readonly plan: (typeof findingWords)[Language];
  /** What each measurement is called. */
  readonly measures: Measures;
}
/** A disc that takes less than this of what it takes now is as good as worn out. */
const WORN_OUT = 0.05;

type Reader = ReturnType<typeof readerOf>;

function readerOf({ data }: Finding, format: Formats, plan: Plan) {
  const number = (key: string): number => (typeof data[key] === "number" ? data[key] : 0);
  const text = (key: string): string => (typeof data[key] === "string" ? data[key] : "");
  const length = (value: number): string => format.length(value, Math.abs(value) < 1 ? 2 : 1);
  return {
    data,
    number,
    text,
    length,
    mm: (key: string): string => length(number(key)),
    deg: (key: string): string => format.degrees(number(key)),
    degrees: (value: number): string => format.degrees(value, Math.abs(value) < 0.1 ? 2 : 1),
    stage: (key: string): string =>
      stagesOf(plan.rig, format.locale.slice(0, 2)).find((stage) => stage.id === text(key))?.name ??
      text(key),
    tier: (key: string): string => plan.tiers.find((tier) => tier.id === text(key))?.name || text(key),
    tierAngle: (id: string | undefined): string =>
      format.armAngle(plan.tiers.find((tier) => tier.id === id)?.armAngleDeg ?? 0),
  };
}

const measureName = (name: unknown, measures: Measures): string =>
  typeof name === "string" && Object.hasOwn(measures, name) ? measures[name as keyof Measures] : String(name);

interface Help {
  readonly measure: string;
  readonly armAngleSdDeg: number;
  readonly depthSdMm: number;
}

function undetermined(read: Reader, words: AllWords["bench"], measures: Measures): string {
  const { angleFromPlan, depthFromPlan, wouldHelp } = read.data;
  const what = angleFromPlan && depthFromPlan ? "both" : angleFromPlan ? "angle" : "depth";
  const open = words.undeterminedSays(words.undetermined[what]);
  const help = wouldHelp as Help | null;
  if (!help) return open;
  const { measure, armAngleSdDeg, depthSdMm } = help;
  return `${open} ${words.wouldHelp(measureName(measure, measures), read.degrees(armAngleSdDeg), read.length(depthSdMm))}`;
}

function disagree(read: Reader, words: AllWords["bench"], measures: Measures): string {
  const says = read.text("measure") === "readDeg" ? read.deg : read.mm;
  return words.disagree(measureName(read.data.measure, measures), says("measured"), says("fitted"));
}

export function benchFindingInWords(finding: Finding, all: AllWords, format: Formats, plan: Plan): string {
  const words = all.bench;
  const read = readerOf(finding, format, plan);
  const { mm, deg } = read;
  if (Object.hasOwn(words.reach, finding.code))
    return words.reach[finding.code as keyof typeof words.reach](mm("needsMm"), mm("limitMm"));
  switch (finding.code) {
    case "default-stages":
      return words.defaultStages;
    case "start-at-stage":
      return words.startAtStage(read.stage("stage"), mm("depthMm"));
    case "disc-dulls":
      return words.discDulls(
        read.stage("stage"),
        format.number(Number(read.number("plannedStrokes").toPrecision(2)), 0),
        format.number(Math.max(5, 5 * Math.round(20 * read.number("share"))), 0),
        read.number("share") < WORN_OUT,
      );
    case "nothing-to-grind":
      return words.nothingToGrind;
    case "coarse-beside-polished":
      return words.coarseBesidePolished(read.stage("stage"), read.tier("polishedTier"));
    case "turned-over-often":
      return words.turnedOften(String(read.number("turnOvers")));
    case "cut-before-turning":
      return words.cutBeforeTurning(read.tierAngle(finding.tier), mm("pivotHeightMm"), mm("armLengthMm"));
    case "other-arm-length":
      return words.otherArm(mm("armLengthMm"), mm("pivotHeightMm"), mm("contactRadiusMm"));
    case "extension-needed":
      return words.extension(mm("lengthMm"), mm("byMm"));
    case "shorter-arm-needed":
      return words.shorterArm(mm("lengthMm"), read.length(-read.number("byMm")));
    case "guide-by-hand":
      return read.number("leanDeg") === 0
        ? words.guideUpright(mm("flatToSkinMm"))
        : words.guide(deg("leanDeg"), mm("flatToSkinMm"));
    case "hits-lap":
      return words.hitsLap(words.parts[read.text("part") as keyof typeof words.parts], mm("overlapMm"));
    case "facet-over-rim":
      return words.overRim(mm("overMm"));
    case "facet-over-dead-centre":
      return words.overCentre;
    case "undetermined":
      return undetermined(read, words, all.measures);
    case "measurements-disagree":
      return disagree(read, words, all.measures);
    default:
      return findingInWords(finding, all.plan, format, plan);
  }
}
