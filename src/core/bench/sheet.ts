/**
 * The bench sheet: one self-contained HTML page to print, black on white, large enough to read at arm's length. Each tier
 * is a sentence with its facet at true size, its stops in order with a tick box a stage, and what to watch for.
 */
import { cutBall } from "../geometry/solid.ts";
import type { Solid } from "../geometry/solid-types.ts";
import type { Stage } from "../plan/document.ts";
import { stopsOf } from "../plan/place.ts";
import type { Finding, SolvedPlan } from "../plan/solved.ts";
import { type Bench, type BenchTier, benchOf, stagesOf } from "./bench.ts";
import { CAUTIONS, cautionsAt } from "./cautions.ts";
import { flatFacet } from "./facet-drawing.ts";
import { html, type Markup } from "./markup.ts";
import { PREPARATIONS, type Step } from "./order.ts";
import { CHECK_BAR_MM, checkBar, facetPicture, gaugePicture } from "./sheet-drawings.ts";
import { type SheetFormat, type SheetUnit, sheetFormat } from "./sheet-format.ts";
import { MOST_STOPS_A_ROW, type Paper, sheetStyle, shortLine, stopRows, textSize } from "./sheet-style.ts";
import type { SheetWords } from "./sheet-words.ts";
import { endsByLooking } from "./stages.ts";
import { sayableStrokes } from "./strokes.ts";

export interface SheetOptions {
  readonly words: SheetWords;
  readonly unit: SheetUnit;
  readonly paper: Paper;
}

interface Page {
  readonly solved: SolvedPlan;
  readonly bench: Bench;
  /** Size of the running text. */
  readonly points: number;
  readonly stages: readonly Stage[];
  readonly solid: Solid;
  readonly words: SheetWords;
  readonly format: SheetFormat;
}

/** Facets wider than this take the whole line, so that the sentence keeps its room. */
const WIDE_PICTURE_MM = 60;
/** So few stops stand beside the words. */
const FEW_STOPS = 3;
/** Tiers with more stops than this may run over a page's end. */
const LONG_TIER = 48;

/** What has to fit on the paper, in lines of text: rows of boxes count as the lines that they take. */
function loadOf(solved: SolvedPlan, bench: Bench): number {
  const turns = solved.plan.tiers.filter((t, i) => i > 0 && t.side !== solved.plan.tiers[i - 1].side);
  const lines = bench.tiers.map((tier) => {
    const done = tier.stages.filter((_, i) => isDone(tier, i)).length;
    const rows = tier.facets.length <= FEW_STOPS ? 0 : Math.ceil(tier.facets.length / MOST_STOPS_A_ROW);
    return TIER_LINES + done + rows * (done + 2);
  });
  return lines.reduce((sum, n) => sum + n, TURN_LINES * turns.length);
}
const TIER_LINES = 5;
const TURN_LINES = 4;

function picture({ solved, solid, words, format }: Page, index: number): Markup {
  const { first } = solved.tiers[index];
  const facet = solid.facets[first];
  const flat = flatFacet(facet, solved.radiusMm, solved.plan.tiers[index].side);
  if (!flat) return html`<div class="picture"><p>${words.swallowed}</p></div>`;
  const size = `${format.length(facet.width * solved.radiusMm)} \u00d7 ${format.length(facet.height * solved.radiusMm)}`;
  const wide = facet.width * solved.radiusMm > WIDE_PICTURE_MM ? " wide" : "";
  return html`<div class="picture${wide}">${facetPicture(flat, size)}<p>${words.finished}<br>${size}<br>${words.trueSize}</p></div>`;
}

/** Runs of equal text made one. */
const runs = (texts: readonly string[]): readonly string[] =>
  texts.filter((text, i) => i === 0 || text !== texts[i - 1]);

/** A few different widths can be said in a sentence; more are written at the stops. */
const MOST_SAID = 3;

function whileGround({ words, format }: Page, tier: BenchTier, i: number): string | null {
  const widths = runs(tier.facets.map((f) => format.length(f.stages[i].widthWhileGroundMm)));
  const isPlain = widths.length === 1 && widths[0] === format.length(tier.stages[i].widthMm);
  return isPlain || widths.length > MOST_SAID ? null : words.whileGround(widths);
}

/** Null where nothing was calibrated: what holds then is said once, at the top. */
function strokesText({ words }: Page, tier: BenchTier, i: number): string | null {
  const counts = tier.facets.flatMap((f) => f.stages[i].strokes ?? []).map(sayableStrokes);
  return counts.length ? words.strokes(Math.min(...counts), Math.max(...counts)) : null;
}

/** Whether a tier is ground at a stage: it is deep enough for it, and not left as an earlier one leaves it. */
const isDone = (tier: BenchTier, i: number): boolean => tier.stages[i].depthMm > 0 && i < tier.stageCount;

/** A line that takes the whole width; shorter ones stand two beside each other. */
const LONG = html` class="long"`;

