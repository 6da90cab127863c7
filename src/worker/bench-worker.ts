/** The bench computed off the main thread: settings and order, curves, fits of what was cut, the sheet. */
import { adjust } from "../core/bench/as-cut/adjusted.ts";
import { fitAsCut } from "../core/bench/as-cut/as-cut.ts";
import { foundAgain } from "../core/bench/as-cut/found-again.ts";
import { matchTooDeep, placeOnFacet, recutsFor } from "../core/bench/as-cut/mend-cut.ts";
import { benchOf } from "../core/bench/bench.ts";
import { seeded } from "../core/bench/chances/chance.ts";
import { createSimulation } from "../core/bench/chances/simulate.ts";
import { spreadOf } from "../core/bench/chances/spread.ts";
import { stagesOf } from "../core/bench/stages/default-stages.ts";
import { depthsBefore, sizeAt, tierFacets } from "../core/bench/stages/half-cut.ts";
import { tierStageDepths } from "../core/bench/stages/stages.ts";
import { strokeCurve } from "../core/bench/stages/stroke-curve.ts";
import { calibrate, guessRemoval } from "../core/bench/stages/strokes.ts";
import { workTime } from "../core/offer/offer.ts";
import { minutesByChance, type TimeSpread, timeSpreadOf } from "../core/offer/time-spread.ts";
import { weigh } from "../core/offer/weigh.ts";
import type { Rasters } from "../core/optics/raster.ts";
import type { Plan } from "../core/plan/document.ts";
import { solvePlan } from "../core/plan/solve.ts";
import { type QuoteMatter, quoteHtml } from "../sheet/quote.ts";
import { sheetHtml } from "../sheet/sheet.ts";
import type { SheetUnit } from "../sheet/sheet-format.ts";
import type { Paper } from "../sheet/sheet-style.ts";
import { quoteWordsDe } from "../words/de/quote.ts";
import { sheetWordsDe } from "../words/de/sheet.ts";
import { quoteWordsEn } from "../words/en/quote.ts";
import { sheetWordsEn } from "../words/en/sheet.ts";
import { serveJobs, type Ticket } from "./job.ts";
import { sheetFace } from "./sheet-face.ts";
import { simulate } from "./simulate-bench.ts";

/** Enough for a smooth line at the size of the plot. */
const CURVE_POINTS = 25;

export interface CurveQuestion {
  readonly plan: Plan;
  readonly tierIndex: number;
  /** Position in the list of stages. */
  readonly stage: number;
  readonly contactRadiusMm: number | null;
}

/** Width against strokes for the first facet that is ground of a tier at one stage, from what the stage before left. */
function curve({ plan, tierIndex, stage, contactRadiusMm }: CurveQuestion) {
  const solved = solvePlan(plan);
  const stages = stagesOf(plan.rig);
  const tier = solved.tiers[tierIndex];
  const depths = tierStageDepths(solved, tierIndex, stages);
  const before = depthsBefore(solved, tierIndex);
  if (stage > 0) for (const k of tierFacets(tier)) before[k] = depths[stage - 1];
  const measured = calibrate(stages[stage], solved.radiusMm, plan.rig.lap);
  const removal = measured ?? guessRemoval(stages[stage], plan.rig.lap);
  // The first facet of which anything is left at that depth.
  const isThere = (k: number) => sizeAt(solved, before.with(k, depths[stage]), k).widthMm > 0;
  const points = strokeCurve(
    solved,
    before,
    tierFacets(tier).find(isThere) ?? tier.first,
    depths[stage],
    removal,
    contactRadiusMm,
    CURVE_POINTS,
  );
  return { points, isGuess: removal.isGuess };
}

export interface SheetQuestion {
  readonly plan: Plan;
  readonly language: "en" | "de";
  readonly unit: SheetUnit;
  readonly paper: Paper;
  /** As the person's region sets it. */
  readonly decimal: "." | ",";
}

export interface DeepQuestion {
  readonly plan: Plan;
  readonly tierIndex: number;
  /** Depth of the facet that went too deep. */
  readonly depthMm: number;
}

/** A chip by where it lies on a facet, from the facet's foot. */
export interface ChipQuestion {
  readonly plan: Plan;
  readonly facetId: string;
  readonly acrossMm: number;
  /** Towards the pole of the facet's side. */
  readonly upMm: number;
  readonly depthMm: number;
  readonly diameterMm: number;
}

function recuts({ plan, facetId, acrossMm, upMm, depthMm, diameterMm }: ChipQuestion) {
  const solved = solvePlan(plan);
  const k = solved.facets.findIndex((facet) => facet.id === facetId);
  return k < 0 ? [] : recutsFor(plan, { at: placeOnFacet(solved, k, acrossMm, upMm), depthMm, diameterMm });
}

export interface AdjustQuestion {
  readonly planned: Plan;
  /** The same with measured tiers as they were cut. */
  readonly resolved: Plan;
}

/** The least change of angles after a slip; tells its progress and can be stopped at any step. */
async function adjustAngles({ planned, resolved }: AdjustQuestion, ticket: Ticket) {
  const steps = adjust(planned, resolved);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    await ticket.report(step.value);
  }
}

export interface WeighQuestion {
  readonly plan: Plan;
  /** Pixels of the pictures inside. */
  readonly rasters: Rasters;
}

/** Pieces cut by chance for the spread of the hours: its ends are then within a few hundredths of the whole. */
const SPREAD_PIECES = 60;

/** How far the hours stray; tells its progress and can be stopped after each piece. */
async function timeSpread(plan: Plan, ticket: Ticket): Promise<TimeSpread> {
  const sim = createSimulation(solvePlan(plan), spreadOf(plan), "width");
  const random = seeded(1);
  const each: (number | null)[] = [];
  while (each.length < SPREAD_PIECES) {
    each.push(minutesByChance(sim, random));
    await ticket.report(each.length / SPREAD_PIECES);
  }
  return timeSpreadOf(each);
}

const SHEET_WORDS = { en: sheetWordsEn, de: sheetWordsDe } as const;

const QUOTE_WORDS = { en: quoteWordsEn, de: quoteWordsDe } as const;
export type QuoteQuestion = Omit<QuoteMatter, "face" | "words"> & { readonly language: "en" | "de" };

const jobs = {
  bench: (plan: Plan) => benchOf(solvePlan(plan)),
  fit: (plan: Plan) => fitAsCut(plan),
  adjust: adjustAngles,
  curve,
  simulate,
  tooDeep: ({ plan, tierIndex, depthMm }: DeepQuestion) => matchTooDeep(plan, tierIndex, depthMm),
  recuts,
  sheet: async ({ plan, language, unit, paper, decimal }: SheetQuestion) => {
    const words = { ...SHEET_WORDS[language], decimal };
    return sheetHtml(solvePlan(plan), { words, unit, paper, face: await sheetFace() });
  },
  workTime: (plan: Plan) => workTime(solvePlan(plan)),
  weigh: ({ plan, rasters }: WeighQuestion) => weigh(plan, rasters),
  timeSpread,
  quote: async ({ language, ...matter }: QuoteQuestion) =>
    quoteHtml({ ...matter, words: QUOTE_WORDS[language], face: await sheetFace() }),
  /** What finding each tier's angle again costs, as far off as the plan's rig says. */
  foundAgain: (plan: Plan) => foundAgain(solvePlan(plan)),
};

export type BenchJobs = typeof jobs;
serveJobs(jobs, self);
