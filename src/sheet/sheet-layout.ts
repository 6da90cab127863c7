/**
 * How a tier stands on the sheet, and how high it gets. Its stages are a table, a row each with a box to tick under every stop:
 * beside the picture or below it; where the stops leave the words no room, the boxes stand apart from them in rows of their own.
 */
import { BOLD, linesOf, textEm } from "./sheet-letters.ts";
import {
  type Columns,
  MEASURE_HIGH_MM,
  MM_PER_POINT,
  measureMm,
  measuresAt,
  PICTURE_MM,
  PLACE,
  RULE_MM,
  SAY,
  SAY_LINE,
  type SheetType,
  STAGE_GAP_MM,
  STOP_LINE,
  stopPt,
  TABLE_GAP_MM,
} from "./sheet-style.ts";
import type { TierText } from "./sheet-tier.ts";

export interface TierLayout extends Columns {
  readonly kind: "beside" | "below" | "apart";
  /** Stages in each table: half of them where few stops leave room for two tables beside each other. */
  readonly perTable: number;
  /** How wide the words could be at most. */
  readonly roomMm: number;
  /** How many stops stand in a row. */
  readonly perRow: number;
  readonly heightMm: number;
}

/** Facets wider than this take the whole line, so that the sentence keeps its room. */
const WIDE_PICTURE_MM = 60;
const LABEL_ROOM_MM = 1.3;
const WIDTH_ROOM_MM = 1.4;
/** Between the words of a stage and its first box. */
const BOX_ROOM_MM = 1.5;
const LINE_ROUNDING_MM = 0.3;
/** What a table's outer line takes beside its columns. */
const EDGE_MM = 0.5;

export const isWide = ({ picture }: TierText): boolean =>
  picture !== null && picture.flat.box[1] - picture.flat.box[0] > WIDE_PICTURE_MM;

/** Heights of text in the size that is read at the lap, mm. */
function lapRuler(type: SheetType) {
  const em = type.lapPt * MM_PER_POINT;
  const { lineHeight, paragraphMm } = measuresAt(type);
  return {
    em,
    line: em * lineHeight,
    paragraph: (text: string, widthMm: number, weight = 1): number =>
      linesOf(text, widthMm / em, weight) * em * lineHeight + paragraphMm,
    say: (text: string, widthMm: number): number =>
      linesOf(text, widthMm / (SAY * em), BOLD) * SAY * em * SAY_LINE + paragraphMm,
  };
}

/** Width of one stop's column: the widest of what stands in it. */
function stopWidthMm({ stops }: TierText, type: SheetType): number {
  // Bold figures are no wider.
  const label = Math.max(...stops.map((stop) => textEm(stop.label))) * stopPt(type) * MM_PER_POINT;
  const width = Math.max(...stops.map((stop) => textEm(stop.width ?? ""))) * type.lapPt * MM_PER_POINT;
  return Math.max(6, label + LABEL_ROOM_MM, width > 0 ? width + WIDTH_ROOM_MM : 0);
}

/** Stops in rows of equal length, no longer than `most`. */
export function stopsInRow(count: number, most: number): number {
  const rows = Math.ceil(count / Math.max(1, most));
  return Math.max(1, Math.ceil(count / Math.max(1, rows)));
}

function pictureMm({ picture }: TierText, type: SheetType): { readonly wide: number; readonly high: number } {
  const { lineHeight } = measuresAt(type);
  const caption = type.restPt * MM_PER_POINT * lineHeight;
  if (!picture) return { wide: PICTURE_MM.least, high: 5 * caption };
  const [left, right, low, high] = picture.flat.box;
  const size = textEm(picture.size) * type.restPt * MM_PER_POINT;
  return { wide: Math.max(PICTURE_MM.least, size, right - left + 2), high: high - low + 2 + caption };
}

/** What is said of a tier in one paragraph under its sentence. */
const flowOf = ({ held, notes }: TierText): string =>
  [held, ...notes.map((note) => `\u25b6 ${note}`)].join(" ");

function wordsHigh(text: TierText, widthMm: number, type: SheetType): number {
  const { say, paragraph } = lapRuler(type);
  const isBold = text.isByHand || text.notes.length > 0;
  return say(text.sentence, widthMm) + paragraph(flowOf(text), widthMm, isBold ? BOLD : 1);
}

/** Stops and their widths above the boxes. */
function stopHeadMm({ stops }: TierText, type: SheetType): number {
  const hasWidths = stops.some((stop) => stop.width !== null);
  return (stopPt(type) + (hasWidths ? type.lapPt : 0)) * STOP_LINE * MM_PER_POINT;
}

/** The highest of the tables with so many stages each, their words `wordsMm` wide. */
function tableHigh(text: TierText, perTable: number, wordsMm: number, type: SheetType): number {
  const { em, line } = lapRuler(type);
  const { boxMm } = measuresAt(type);
  const wordsEm = (wordsMm - 1) / em - PLACE;
  const rows = text.stages.map(
    (stage) => Math.max(boxMm, linesOf(stage.text, wordsEm) * line) + LINE_ROUNDING_MM,
  );
  const sum = (from: number) => rows.slice(from, from + perTable).reduce((all, row) => all + row, 0);
  return (
    Math.max(MEASURE_HIGH_MM, stopHeadMm(text, type)) + Math.max(sum(0), sum(perTable)) + LINE_ROUNDING_MM
  );
}

