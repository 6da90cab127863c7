/**
 * The bench sheet: one self-contained HTML page to print, black on white, large enough to read at arm's length. Each tier
 * is a sentence with its facet at true size, its stops in order with a tick box a stage, and what to watch for.
 */
import { cutBall } from "../geometry/solid.ts";
import { stopsOf } from "../plan/place.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { benchOf, isGround, isWorked, stagesOf } from "./bench.ts";
import { CAUTIONS, cautionsAt } from "./cautions.ts";
import { html, type Markup } from "./markup.ts";
import { PREPARATIONS, type Step } from "./order.ts";
import { readMark } from "./set-up.ts";
import { CHECK_BAR_MM, checkBar, facetPicture, gaugePicture } from "./sheet-drawings.ts";
import { fitPages, isBeside, type SheetText, wordsWidthMm } from "./sheet-fit.ts";
import { type SheetUnit, sheetFormat } from "./sheet-format.ts";
import { isClose, measuresAt, type Paper, sheetStyle, shortLine, stopRows } from "./sheet-style.ts";
import { type SheetMatter, type TierText, tierText } from "./sheet-tier.ts";
import type { SheetWords } from "./sheet-words.ts";

export interface SheetOptions {
  readonly words: SheetWords;
  readonly unit: SheetUnit;
  readonly paper: Paper;
}

/** Facets wider than this take the whole line, so that the sentence keeps its room. */
const WIDE_PICTURE_MM = 60;
/** Tiers with more stops than this may run over a page's end. */
const LONG_TIER = 48;

function picture({ picture: own }: TierText, words: SheetWords, close: boolean): Markup {
  if (!own) return html`<div class="picture"><p>${words.swallowed}</p></div>`;
  const [left, right] = own.flat.box;
  const wide = right - left > WIDE_PICTURE_MM ? " wide" : "";
  // On a full sheet that pictures are true to size is said once, at the top.
  const caption = close ? html`${own.size}` : html`${words.finished}<br>${own.size}<br>${words.trueSize}`;
  return html`<div class="picture${wide}">${facetPicture(own.flat, own.size)}<p>${caption}</p></div>`;
}

/** Stages and what to watch for, in order; short lines stand two beside each other. */
function stageLines(text: TierText, points: number): Markup {
  const most = shortLine(points, wordsWidthMm(text));
  const kind = (own: string, isNote: boolean) =>
    [own.length > most ? "long" : "", isNote ? "note" : ""].filter(Boolean).join(" ");
  const stages = text.stages.map(
    ({ place, text: own }) => html`<li class="${kind(own, false)}"><b>${place}</b> ${own}</li>`,
  );
  const notes = text.notes.map((own) => html`<li class="${kind(own, true)}">${own}</li>`);
  return html`<ul class="stages">${stages}${notes}</ul>`;
}

/** How the pivot follows discs of different thickness: the same for every tier, so said once. Nothing without a rig. */
function hingeMoves({ bench, words, format, stages }: SheetMatter): string | null {
  const discs = bench.tiers.find((tier) => tier.discs.length > 0)?.discs ?? [];
  const moves = discs.flatMap((disc, i) =>
    disc.moveHingeMm === 0
      ? []
      : [words.hingeMoves(stages[i].name, format.length(Math.abs(disc.moveHingeMm)), disc.moveHingeMm > 0)],
  );
  return moves.length > 0 ? [words.discs, ...moves].join(" ") : null;
}

/** Every stop in order as a narrow column: its number, and under it a box to tick for each stage. */
function stopColumns({ stops, stages }: TierText): Markup {
  const boxes = stages.map(({ place }) => html`<i>${place}</i>`);
  const hasWidths = stops.some((stop) => stop.width !== null);
  const longest = Math.max(...stops.map((stop) => stop.label.length));
  const rows = stopRows(stops.length, longest, hasWidths);
  return html`<div class="stops ${hasWidths ? "wide" : "row"}${rows}">${stops.map((stop) => {
    const width = stop.width === null ? null : html`<small>${stop.width}</small>`;
    return html`<div class="stop"><strong>${stop.label}</strong>${width}${stop.isGround ? boxes : html`<i class="none">\u2013</i>`}</div>`;
  })}</div>`;
}

/** Named, because on a full sheet the boxes may stand on the page after the words. */
const measureLine = (words: SheetWords, name: string): Markup =>
  html`<p class="measure"><b>${name}</b> ${words.measure.split("  ").map((part) => html`<span>${part}</span> `)}</p>`;

/** The cautions of one step, in small at the place where it happens. */
const careText = (words: SheetWords, kind: Step["kind"]): string =>
  cautionsAt(kind)
    .map((caution) => words.cautions[caution])
    .join(" ");

/** What stands before a tier when the piece has to be turned over for it. */
function turnText({ solved, words }: SheetMatter, index: number): SheetText["tiers"][number]["turn"] {
  const { side } = solved.plan.tiers[index];
  const before = index === 0 ? "front" : solved.plan.tiers[index - 1].side;
  if (side === before) return null;
  const mark = readMark(solved.plan, side);
  const reading = mark.isStop ? words.stop(mark.label) : `${mark.label}${words.units.deg}`;
  return {
    title: `${words.turnOver(side)}. ${words.mark(reading)}`,
    text: words.trialFacet,
    care: careText(words, "turn-over"),
  };
}

