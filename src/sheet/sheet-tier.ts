/** What the sheet says of one tier, as plain text: its sentence, how it is held, where to stop, what to watch for, its stops. */

import { caliperFigures } from "../core/bench/as-cut/caliper.ts";
import { type Bench, type BenchTier, isGround, isWorked } from "../core/bench/bench.ts";
import type { Finding, FindingData } from "../core/bench/bench-finding.ts";
import { endsByLooking } from "../core/bench/stages/stages.ts";
import { sayableStrokes } from "../core/bench/stages/strokes.ts";
import type { Solid } from "../core/geometry/solid-types.ts";
import type { Stage } from "../core/plan/document.ts";
import type { SolvedPlan } from "../core/plan/solved.ts";
import { stageName, tierName, tierNameAt } from "../words/names.ts";
import type { SheetWords } from "../words/sheet.ts";
import { type FlatFacet, flatFacet } from "./facet-drawing.ts";
import type { SheetFormat } from "./sheet-format.ts";

/** All that the sheet is made from. */
export interface SheetMatter {
  readonly solved: SolvedPlan;
  readonly bench: Bench;
  readonly stages: readonly Stage[];
  /** The finished piece. */
  readonly solid: Solid;
  readonly words: SheetWords;
  readonly format: SheetFormat;
}

interface SheetStop {
  readonly label: string;
  /** The last width while it is ground, a figure without its unit, where the tier's widths are too many for a sentence. */
  readonly width: string | null;
  /** Whether there is anything to grind; without it the stop has no boxes. */
  readonly isGround: boolean;
}

interface StageText {
  readonly place: number;
  readonly text: string;
  /** Whether widths stand in brackets. */
  readonly hasBrackets: boolean;
}

export interface TierText {
  readonly name: string;
  readonly sentence: string;
  /** How the piece is held, and what calipers read at the end. */
  readonly held: string;
  /** True where the arm can't do it and `held` tells another way. */
  readonly isByHand: boolean;
  /** Stages that the tier is ground at, each with its place in the list of abrasives, from 1. */
  readonly stages: readonly StageText[];
  readonly notes: readonly string[];
  readonly stops: readonly SheetStop[];
  /** A facet as it should look when finished, and its size in words; null when nothing of the tier is left. */
  readonly picture: { readonly flat: FlatFacet; readonly size: string } | null;
}

/** A few different widths can be said beside a stage; more are written at the stops. */
const MOST_SAID = 3;

/** Runs of equal text made one. */
const runs = (texts: readonly string[]): readonly string[] =>
  texts.filter((text, i) => i === 0 || text !== texts[i - 1]);

/** Widths of the tier's facets while they are ground at a stage, in order, as figures without a unit. */
const groundWidths = (tier: BenchTier, i: number, { figure }: SheetFormat): readonly string[] =>
  runs(tier.facets.filter((f) => isGround(f, i)).map((f) => figure(f.stages[i].widthWhileGroundMm)));

/**
 * How widths while ground are told: not at all where they are the width to stop at, those of the first facets where the last
 * comes to that, else (facets that stand unevenly) one by one at the stops.
 */
function toldWidths({ format }: SheetMatter, tier: BenchTier, i: number): readonly string[] | "at-stops" {
  const widths = groundWidths(tier, i, format);
  if (widths[widths.length - 1] !== format.figure(tier.stages[i].widthMm)) return "at-stops";
  return widths.length > MOST_SAID ? "at-stops" : widths.slice(0, -1);
}

/** Null where nothing was calibrated: what holds then is said once, at the top. */
function strokesText({ words }: SheetMatter, tier: BenchTier, i: number): string | null {
  const counts = tier.facets
    .filter((f) => isGround(f, i))
    .flatMap((f) => f.stages[i].strokes ?? [])
    .map(sayableStrokes);
  return counts.length ? words.strokes(Math.min(...counts), Math.max(...counts)) : null;
}

/** "Coarse: 9.8 mm (10.2); 30 strokes" */
function stageText(matter: SheetMatter, tier: BenchTier, i: number): StageText {
  const { words, format, stages } = matter;
  const told = toldWidths(matter, tier, i);
  const inBrackets = told === "at-stops" ? [] : told;
  const said = words.stage(stages[i].name, format.length(tier.stages[i].widthMm), inBrackets);
  const strokes = endsByLooking(stages, i) ? null : strokesText(matter, tier, i);
  return {
    place: i + 1,
    text: strokes === null ? said : `${said}; ${strokes}`,
    hasBrackets: inBrackets.length > 0,
  };
}

const stageTexts = (matter: SheetMatter, tier: BenchTier): TierText["stages"] =>
  tier.stages.flatMap((_, i) => (isWorked(tier, i) ? [stageText(matter, tier, i)] : []));

/** Pivot and arm as the rig is to be set, with another arm length where only that reaches; null without a rig or out of reach. */
function armSetting({ bench }: SheetMatter, { tier, setting }: BenchTier) {
  if (!setting) return null;
  const { reachable, pivotHeightMm, armLengthMm } = setting;
  if (reachable) return { pivotHeightMm, armLengthMm };
  const other = bench.findings.find((f) => f.code === "other-arm-length" && f.tier === tier);
  return other?.code === "other-arm-length" ? other.data : null;
}