/** As wide as the words need, so that boxes stand near them; null where there is too little room for them. */
function wordsBeside(text: TierText, roomMm: number, type: SheetType): number | null {
  const least = measureMm(type);
  if (roomMm < least) return null;
  const em = type.lapPt * MM_PER_POINT;
  const longest = Math.max(0, ...text.stages.map((stage) => textEm(stage.text)));
  return Math.min(roomMm, Math.max(least, (longest + PLACE) * em + 1 + BOX_ROOM_MM));
}

/** Whether a stage or note can stand beside another in words so wide. */
export function isShortLine(own: string, widthMm: number, type: SheetType): boolean {
  const em = type.lapPt * MM_PER_POINT;
  return (PLACE + textEm(own)) * em <= (widthMm - STAGE_GAP_MM) / 2;
}

/** Rows of a grid of two columns, filled in order, in which some items take both. */
function gridRows(items: readonly { readonly rows: number; readonly isHalf: boolean }[]): number {
  let [rows, isOpen] = [0, false];
  for (const item of items) {
    if (!(item.isHalf && isOpen)) rows += item.rows;
    isOpen = item.isHalf && !isOpen;
  }
  return rows;
}

/** Width of the words beside a tier's picture, mm. */
export const besidePictureMm = (text: TierText, lineMm: number, type: SheetType): number =>
  isWide(text) ? lineMm : lineMm - pictureMm(text, type).wide - PICTURE_MM.gap;

/** Boxes in rows of their own; a row's place is all that stands before it. */
function apart(text: TierText, lineMm: number, type: SheetType): TierLayout {
  const { em, line } = lapRuler(type);
  const { boxMm } = measuresAt(type);
  const [wordsMm, stopMm] = [PLACE * em, stopWidthMm(text, type)];
  const perRow = stopsInRow(text.stops.length, Math.floor((lineMm - wordsMm - EDGE_MM) / stopMm));
  const widthMm = besidePictureMm(text, lineMm, type);
  const said = text.stages.map((stage) => ({
    rows: linesOf(stage.text, widthMm / em - PLACE),
    isHalf: isShortLine(stage.text, widthMm, type),
  }));
  const rowMm = Math.max(boxMm, line) + LINE_ROUNDING_MM;
  const tables = Math.ceil(text.stops.length / perRow);
  const ticks = tables * (stopHeadMm(text, type) + text.stages.length * rowMm + LINE_ROUNDING_MM);
  const words = wordsHigh(text, widthMm, type) + gridRows(said) * line;
  return {
    kind: "apart",
    perTable: text.stages.length,
    roomMm: wordsMm,
    wordsMm,
    stopMm,
    perRow,
    heightMm: stacked(text, words, type) + MEASURE_HIGH_MM + ticks,
  };
}

/** Words beside the picture, or below one that takes the whole line. */
function stacked(text: TierText, wordsMm: number, type: SheetType): number {
  const { high } = pictureMm(text, type);
  return isWide(text) ? high + wordsMm : Math.max(high, wordsMm);
}

/** Boxes in line with the words of their stages, where the stops leave these `roomMm`; null where that is too little. */
function inLine(
  kind: "beside" | "below",
  text: TierText,
  roomMm: number,
  type: SheetType,
): Omit<TierLayout, "heightMm"> | null {
  const [stopMm, perRow] = [stopWidthMm(text, type), text.stops.length];
  const room = roomMm - perRow * stopMm - EDGE_MM;
  const wordsMm = wordsBeside(text, room, type);
  if (wordsMm === null) return null;
  const isTwice = 2 * (wordsMm + perRow * stopMm + EDGE_MM) + TABLE_GAP_MM <= roomMm;
  const perTable = isTwice ? Math.ceil(text.stages.length / 2) : text.stages.length;
  return { kind, perTable, roomMm: isTwice ? wordsMm : room, wordsMm, stopMm, perRow };
}

/** How a tier stands on lines so wide, mm: beside its picture or below it, whichever is lower. */
export function layoutOf(text: TierText, lineMm: number, type: SheetType): TierLayout {
  const widthMm = besidePictureMm(text, lineMm, type);
  const words = wordsHigh(text, widthMm, type);
  const ways: TierLayout[] = [];
  const beside = inLine("beside", text, widthMm, type);
  if (beside) {
    const heightMm = stacked(text, words + tableHigh(text, beside.perTable, beside.wordsMm, type), type);
    ways.push({ ...beside, heightMm });
  }
  const below = inLine("below", text, lineMm, type);
  if (below) {
    const heightMm = stacked(text, words, type) + tableHigh(text, below.perTable, below.wordsMm, type);
    ways.push({ ...below, heightMm });
  }
  if (ways.length === 0) ways.push(apart(text, lineMm, type));
  const lowest = ways.reduce((best, way) => (way.heightMm < best.heightMm ? way : best));
  return { ...lowest, heightMm: lowest.heightMm + 2 * measuresAt(type).tierMm + RULE_MM };
}

/** The same tiers with boxes that begin at one place down the sheet, as far as each has the room. */
export function inColumns(tiers: readonly TierLayout[]): readonly TierLayout[] {
  const widest = (kind: TierLayout["kind"]) =>
    Math.max(0, ...tiers.filter((tier) => tier.kind === kind).map((tier) => tier.wordsMm));
  return tiers.map((tier) => ({ ...tier, wordsMm: Math.min(tier.roomMm, widest(tier.kind)) }));
}
