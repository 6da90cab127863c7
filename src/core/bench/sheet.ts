/**
 * The bench sheet: one self-contained HTML page to print, black on white, large enough to read at arm's length. Each tier
 * is a sentence with its facet at true size, its stops in order with a tick box a stage, and what to watch for.
 */
import { cutBall } from "../geometry/solid.ts";
import type { Solid } from "../geometry/solid-types.ts";
import type { Stage } from "../plan/document.ts";
import { stopsOf } from "../plan/place.ts";
import type { Finding, SolvedPlan } from "../plan/solved.ts";
import { type Bench, type BenchFacet, type BenchTier, benchOf, stagesOf } from "./bench.ts";
import { CAUTIONS, cautionsAt } from "./cautions.ts";
import { flatFacet } from "./facet-drawing.ts";
import { html, type Markup } from "./markup.ts";
import { PREPARATIONS, type Step } from "./order.ts";
import { CHECK_BAR_MM, checkBar, facetPicture, gaugePicture } from "./sheet-drawings.ts";
import { type SheetFormat, type SheetUnit, sheetFormat } from "./sheet-format.ts";
import { type Paper, sheetStyle, textSize } from "./sheet-style.ts";
import type { SheetWords } from "./sheet-words.ts";

export interface SheetOptions {
  readonly words: SheetWords;
  readonly unit: SheetUnit;
  readonly paper: Paper;
}

interface Page {
  readonly solved: SolvedPlan;
  readonly bench: Bench;
  readonly stages: readonly Stage[];
  readonly solid: Solid;
  readonly words: SheetWords;
  readonly format: SheetFormat;
}

/** Facets wider than this take the whole line, so that the sentence keeps its room. */
const WIDE_PICTURE_MM = 60;
/** Tiers with more stops than this may run over a page's end. */
const LONG_TIER = 40;

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

function strokesText({ words }: Page, tier: BenchTier, i: number): string {
  const counts = tier.facets.flatMap((f) => f.stages[i].strokes ?? []).map((n) => Math.max(1, Math.round(n)));
  return counts.length ? words.strokes(Math.min(...counts), Math.max(...counts)) : words.strokesUnknown;
}

function stageLines(page: Page, tier: BenchTier): Markup {
  const { words, format, stages } = page;
  const isLast = (i: number) => i === stages.length - 1;
  return html`<ul class="stages">${tier.stages.map((stage, i) => {
    const name = stages[i].name;
    if (stage.depthMm <= 0) return html`<li><b>${i + 1}</b> ${words.skipStage(name)}</li>`;
    const parts = [
      words.stage(name, format.length(stage.widthMm)),
      whileGround(page, tier, i),
      isLast(i) ? null : strokesText(page, tier, i),
    ].filter((part) => part !== null);
    return html`<li><b>${i + 1}</b> ${parts.join("; ")}</li>`;
  })}</ul>`;
}

function rigLines(page: Page, tier: BenchTier): readonly Markup[] {
  const { words, format, stages } = page;
  const { setting, pose } = tier;
  const flat = format.length(pose.planeMm + pose.radiusMm);
  if (setting && !setting.reachable)
    return [
      html`<p class="note">${words.outOfReach} ${words.guide(pose.armAngleDeg === 90 ? null : format.angle(90 - pose.armAngleDeg), flat)}</p>`,
    ];
  const height = setting
    ? html`${words.pivot(format.length(setting.pivotHeightMm), format.length(setting.armLengthMm))} `
    : null;
  const moves = tier.discs
    .flatMap((disc, i) =>
      disc.moveHingeMm === 0
        ? []
        : [words.hingeMoves(stages[i].name, format.length(Math.abs(disc.moveHingeMm)), disc.moveHingeMm > 0)],
    )
    .join(" ");
  return [html`<p>${height}${words.flatToSkin(flat)} ${moves}</p>`];
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
  return bench.findings
    .filter((finding) => finding.tier === tier.tier && Object.hasOwn(say, finding.code))
    .map((finding) => html`<p class="note">${say[finding.code](finding.data)}</p>`);
}

/** Widths at the stops themselves, where they are too many for a sentence. */
function stopWidths(page: Page, tier: BenchTier, facet: BenchFacet): Markup | null {
  const last = tier.stages.length - 1;
  const widths = runs(tier.facets.map((f) => page.format.length(f.stages[last].widthWhileGroundMm)));
  return widths.length > MOST_SAID
    ? html`<small>${page.format.length(facet.stages[last].widthWhileGroundMm)}</small>`
    : null;
}

function stops(page: Page, tier: BenchTier): Markup {
  const boxes = tier.stages.map((stage, i) => (stage.depthMm > 0 ? html`<i>${i + 1}</i>` : html``));
  return html`<div class="stops">${tier.facets.map(
    (facet) =>
      html`<div class="stop"><strong>${facet.read.label}</strong>${stopWidths(page, tier, facet)}<div class="ticks">${boxes}</div></div>`,
  )}<p class="measure">${page.words.measure}</p></div>`;
}

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
  const text = html`<div><p class="say">${sentence}</p>${rigLines(page, tier)}${stageLines(page, tier)}${noteLines(page, tier)}</div>`;
  const long = count > LONG_TIER ? " long" : "";
  return html`${turn}<section class="tier${long}"><div class="facet-and-words">${picture(page, index)}${text}</div>${stops(page, tier)}</section>`;
}

/** One gauge for each width that somebody stops at, told apart as far as the sheet writes them. */
function gauges({ bench, words, format }: Page): Markup {
  const widths = bench.tiers.flatMap((tier) => [
    ...tier.stages.map((s) => s.widthMm),
    ...tier.facets.flatMap((f) => f.stages.map((s) => s.widthWhileGroundMm)),
  ]);
  const byLabel = new Map(
    widths
      .filter((mm) => mm > 0 && mm <= WIDE_PICTURE_MM)
      .sort((a, b) => a - b)
      .map((mm) => [format.length(mm), mm] as const),
  );
  const bars = [...byLabel].map(([label, mm]) => gaugePicture({ mm, label }));
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
  const page: Page = {
    solved,
    bench: benchOf(solved),
    stages: stagesOf(solved.plan.rig),
    solid: cutBall(solved.planes),
    words,
    format: sheetFormat(words, unit),
  };
  const tiers = solved.plan.tiers.map((_, i) => tierSection(page, i));
  const style = { markup: sheetStyle(paper, textSize(solved.facets.length, tiers.length, paper)) };
  const legend = [
    words.edgeOfFacet,
    words.polishEnds,
    words.tickStages(page.stages.map((s) => s.name).join(", ")),
  ];
  const body = html`${header(page)}<p>${legend.join(". ").replaceAll("..", ".")}</p>${tiers}${gauges(page)}${footer(page)}`;
  return html`<!doctype html><html lang="${words.language}"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><meta name="viewport" content="width=device-width"><title>${solved.plan.name}</title><style>${style}</style></head><body>${body}</body></html>\n`
    .markup;
}
