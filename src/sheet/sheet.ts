/**
 * The bench sheet: one self-contained HTML page to print, black on white, large enough to read at arm's length. Each tier
 * is a sentence with its facet at true size, its stops in order with a tick box a stage, and what to watch for.
 */

import { benchOf, isGround, isWorked } from "../core/bench/bench.ts";
import { CAUTIONS, cautionsAt } from "../core/bench/order/cautions.ts";
import { PREPARATIONS, type Step } from "../core/bench/order/order.ts";
import { readMark } from "../core/bench/rig/set-up.ts";
import { reportPlan } from "../core/check/report.ts";
import { verdictOf } from "../core/check/verdict.ts";
import { cutBall } from "../core/geometry/solid.ts";
import { stopsOf } from "../core/plan/place.ts";
import type { SolvedPlan } from "../core/plan/solved.ts";
import { tierName } from "../words/names.ts";
import type { SheetWords } from "../words/sheet.ts";
import { stagesIn } from "../words/stages.ts";
import { verdictInWords } from "../words/verdict.ts";
import { html, type Markup } from "./markup.ts";
import { CHECK_BAR_MM, checkBar, facetPicture, gaugePicture } from "./sheet-drawings.ts";
import { type FacePart, faceRules } from "./sheet-face.ts";
import { fitPages, type SheetText } from "./sheet-fit.ts";
import { type SheetUnit, sheetFormat } from "./sheet-format.ts";
import { besidePictureMm, isShortLine, isWide, type TierLayout } from "./sheet-layout.ts";
import { lineMm, measuresAt, type Paper, type SheetType, sheetStyle } from "./sheet-style.ts";
import { type SheetMatter, type TierText, tierText } from "./sheet-tier.ts";

export interface SheetOptions {
  readonly words: SheetWords;
  readonly unit: SheetUnit;
  readonly paper: Paper;
  /** The typeface that goes into the file. */
  readonly face: readonly FacePart[];
}

/** Wider facets have no gauge: calipers tell them better. */
const WIDEST_GAUGE_MM = 60;
/** Tiers with more stops than this may run over a page's end. */
const LONG_TIER = 48;

/** What the pictures are is said once, at the top. */
function picture(text: TierText, words: SheetWords): Markup {
  const { picture: own } = text;
  if (!own) return html`<div class="picture"><p>${words.swallowed}</p></div>`;
  const wide = isWide(text) ? " wide" : "";
  return html`<div class="picture${wide}">${facetPicture(own.flat, own.size)}<p>${own.size}</p></div>`;
}

/** Stages whose boxes stand apart, in order; short ones stand two beside each other. */
function stageLines(text: TierText, widthMm: number, type: SheetType): Markup {
  const stages = text.stages.map(({ place, text: own }) => {
    const kind = isShortLine(own, widthMm, type) ? "" : "long";
    return html`<li class="${kind}"><b>${place}</b>${own}</li>`;
  });
  return html`<ul class="stages">${stages}</ul>`;
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

/** Blanks to write down what was measured. */
const blanks = ({ measures }: SheetWords): Markup =>
  html`<div class="measure">${measures.map((what) => html`<span>${what}</span><i></i>`)}</div>`;

interface TablePart {
  readonly stages: TierText["stages"];
  readonly stops: TierText["stops"];
  /** What stands before the stops. */
  readonly head: Markup | null;
}

/** Numbers beside each other stay apart also where the text is taken from the paper: a letter of its own, not only room. */
const SPACE = html`<i>\u00a0</i>`;

/** Stops in order with a box for each stage under every one; a stop with nothing to grind has a dash. */
function stopTable({ stages, stops, head }: TablePart, { kind }: TierLayout, name: string): Markup {
  const heads = stops.map(({ label, width }) => {
    const own = width === null ? null : html`<small>${width}${SPACE}</small>`;
    return html`<th scope="col" class="stop"><strong>${label}${SPACE}</strong>${own}</th>`;
  });
  const rows = stages.map(({ place, text }, i) => {
    const boxes = stops.map((stop) =>
      stop.isGround ? html`<td></td>` : html`<td class="none">${i === 0 ? "\u2013" : ""}</td>`,
    );
    const said = kind === "apart" ? null : html`${text}`;
    return html`<tr><th scope="row"><b>${place}</b>${said}</th>${boxes}</tr>`;
  });
  return html`<table class="ticks ${name}"><colgroup><col class="w"><col span="${stops.length}" class="s"></colgroup><thead><tr><td class="none">${head}</td>${heads}</tr></thead><tbody>${rows}</tbody></table>`;
}

const partsOf = <T>(items: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(items.length / Math.max(1, size)) }, (_, i) =>
    items.slice(i * size, (i + 1) * size),
  );

