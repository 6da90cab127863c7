/** What the sheet says of one tier, as plain text: its sentence, how it is held, where to stop, what to watch for, its stops. */
import type { Solid } from "../geometry/solid-types.ts";
import type { Stage } from "../plan/document.ts";
import type { Finding, SolvedPlan } from "../plan/solved.ts";
import { type Bench, type BenchTier, isGround, isWorked } from "./bench.ts";
import { type FlatFacet, flatFacet } from "./facet-drawing.ts";
import type { Part } from "./rig-pose.ts";
import type { SheetFormat } from "./sheet-format.ts";
import type { SheetWords } from "./sheet-words.ts";
import { endsByLooking } from "./stages.ts";
import { sayableStrokes } from "./strokes.ts";

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

export interface SheetStop {
  readonly label: string;
  /** The last width while it is ground, where the tier's widths are too many for a sentence. */
  readonly width: string | null;
  /** Whether there is anything to grind; without it the stop has no boxes. */
  readonly isGround: boolean;
}

export interface TierText {
  readonly name: string;
  readonly sentence: string;
  /** How the piece is held, and what calipers read at the end. */
  readonly held: string;
  /** True where the arm can't do it and `held` tells another way. */
  readonly isByHand: boolean;
  /** Stages that the tier is ground at, each with its place in the list of abrasives, from 1. */
  readonly stages: readonly { readonly place: number; readonly text: string }[];
  readonly notes: readonly string[];
  readonly stops: readonly SheetStop[];
  /** A facet as it should look when finished, and its size in words; null when nothing of the tier is left. */
  readonly picture: { readonly flat: FlatFacet; readonly size: string } | null;
}

/** A few different widths can be said in a sentence; more are written at the stops. */
const MOST_SAID = 3;

/** Runs of equal text made one. */
const runs = (texts: readonly string[]): readonly string[] =>
  texts.filter((text, i) => i === 0 || text !== texts[i - 1]);

/** Widths of the tier's facets while they are ground at a stage, in order, as figures without a unit. */
const groundWidths = (tier: BenchTier, i: number, { figure }: SheetFormat): readonly string[] =>
  runs(tier.facets.filter((f) => isGround(f, i)).map((f) => figure(f.stages[i].widthWhileGroundMm)));

/** The same where they are to be said: none when they are the final width, or too many for a sentence. */
function saidWidths({ format }: SheetMatter, tier: BenchTier, i: number): readonly string[] {
  const widths = groundWidths(tier, i, format);
  const isPlain = widths.length === 1 && widths[0] === format.figure(tier.stages[i].widthMm);
  return isPlain || widths.length > MOST_SAID ? [] : widths;
}

/** Null where nothing was calibrated: what holds then is said once, at the top. */
function strokesText({ words }: SheetMatter, tier: BenchTier, i: number): string | null {
  const counts = tier.facets
    .filter((f) => isGround(f, i))
    .flatMap((f) => f.stages[i].strokes ?? [])
    .map(sayableStrokes);
  return counts.length ? words.strokes(Math.min(...counts), Math.max(...counts)) : null;
}

/** "Coarse: until 9.8 mm wide; while ground first 10.2 mm, last 9.8 mm; 30 strokes" */
function stageText(matter: SheetMatter, tier: BenchTier, i: number, isShort: boolean): string {
  const { words, format, stages } = matter;
  const [name, width] = [stages[i].name, format.length(tier.stages[i].widthMm)];
  const widths = saidWidths(matter, tier, i);
  const strokes = endsByLooking(stages, i) ? null : strokesText(matter, tier, i);
  const said = isShort
    ? [words.stageShort(name, width, widths)]
    : [words.stage(name, width), widths.length > 0 ? words.whileGround(widths) : null];
  return [...said, strokes].filter((part) => part !== null).join("; ");
}

const stageTexts = (matter: SheetMatter, tier: BenchTier, isShort: boolean): TierText["stages"] =>
  tier.stages.flatMap((_, i) =>
    isWorked(tier, i) ? [{ place: i + 1, text: stageText(matter, tier, i, isShort) }] : [],
  );

/** Pivot and arm as the rig is to be set, with another arm length where only that reaches; null without a rig or out of reach. */
function armSetting({ bench }: SheetMatter, { tier, setting }: BenchTier) {
  if (!setting) return null;
  const { reachable, pivotHeightMm, armLengthMm } = setting;
  if (reachable) return { pivotHeightMm, armLengthMm };
  const other = bench.findings.find((f) => f.tier === tier && f.code === "other-arm-length");
  return other
    ? { pivotHeightMm: Number(other.data.pivotHeightMm), armLengthMm: Number(other.data.armLengthMm) }
    : null;
}