/** What calipers read on the finished tier and what stands opposite; the width where the dop is in their way. */
function caliperText({ solved, words, format }: SheetMatter, { caliper }: BenchTier): string {
  const figures = caliperFigures(caliper);
  if (!caliper || figures === null) return "";
  if (caliper.isBlocked) return words.noCalipers;
  const { opposite } = caliper;
  const to = words.opposite(
    opposite.kind,
    opposite.kind === "skin" ? "" : tierName(solved.plan, opposite.tier, words.language),
  );
  return words.calipers([figures].flat().map(format.length), to);
}

function heldText(matter: SheetMatter, tier: BenchTier): Pick<TierText, "held" | "isByHand"> {
  const { words, format } = matter;
  const { pose, setting } = tier;
  const until = caliperText(matter, tier);
  const arm = armSetting(matter, tier);
  if (setting && !arm) {
    const lean = pose.armAngleDeg === 90 ? null : format.angle(90 - pose.armAngleDeg);
    return { held: `${words.outOfReach} ${words.guide(lean, until)}`, isByHand: true };
  }
  const set = arm ? `${words.pivot(format.length(arm.pivotHeightMm), format.length(arm.armLengthMm))} ` : "";
  return { held: (set + until).trim(), isByHand: false };
}

/** Findings that are told beside a tier; the rest is told by the sentence or belongs to the screen. */
type NotedCode =
  | "coarse-beside-polished"
  | "start-at-stage"
  | "nothing-to-grind"
  | "rule-unmet"
  | "hits-lap"
  | "facet-over-rim"
  | "facet-over-dead-centre"
  | "cut-before-turning";
type Sayings = { readonly [C in NotedCode]: (data: FindingData[C]) => string };

function sayings({ solved, words, stages, format }: SheetMatter): Sayings {
  const nameOf = (id: string) => tierName(solved.plan, id, words.language);

  return {
    "coarse-beside-polished": ({ polishedTier }) => words.polished(nameOf(polishedTier)),
    "start-at-stage": ({ stage }) => words.startAt(stageName(stages, stage)),
    "nothing-to-grind": () => words.nothingToGrind,
    "rule-unmet": () => words.unmet,
    "hits-lap": ({ part }) => words.hitsLap(part),
    "facet-over-rim": ({ overMm }) => words.overRim(format.length(overMm)),
    "facet-over-dead-centre": () => words.overCentre,
    "cut-before-turning": ({ pivotHeightMm, armLengthMm }) =>
      words.beforeTurning(format.length(pivotHeightMm), format.length(armLengthMm)),
  };
}

const isNoted = (finding: Finding, say: Sayings): finding is Finding<NotedCode> =>
  Object.hasOwn(say, finding.code);

const noted = <C extends NotedCode>({ code, data }: Finding<C>, say: Sayings): string => say[code](data);

function noteTexts(matter: SheetMatter, tier: BenchTier): readonly string[] {
  const { bench, solved, words, stages } = matter;
  const say = sayings(matter);
  const { finish } = solved.plan.tiers.find((t) => t.id === tier.tier) ?? {};
  const isLeft = finish !== undefined && finish !== "polished" && tier.stageCount > 0;
  const { isByHand } = heldText(matter, tier);
  // What the arm or dop would hit is no matter where the piece is held by hand.
  const isMatter = ({ code }: Finding) => !(isByHand && code === "hits-lap");
  const own = bench.findings.filter((finding) => finding.tier === tier.tier && isMatter(finding));
  return [
    ...own.flatMap((finding) => (isNoted(finding, say) ? [noted(finding, say)] : [])),
    ...(isLeft ? [words.endsWith(stages[tier.stageCount - 1].name, finish)] : []),
  ];
}

function stopTexts(matter: SheetMatter, tier: BenchTier): readonly SheetStop[] {
  const last = tier.stageCount - 1;
  const isMany = last >= 0 && isWorked(tier, last) && toldWidths(matter, tier, last) === "at-stops";
  const isThere = (k: number) => tier.stages.some((_, i) => i <= last && isGround(tier.facets[k], i));
  return tier.facets.map((facet, k) => ({
    label: facet.read.label,
    width: isMany && isThere(k) ? matter.format.figure(facet.stages[last].widthWhileGroundMm) : null,
    isGround: isThere(k),
  }));
}

/** The first facet of the tier that something is left of. */
function pictureOf({ solved, solid, format }: SheetMatter, index: number): TierText["picture"] {
  const { first, count } = solved.tiers[index];
  const facet = solid.facets.slice(first, first + count).find((own) => !own.swallowed);
  const flat = facet ? flatFacet(facet, solved.radiusMm, solved.plan.tiers[index].side) : null;
  if (!facet || !flat) return null;
  const width = format.figure(facet.width * solved.radiusMm);
  const height = format.length(facet.height * solved.radiusMm);
  return { flat, size: `${width} \u00d7 ${height}` };
}

export function tierText(matter: SheetMatter, index: number): TierText {
  const { solved, bench, words, format } = matter;
  const tier = bench.tiers[index];
  const { count } = solved.plan.tiers[index];
  const name = tierNameAt(solved.plan, index, words.language);
  const stops = stopTexts(matter, tier);
  const first = stops.find((stop) => stop.isGround) ?? stops[0];
  const width = format.length(tier.stages[tier.stageCount - 1]?.widthMm ?? 0);
  return {
    name,
    sentence: words.tier(name, count, format.angle(tier.armAngleDeg), first.label, width),
    ...heldText(matter, tier),
    stages: stageTexts(matter, tier),
    notes: noteTexts(matter, tier),
    stops,
    picture: pictureOf(matter, index),
  };
}