function stageLines(page: Page, tier: BenchTier): Markup {
  const { words, format, stages } = page;
  const lines = tier.stages.flatMap((stage, i) => {
    if (!isDone(tier, i)) return [];
    const parts = [
      words.stage(stages[i].name, format.length(stage.widthMm)),
      whileGround(page, tier, i),
      endsByLooking(stages, i) ? null : strokesText(page, tier, i),
    ].filter((part) => part !== null);
    return [{ place: i + 1, text: parts.join("; ") }];
  });
  const most = tier.facets.length > FEW_STOPS ? shortLine(page.points) : 0;
  return html`<ul class="stages">${lines.map(({ place, text }) => html`<li${text.length > most ? LONG : ""}><b>${place}</b> ${text}</li>`)}</ul>`;
}

function rigLines(page: Page, tier: BenchTier): readonly Markup[] {
  const { words, format } = page;
  const { setting, pose } = tier;
  const flat = format.length(pose.planeMm + pose.radiusMm);
  if (setting && !setting.reachable)
    return [
      html`<p class="note">${words.outOfReach} ${words.guide(pose.armAngleDeg === 90 ? null : format.angle(90 - pose.armAngleDeg), flat)}</p>`,
    ];
  const height = setting
    ? html`${words.pivot(format.length(setting.pivotHeightMm), format.length(setting.armLengthMm))} `
    : null;
  return [html`<p>${height}${words.flatToSkin(flat)}</p>`];
}

/** How the pivot follows discs of different thickness: the same for every tier, so said once. Nothing without a rig. */
function hingeMoves({ bench, words, format, stages }: Page): string | null {
  const discs = bench.tiers.find((tier) => tier.discs.length > 0)?.discs ?? [];
  const moves = discs.flatMap((disc, i) =>
    disc.moveHingeMm === 0
      ? []
      : [words.hingeMoves(stages[i].name, format.length(Math.abs(disc.moveHingeMm)), disc.moveHingeMm > 0)],
  );
  return moves.length > 0 ? [words.discs, ...moves].join(" ") : null;
}

function noteLines({ bench, solved, words, stages }: Page, tier: BenchTier): readonly Markup[] {
  const nameOf = (id: unknown) => solved.plan.tiers.find((t) => t.id === id)?.name ?? String(id);
  const stageName = (id: unknown) => stages.find((s) => s.id === id)?.name ?? String(id);
  const say: Readonly<Record<string, (data: Finding["data"]) => string>> = {
    "coarse-beside-polished": (data) => words.polished(nameOf(data.polishedTier)),
    "start-at-stage": (data) => words.startAt(stageName(data.stage)),
    "nothing-to-grind": () => words.nothingToGrind,
    "rule-unmet": () => words.unmet,
  };
  const { finish } = solved.plan.tiers.find((t) => t.id === tier.tier) ?? {};
  const isLeft = finish !== undefined && finish !== "polished" && tier.stageCount > 0;
  return [
    ...bench.findings
      .filter((finding) => finding.tier === tier.tier && Object.hasOwn(say, finding.code))
      .map((finding) => say[finding.code](finding.data)),
    ...(isLeft ? [words.endsWith(stages[tier.stageCount - 1].name, finish)] : []),
  ].map((note) => html`<span class="note">${note}</span> `);
}

/** Widths at the stops themselves, where they are too many for a sentence; nulls where the sentence says them. */
function stopWidths({ format }: Page, tier: BenchTier): readonly (string | null)[] {
  const last = tier.stageCount - 1;
  const widths = tier.facets.map((f) => format.length(f.stages[last]?.widthWhileGroundMm ?? 0));
  return runs(widths).length > MOST_SAID ? widths : widths.map(() => null);
}

/** Every stop in order as a narrow column: its number, and under it a box to tick for each stage. */
function stops(page: Page, tier: BenchTier): Markup {
  const boxes = tier.stages.map((_, i) => (isDone(tier, i) ? html`<i>${i + 1}</i>` : html``));
  const widths = stopWidths(page, tier);
  const longest = Math.max(...tier.facets.map((f) => f.read.label.length));
  const rows = stopRows(tier.facets.length, longest, widths[0] !== null);
  return html`<div class="stops ${widths[0] === null ? "row" : "wide"}${rows}">${tier.facets.map(
    (facet, k) => {
      const width = widths[k] === null ? null : html`<small>${widths[k]}</small>`;
      return html`<div class="stop"><strong>${facet.read.label}</strong>${width}${boxes}</div>`;
    },
  )}</div>`;
}

/** Named, because on a full sheet the boxes may stand on the page after the words. */
const measureLine = ({ words }: Page, name: string): Markup =>
  html`<p class="measure"><b>${name}</b> ${words.measure.split("  ").map((part) => html`<span>${part}</span> `)}</p>`;