function tierSection({ text, turn }: SheetText["tiers"][number], words: SheetWords, points: number): Markup {
  const over = turn
    ? html`<div class="turn"><h2>${turn.title}</h2><p>${turn.text}</p><p class="care">${turn.care}</p></div>`
    : null;
  const ticks = stopColumns(text);
  const beside = isBeside(text.stops);
  const held = text.isByHand ? html`<p class="note">${text.held}</p>` : html`<p>${text.held}</p>`;
  const said = html`<div><p class="say">${text.sentence}</p>${held}${stageLines(text, points)}</div>`;
  const long = text.stops.length > LONG_TIER ? " long" : "";
  return html`${over}<section class="tier${long}"><div class="facet-and-words">${picture(text, words, isClose(points))}${said}${beside ? ticks : null}</div><div class="ticking">${beside ? null : ticks}${measureLine(words, text.name)}</div></section>`;
}

/** Widths that somebody stops at, in steps that an eye can tell apart, mm. */
function gaugeWidths({ bench, format }: SheetMatter): readonly number[] {
  const widths = bench.tiers.flatMap((tier) =>
    tier.stages.flatMap((stage, i) =>
      isWorked(tier, i)
        ? [
            stage.widthMm,
            ...tier.facets.filter((f) => isGround(f, i)).map((f) => f.stages[i].widthWhileGroundMm),
          ]
        : [],
    ),
  );
  const steps = new Set(
    widths
      .filter((mm) => mm <= WIDE_PICTURE_MM)
      .map((mm) => Math.max(1, Math.round(mm / format.gaugeStepMm))),
  );
  return [...steps].sort((a, b) => a - b).map((n) => n * format.gaugeStepMm);
}

/** One gauge for each of these widths, each exactly as long as it says. */
function gauges({ gaugesTitle: title, gauges: own, checkBar: check }: SheetText, points: number): Markup {
  const { gaugeMm } = measuresAt(points);
  const bars = own.map((gauge) => html`${gaugePicture(gauge, gaugeMm)} `);
  return html`<section class="gauges"><h2>${title}</h2>${checkBar(check)} ${bars}</section>`;
}

function header(text: SheetText, words: SheetWords): Markup {
  const boxes = text.preparations.map((what) => html`<li><span class="box"></span>${what}</li>`);
  return html`<h1>${text.name}</h1><p class="about">${text.about}</p><h2>${words.before}</h2><ul class="before">${boxes}</ul><p class="care">${text.care}</p><p class="legend">${text.legend}</p>`;
}

function footer({ notes, cautions }: SheetText, words: SheetWords): Markup {
  const own = notes ? html`<h2>${words.notes}</h2><p class="notes">${notes}</p>` : null;
  const list = cautions.map((caution) => html`<li>${caution}</li>`);
  return html`${own}<section class="full-care"><h2>${words.cautionsTitle}</h2><ul class="cautions">${list}</ul></section>`;
}

/** What holds for all tiers, said once. */
function legendText(matter: SheetMatter, isShort: boolean): string {
  const { words, bench, stages } = matter;
  const isGuessed = bench.order.some((work) => work.minutesAreGuess);
  const lines = [
    words.tickStages(stages.map((s, i) => `${i + 1} ${s.name}`).join(", ")),
    words.edgeOfFacet,
    isShort ? words.shortWidths : null,
    isShort ? words.pictures : null,
    words.polishEnds,
    isGuessed ? words.strokesUnknown : null,
    hingeMoves(matter),
  ].filter((line) => line !== null);
  const sentences = lines.map((line) => line.charAt(0).toUpperCase() + line.slice(1).replace(/\.$/, ""));
  return `${sentences.join(". ")}.`;
}

/** Everything that is to stand on the sheet, in the words for a sheet with much or little on it. */
function sheetText(matter: SheetMatter, unit: SheetUnit, isShort: boolean): SheetText {
  const { solved, words, format } = matter;
  const { plan, radiusMm, facets } = solved;
  return {
    name: plan.name,
    about: words.about(
      format.length(2 * radiusMm),
      words.glass(plan.piece.glass),
      facets.length,
      words.wheel(stopsOf(plan, plan.tiers[0]?.side ?? "front")),
    ),
    preparations: PREPARATIONS.map((what) => words.preparations[what]),
    care: careText(words, "grind"),
    legend: legendText(matter, isShort),
    tiers: plan.tiers.map((_, i) => ({ text: tierText(matter, i, isShort), turn: turnText(matter, i) })),
    // On a full sheet the unit is said once, above the gauges.
    gaugesTitle: isShort ? `${words.gauges}, ${words.units[unit]}` : words.gauges,
    gauges: gaugeWidths(matter).map((mm) => ({
      mm,
      label: format.length(mm),
      caption: isShort ? format.figure(mm) : format.length(mm),
    })),
    checkBar: words.checkBar(format.length(CHECK_BAR_MM)),
    measure: words.measure,
    notes: plan.notes ?? "",
    cautions: CAUTIONS.map((caution) => words.cautions[caution]),
  };
}

/** The whole sheet as one HTML document without scripts or outside files. */
export function sheetHtml(solved: SolvedPlan, { words, unit, paper }: SheetOptions): string {
  const matter: SheetMatter = {
    solved,
    bench: benchOf(solved),
    stages: stagesOf(solved.plan.rig, words.language),
    solid: cutBall(solved.planes),
    words,
    format: sheetFormat(words, unit),
  };
  const { points, text, fits } = fitPages((isShort) => sheetText(matter, unit, isShort), paper);
  const tiers = text.tiers.map((tier) => tierSection(tier, words, points));
  const style = { markup: sheetStyle(paper, points) };
  const tooMuch = fits ? null : html`<p class="note">${words.tooMuch}</p>`;
  const body = html`${header(text, words)}${tooMuch}${tiers}${gauges(text, points)}${footer(text, words)}`;
  return html`<!doctype html><html lang="${words.language}"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><meta name="viewport" content="width=device-width"><title>${solved.plan.name}</title><style>${style}</style></head><body>${body}</body></html>\n`
    .markup;
}