/** A tier's stops in as many rows, or its stages in as many tables, as they stand in. */
function stopTables(text: TierText, layout: TierLayout, words: SheetWords, name: string): Markup {
  const { kind, perRow, perTable } = layout;
  const tables = partsOf(text.stops, perRow).flatMap((stops) =>
    partsOf(text.stages, perTable).map((stages, i) => {
      const head = kind === "apart" || i > 0 ? null : blanks(words);
      return stopTable({ stages, stops, head }, layout, name);
    }),
  );
  return html`<div class="tables">${tables}</div>`;
}

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

/** What is said of a tier beside its picture. */
function tierWords(text: TierText): Markup {
  const notes = text.notes.map((note) => html` <b class="note">${note}</b>`);
  const held = text.isByHand ? html`<b class="note">${text.held}</b>` : html`${text.held}`;
  return html`<p class="say">${text.sentence}</p><p class="held">${held}${notes}</p>`;
}

const turnOver = (turn: NonNullable<SheetText["tiers"][number]["turn"]>): Markup =>
  html`<section class="turn"><h2>${turn.title}</h2><p>${turn.text}</p><p class="care">${turn.care}</p></section>`;

interface Setting {
  readonly words: SheetWords;
  readonly paper: Paper;
  readonly type: SheetType;
}

function tierSection(
  { text, turn }: SheetText["tiers"][number],
  layout: TierLayout,
  { words, paper, type }: Setting,
  name: string,
): Markup {
  const { kind } = layout;
  const ticks = stopTables(text, layout, words, name);
  const widthMm = besidePictureMm(text, lineMm(paper), type);
  const lines = kind === "apart" ? stageLines(text, widthMm, type) : null;
  const beside = html`<div>${tierWords(text)}${lines}${kind === "beside" ? ticks : null}</div>`;
  const below = kind === "apart" ? html`${ticks}${blanks(words)}` : kind === "below" ? ticks : null;
  const long = text.stops.length > LONG_TIER ? " long" : "";
  return html`${turn ? turnOver(turn) : null}<section class="tier${long}"><div class="facet-and-words">${picture(text, words)}${beside}</div>${below}</section>`;
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
      .filter((mm) => mm <= WIDEST_GAUGE_MM)
      .map((mm) => Math.max(1, Math.round(mm / format.gaugeStepMm))),
  );
  return [...steps].sort((a, b) => a - b).map((n) => n * format.gaugeStepMm);
}

/** One gauge for each of these widths, each exactly as long as it says. */
function gauges({ gaugesTitle: title, gauges: own, checkBar: check }: SheetText, type: SheetType): Markup {
  const { gaugeMm } = measuresAt(type);
  const bars = own.map((gauge) => html`${gaugePicture(gauge, gaugeMm)} `);
  return html`<section class="run-in gauges"><h2>${title}</h2> ${checkBar(check)} ${bars}</section>`;
}

function header(text: SheetText): Markup {
  const boxes = text.preparations.map((what) => html`<li><span class="box"></span>${what}</li> `);
  const cautions = text.cautions.map((caution) => html`<li>${caution}</li> `);
  const verdict = text.verdict === null ? null : html`<b>${text.verdict}</b> `;
  const stop = text.stop === null ? null : html`<p class="note">${text.stop}</p>`;
  return html`<div class="title"><h1>${text.name}</h1><p class="about">${text.about}</p></div>${stop}<section class="run-in before"><h2>${text.before}</h2> <ul>${boxes}</ul></section><section class="run-in full-care"><h2>${text.cautionsTitle}</h2> <ul class="cautions">${cautions}</ul></section><p class="legend">${verdict}${text.legend}</p><p class="rules">${text.rules}</p>`;
}

/** Lines as sentences one after the other. */
const sentences = (lines: readonly (string | null)[]): string =>
  lines
    .filter((line) => line !== null)
    .map((line) => `${line.charAt(0).toUpperCase()}${line.slice(1).replace(/\.$/, "")}.`)
    .join(" ");