/** The cautions of one step, in small at the place where it happens. */
const careLine = ({ words }: Page, kind: Step["kind"]): Markup =>
  html`<p class="care">${cautionsAt(kind)
    .map((caution) => words.cautions[caution])
    .join(" ")}</p>`;

function tierSection(page: Page, index: number): Markup {
  const { solved, bench, words, format } = page;
  const tier = bench.tiers[index];
  const { name, count, side } = solved.plan.tiers[index];
  const before = index === 0 ? "front" : solved.plan.tiers[index - 1].side;
  const width = format.length(tier.stages.at(-1)?.widthMm ?? 0);
  const sentence = words.tier(name, count, format.angle(tier.armAngleDeg), tier.facets[0].read.label, width);
  const turn =
    side === before
      ? null
      : html`<h2>${words.turnOver(side)}</h2><p>${words.trialFacet}</p>${careLine(page, "turn-over")}`;
  const few = count <= FEW_STOPS;
  const ticks = stops(page, tier);
  const text = html`<div><p class="say">${sentence}</p>${rigLines(page, tier)}${stageLines(page, tier)}<p>${noteLines(page, tier)}</p></div>`;
  const long = count > LONG_TIER ? " long" : "";
  return html`${turn}<section class="tier${long}"><div class="facet-and-words">${picture(page, index)}${text}${few ? ticks : null}</div><div class="ticking">${few ? null : ticks}${measureLine(page, name)}</div></section>`;
}

/** One gauge for each width that somebody stops at, in steps that an eye can tell apart, each exactly as long as it says. */
function gauges({ bench, words, format }: Page): Markup {
  const widths = bench.tiers.flatMap((tier) => [
    ...tier.stages.filter((_, i) => isDone(tier, i)).map((s) => s.widthMm),
    ...tier.facets.flatMap((f) => f.stages.map((s) => s.widthWhileGroundMm)),
  ]);
  const steps = new Set(
    widths
      .filter((mm) => mm > 0 && mm <= WIDE_PICTURE_MM)
      .map((mm) => Math.max(1, Math.round(mm / format.gaugeStepMm))),
  );
  const bars = [...steps]
    .sort((a, b) => a - b)
    .map((n) => n * format.gaugeStepMm)
    .map((mm) => gaugePicture({ mm, label: format.length(mm) }));
  return html`<section class="gauges"><h2>${words.gauges}</h2>${checkBar(words.checkBar(format.length(CHECK_BAR_MM)))}${bars}</section>`;
}

function header(page: Page): Markup {
  const { solved, words, format } = page;
  const { plan, radiusMm, facets } = solved;
  const about = words.about(
    format.length(2 * radiusMm),
    words.glass(plan.piece.glass),
    facets.length,
    words.wheel(stopsOf(plan, plan.tiers[0]?.side ?? "front")),
  );
  const boxes = PREPARATIONS.map(
    (what) => html`<li><span class="box"></span>${words.preparations[what]}</li>`,
  );
  return html`<h1>${plan.name}</h1><p class="about">${about}</p><h2>${words.before}</h2><ul class="before">${boxes}</ul>${careLine(page, "grind")}`;
}

function footer({ solved, words }: Page): Markup {
  const { notes } = solved.plan;
  const own = notes ? html`<h2>${words.notes}</h2><p class="notes">${notes}</p>` : null;
  const list = CAUTIONS.map((caution) => html`<li>${words.cautions[caution]}</li>`);
  return html`${own}<section class="full-care"><h2>${words.cautionsTitle}</h2><ul class="cautions">${list}</ul></section>`;
}

/** The whole sheet as one HTML document without scripts or outside files. */
export function sheetHtml(solved: SolvedPlan, { words, unit, paper }: SheetOptions): string {
  const bench = benchOf(solved);
  const points = textSize(loadOf(solved, bench) * words.wordiness, paper);
  const page: Page = {
    solved,
    bench,
    points,
    stages: stagesOf(solved.plan.rig),
    solid: cutBall(solved.planes),
    words,
    format: sheetFormat(words, unit),
  };
  const tiers = solved.plan.tiers.map((_, i) => tierSection(page, i));
  const style = { markup: sheetStyle(paper, points) };
  const isGuessed = page.bench.order.some((work) => work.minutesAreGuess);
  const legend = [
    words.tickStages(page.stages.map((s, i) => `${i + 1} ${s.name}`).join(", ")),
    words.edgeOfFacet,
    words.polishEnds,
    isGuessed ? words.strokesUnknown : null,
    hingeMoves(page),
  ].filter((line) => line !== null);
  const body = html`${header(page)}<p class="legend">${legend.map((line) => line.replace(/\.$/, "")).join(". ")}.</p>${tiers}${gauges(page)}${footer(page)}`;
  return html`<!doctype html><html lang="${words.language}"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><meta name="viewport" content="width=device-width"><title>${solved.plan.name}</title><style>${style}</style></head><body>${body}</body></html>\n`
    .markup;
}