function heldText(matter: SheetMatter, tier: BenchTier): Pick<TierText, "held" | "isByHand"> {
  const { words, format } = matter;
  const { pose, setting } = tier;
  const flat = format.length(pose.planeMm + pose.radiusMm);
  const arm = armSetting(matter, tier);
  if (setting && !arm) {
    const lean = pose.armAngleDeg === 90 ? null : format.angle(90 - pose.armAngleDeg);
    return { held: `${words.outOfReach} ${words.guide(lean, flat)}`, isByHand: true };
  }
  const set = arm ? `${words.pivot(format.length(arm.pivotHeightMm), format.length(arm.armLengthMm))} ` : "";
  return { held: set + words.flatToSkin(flat), isByHand: false };
}

type Say = (data: Finding["data"]) => string;

/** What is said beside a tier, by the finding's code; the rest is told by the sentence or belongs to the screen. */
function sayings({ solved, words, stages, format }: SheetMatter, isShort: boolean): Record<string, Say> {
  const nameOf = (id: unknown) => solved.plan.tiers.find((t) => t.id === id)?.name ?? String(id);
  const stageName = (id: unknown) => stages.find((s) => s.id === id)?.name ?? String(id);
  const polished = isShort ? words.polishedShort : words.polished;
  return {
    "coarse-beside-polished": (data) => polished(nameOf(data.polishedTier)),
    "start-at-stage": (data) => words.startAt(stageName(data.stage)),
    "nothing-to-grind": () => words.nothingToGrind,
    "rule-unmet": () => words.unmet,
    "hits-lap": (data) => words.hitsLap(data.part as Part),
    "facet-over-rim": (data) => words.overRim(format.length(Number(data.overMm))),
    "facet-over-dead-centre": () => words.overCentre,
    "cut-before-turning": (data) =>
      words.beforeTurning(format.length(Number(data.pivotHeightMm)), format.length(Number(data.armLengthMm))),
  };
}

function noteTexts(matter: SheetMatter, tier: BenchTier, isShort: boolean): readonly string[] {
  const { bench, solved, words, stages } = matter;
  const say = sayings(matter, isShort);
  const { finish } = solved.plan.tiers.find((t) => t.id === tier.tier) ?? {};
  const isLeft = finish !== undefined && finish !== "polished" && tier.stageCount > 0;
  const { isByHand } = heldText(matter, tier);
  // What the arm or dop would hit is no matter where the piece is held by hand.
  const isMatter = ({ code }: Finding) => Object.hasOwn(say, code) && !(isByHand && code === "hits-lap");
  const own = bench.findings.filter((finding) => finding.tier === tier.tier && isMatter(finding));
  return [
    ...own.map((finding) => say[finding.code](finding.data)),
    ...(isLeft ? [words.endsWith(stages[tier.stageCount - 1].name, finish)] : []),
  ];
}

function stopTexts({ format }: SheetMatter, tier: BenchTier): readonly SheetStop[] {
  const last = tier.stageCount - 1;
  const isMany = last >= 0 && groundWidths(tier, last, format).length > MOST_SAID;
  const isThere = (k: number) => tier.stages.some((_, i) => i <= last && isGround(tier.facets[k], i));
  return tier.facets.map((facet, k) => ({
    label: facet.read.label,
    width: isMany && isThere(k) ? format.length(facet.stages[last].widthWhileGroundMm) : null,
    isGround: isThere(k),
  }));
}

/** The first facet of the tier that something is left of. */
function pictureOf({ solved, solid, format }: SheetMatter, index: number): TierText["picture"] {
  const { first, count } = solved.tiers[index];
  const facet = solid.facets.slice(first, first + count).find((own) => !own.swallowed);
  const flat = facet ? flatFacet(facet, solved.radiusMm, solved.plan.tiers[index].side) : null;
  if (!facet || !flat) return null;
  const [width, height] = [facet.width, facet.height].map((x) => format.length(x * solved.radiusMm));
  return { flat, size: `${width} \u00d7 ${height}` };
}

/** @param isShort says what several tiers have in common in fewer words: for a sheet with much on it */
export function tierText(matter: SheetMatter, index: number, isShort: boolean): TierText {
  const { solved, bench, words, format } = matter;
  const tier = bench.tiers[index];
  const { name, count } = solved.plan.tiers[index];
  const stops = stopTexts(matter, tier);
  const first = stops.find((stop) => stop.isGround) ?? stops[0];
  const width = format.length(tier.stages[tier.stageCount - 1]?.widthMm ?? 0);
  return {
    name,
    sentence: words.tier(name, count, format.angle(tier.armAngleDeg), first.label, width),
    ...heldText(matter, tier),
    stages: stageTexts(matter, tier, isShort),
    notes: noteTexts(matter, tier, isShort),
    stops,
    picture: pictureOf(matter, index),
  };
}