/** What holds at the lap for all tiers, said once. */
function rulesText(matter: SheetMatter): string {
  const { words, bench } = matter;
  const isGuessed = bench.order.some((work) => work.minutesAreGuess);
  const isBesidePolished = bench.findings.some(({ code }) => code === "coarse-beside-polished");
  return sentences([
    words.polishEnds,
    isGuessed ? words.strokesUnknown : null,
    isBesidePolished ? words.washFirst : null,
    hingeMoves(matter),
  ]);
}

/** What signs on this sheet mean, as far as there are any. */
function legendText(words: SheetWords, unit: SheetUnit, tiers: readonly TierText[]): string {
  const hasBrackets = tiers.some((tier) => tier.stages.some((stage) => stage.hasBrackets));
  const hasWidths = tiers.some((tier) => tier.stops.some((stop) => stop.width !== null));
  return sentences([
    words.pictures,
    hasBrackets ? words.bracketWidths : null,
    hasWidths ? words.stopWidths(words.units[unit]) : null,
    words.measured,
  ]);
}

/** The bar's length in mm, as on a ruler, and in the sheet's own unit. */
function checkLength({ length }: SheetMatter["format"], unit: SheetUnit): string {
  const whole = `${CHECK_BAR_MM}\u00a0mm`;
  return unit === "mm" ? whole : `${whole} (${length(CHECK_BAR_MM)})`;
}

/** Whether the piece meets, as the screens say it; a stop stands apart from what else is said about the piece. */
function verdictText({ solved, solid, words, format }: SheetMatter) {
  const { plan } = solved;
  const verdict = verdictOf(solved, reportPlan(plan, solved, solid));
  const nameOf = (id: string): string => tierName(plan, id, words.language);
  const said = verdictInWords(verdict, words.verdict, nameOf, format.fineLength);
  return { said, isStop: verdict.kind === "stops" };
}

/** Everything that is to stand on the sheet, in words. */
function sheetText(matter: SheetMatter, unit: SheetUnit): SheetText {
  const { solved, words, format } = matter;
  const { plan, radiusMm, facets } = solved;
  const verdict = verdictText(matter);
  const tiers = plan.tiers.map((_, i) => ({ text: tierText(matter, i), turn: turnText(matter, i) }));
  return {
    name: plan.name,
    about: words.about(
      format.length(2 * radiusMm),
      words.glass(plan.piece.glass),
      facets.length,
      words.wheel(stopsOf(plan, plan.tiers[0]?.side ?? "front")),
    ),
    verdict: verdict.isStop ? null : `${verdict.said}.`,
    stop: verdict.isStop ? verdict.said : null,
    before: words.before,
    preparations: PREPARATIONS.map((what) => words.preparations[what]),
    cautionsTitle: words.cautionsTitle,
    cautions: CAUTIONS.map((caution) => words.cautions[caution]),
    rules: rulesText(matter),
    legend: legendText(
      words,
      unit,
      tiers.map((tier) => tier.text),
    ),
    tiers,
    gaugesTitle: `${words.gauges}, ${words.units[unit]}`,
    gauges: gaugeWidths(matter).map((mm) => ({ mm, label: format.length(mm), caption: format.figure(mm) })),
    checkBar: words.checkBar(checkLength(format, unit)),
    notes: plan.notes ? `${words.notes}: ${plan.notes}` : "",
  };
}

/** The whole sheet as one HTML document without scripts or outside files. */
export function sheetHtml(solved: SolvedPlan, { words, unit, paper, face }: SheetOptions): string {
  const matter: SheetMatter = {
    solved,
    bench: benchOf(solved),
    stages: stagesIn(solved.plan.rig, words.language),
    solid: cutBall(solved.planes),
    words,
    format: sheetFormat(words, unit),
  };
  const text = sheetText(matter, unit);
  const { type, tiers: layouts, fits } = fitPages(text, paper);
  const tiers = text.tiers.map((tier, i) => tierSection(tier, layouts[i], { words, paper, type }, `t${i}`));
  const style = { markup: `${faceRules(face)}${sheetStyle(paper, type, layouts)}` };
  const tooMuch = fits ? null : html`<p class="note">${words.tooMuch}</p>`;
  const notes = text.notes ? html`<p class="run-in notes">${text.notes}</p>` : null;
  const body = html`${header(text)}${tooMuch}${tiers}${gauges(text, type)}${notes}`;
  return html`<!doctype html><html lang="${words.language}"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:"><meta name="viewport" content="width=device-width"><title>${solved.plan.name}</title><style>${style}</style></head><body>${body}</body></html>\n`
    .markup;
}
