/**
 * The angle and depth at which one tier was really cut, from what was measured on it: weighted least squares in two
 * unknowns. A prior from the plan stands in for whichever of the two the measurements leave undetermined. Deviations are
 * one standard deviation, from the information of measurements (and the priors used) at the answer.
 */
import { type Cut, cutTier, LENGTHS, type LengthName, lengthAt, lengthOf } from "./cut-model.ts";
import {
  addSym,
  cost,
  information,
  type Pair,
  type Problem,
  type Sym2,
  slope,
  solveLeastSquares,
  totalInformation,
  variances,
} from "./least-squares.ts";
import { type FitSetting, type Measurement, type MeasureName, predicted, sdOf } from "./measurements.ts";

const LEAST_DEPTH_SD_MM = 0.1;
const DEPTH_SD_FRACTION = 0.2;
/** A quantity counts as determined when measurements alone know it about as well as the plan does: to this many of its deviations. */
const DETERMINED = 1.5;
/** Difference steps: far below what can be read, far above rounding. */
const STEPS: Pair = [1e-3, 1e-4];
/** Keeps depths off the ends where a facet is a point or nothing of the ball is left. */
const DEPTH_MARGIN_MM = 1e-3;
/** Cuts kept while one step of the solver looks around. */
const REMEMBERED = 64;
/** Readings that agree to this are one, mm. */
const SAME_MM = 1e-6;
/** Of all starts, this many of the cheapest are followed to the end. */
const FOLLOWED = 2;

const depthPriorSd = (depthMm: number): number => Math.max(LEAST_DEPTH_SD_MM, DEPTH_SD_FRACTION * depthMm);

type Kept = readonly [angle: boolean, depth: boolean];

/** Cuts the tier at an angle and depth, remembering the last few: all measurements ask for the same ones in turn. */
function rememberedCuts(setting: FitSetting): (p: Pair) => Cut {
  const known = new Map<string, Cut>();
  return (p) => {
    const key = p.join();
    const cut = known.get(key) ?? cutTier(setting.tier, p[0], p[1]);
    if (known.size >= REMEMBERED) known.clear();
    known.set(key, cut);
    return cut;
  };
}

const clampTo =
  (setting: FitSetting) =>
  ([a, d]: Pair): Pair => [
    Math.min(90, Math.max(0, a)),
    Math.min(2 * setting.tier.radiusMm - DEPTH_MARGIN_MM, Math.max(DEPTH_MARGIN_MM, d)),
  ];

const priorSds = (setting: FitSetting): Pair => [setting.readSdDeg, depthPriorSd(setting.plannedDepthMm)];

function problemOf(setting: FitSetting, usable: readonly Measurement[], kept: Kept): Problem {
  const cutAt = rememberedCuts(setting);
  const [sdA, sdD] = priorSds(setting);
  const priors = [
    { residual: (p: Pair) => p[0] - setting.plannedDeg, sd: sdA },
    { residual: (p: Pair) => p[1] - setting.plannedDepthMm, sd: sdD },
  ].filter((_, i) => kept[i]);
  const readings = usable.map((m) => ({
    residual: (p: Pair) => predicted(setting, cutAt(p), m)! - m.value,
    sd: sdOf(setting, m.name),
  }));
  return { observations: [...readings, ...priors], steps: STEPS, clamp: clampTo(setting) };
}

/** Follows the cheapest of the starts to the end and takes the best answer. */
function solveFrom(problem: Problem, starts: readonly Pair[]): Pair {
  const cheapest = starts
    .map((start) => ({ start, value: cost(problem, problem.clamp(start)) }))
    .sort((a, b) => a.value - b.value)
    .slice(0, FOLLOWED);
  const answers = cheapest.map(({ start }) => solveLeastSquares(problem, start));
  return answers.reduce((best, p) => (cost(problem, p) < cost(problem, best) ? p : best));
}

/** Depths to start from: the plan's, and those that single lengths speak of. */
function startsOf(setting: FitSetting, usable: readonly Measurement[]): Pair[] {
  const { radiusMm } = setting.tier;
  const mean = (name: MeasureName) => {
    const values = usable.filter((m) => m.name === name).map((m) => m.value);
    return values.length ? values.reduce((s, v) => s + v, 0) / values.length : null;
  };
  const flat = mean("flatToSkinMm");
  const width = mean("widthMm");
  const caliper = mean("caliperMm");
  const planned =
    caliper === null
      ? null
      : lengthOf(cutTier(setting.tier, setting.plannedDeg, setting.plannedDepthMm), "caliperMm");
  const depths = [
    setting.plannedDepthMm,
    ...(flat === null ? [] : [2 * radiusMm - flat]),
    ...(caliper === null || planned === null ? [] : [setting.plannedDepthMm + planned - caliper]),
    ...(width === null ? [] : [radiusMm - Math.sqrt(Math.max(0, radiusMm ** 2 - (width / 2) ** 2))]),
  ];
  const angle = mean("readDeg") ?? setting.plannedDeg;
  const turns = [0, -setting.readSdDeg, setting.readSdDeg];
  return depths.flatMap((d) => turns.map((turn): Pair => [angle + turn, d]));
}

const sdsOf = (info: Sym2): Pair => {
  const [a, d] = variances(info);
  return [Math.sqrt(a), Math.sqrt(d)];
};

const priorInformation = (setting: FitSetting, kept: Kept): Sym2 => {
  const [sdA, sdD] = priorSds(setting);
  return { xx: kept[0] ? sdA ** -2 : 0, xy: 0, yy: kept[1] ? sdD ** -2 : 0 };
};

/** Which priors are needed: none for what the measurements alone determine. */
function neededPriors(setting: FitSetting, info: Sym2): Kept {
  const limits = priorSds(setting).map((sd) => sd * DETERMINED);
  const isKnown = (q: 0 | 1, kept: Kept) =>
    sdsOf(addSym(info, priorInformation(setting, kept)))[q] <= limits[q];
  if (isKnown(0, [false, false]) && isKnown(1, [false, false])) return [false, false];
  // Not both: leave out the prior of the one that is known when the other's prior is kept.
  if (isKnown(1, [true, false])) return [true, false];
  if (isKnown(0, [false, true])) return [false, true];
  return [true, true];
}

export interface TierFit {
  readonly armAngleDeg: number;
  readonly armAngleSdDeg: number;
  readonly depthMm: number;
  readonly depthSdMm: number;
  /** Which of the two rest on the plan because the measurements leave them undetermined. */
  readonly angleFromPlan: boolean;
  readonly depthFromPlan: boolean;
  readonly residuals: readonly Residual[];
  /** The measurement not yet made that would narrow the answer most; null when none would. */
  readonly wouldHelp: Help | null;
}
interface Residual {
  readonly measure: MeasureName;
  readonly k: number | null;
  readonly measured: number;
  readonly fitted: number;
  /** Measured less fitted. */
  readonly residual: number;
  readonly sd: number;
}
export interface Help {
  readonly measure: MeasureName;
  /** Deviations that the answer would have with it. */
  readonly armAngleSdDeg: number;
  readonly depthSdMm: number;
}

/** Lengths that calipers read against something opposite: the skin, or the farthest point of whatever stands there. */
const TO_SKIN = "flatToSkinMm";
const TO_FARTHEST = "caliperMm";

/** Whether calipers can take a length: round skin or not stands opposite, and the dop may be in the way. */
function isWithinReach(setting: FitSetting, cut: Cut, name: MeasureName): boolean {
  if (name !== TO_SKIN && name !== TO_FARTHEST) return true;
  if (setting.isDopInTheWay) return false;
  const [skin, far] = [lengthOf(cut, TO_SKIN), lengthOf(cut, TO_FARTHEST)];
  const isSkin = skin !== null && far !== null && skin - far < SAME_MM;
  return isSkin === (name === TO_SKIN);
}

const CANDIDATES: readonly MeasureName[] = [...LENGTHS, "readDeg", "pivotHeightMm"];

/** The missing measurement that leaves the least variance, both quantities counted in units of their priors. */
function helpOf(setting: FitSetting, used: readonly Measurement[], p: Pair, info: Sym2): Help | null {
  const [sdA, sdD] = priorSds(setting);
  const left = ([a, d]: Pair) => (a / sdA) ** 2 + (d / sdD) ** 2;
  const now = left(sdsOf(info));
  const cutAt = rememberedCuts(setting);
  const helps = CANDIDATES.flatMap((name): (Help & { readonly left: number })[] => {
    if (used.some((m) => m.name === name)) return [];
    if (!isWithinReach(setting, cutAt(p), name)) return [];
    if (name === "pivotHeightMm" && setting.plannedArmMm === null) return [];
    const m: Measurement = { name, k: null, value: 0, armLengthMm: setting.plannedArmMm ?? undefined };
    const here = predicted(setting, cutAt(p), m);
    // A gap that isn't there, or an edge that isn't, can't be measured.
    if (here === null || ((name === "gapMm" || name === "edgeMm") && here <= 0)) return [];
    const g = slope((q) => predicted(setting, cutAt(q), m)!, p, STEPS);
    const sds = sdsOf(addSym(info, information(g, sdOf(setting, name))));
    return [{ measure: name, armAngleSdDeg: sds[0], depthSdMm: sds[1], left: left(sds) }];
  });
  const best = helps.sort((a, b) => a.left - b.left)[0];
  if (!best || best.left >= now) return null;
  return { measure: best.measure, armAngleSdDeg: best.armAngleSdDeg, depthSdMm: best.depthSdMm };
}

/** Fits one tier. Measurements that don't exist on it (a gap on a facet alone) are left out. */
export function fitTier(setting: FitSetting, measurements: readonly Measurement[]): TierFit {
  const plannedCut = cutTier(setting.tier, setting.plannedDeg, setting.plannedDepthMm);
  const usable = measurements.filter((m) => predicted(setting, plannedCut, m) !== null);
  const both = problemOf(setting, usable, [true, true]);
  const first = solveFrom(both, startsOf(setting, usable));
  // With both priors in to hold the way, see what the measurements alone say there.
  const readings: Problem = { ...both, observations: both.observations.slice(0, usable.length) };
  const kept = neededPriors(setting, totalInformation(readings, first));
  const problem = problemOf(setting, usable, kept);
  const p = solveFrom(problem, [first]);
  const info = totalInformation(problem, p);
  const [armAngleSdDeg, depthSdMm] = sdsOf(info);
  const cut = cutTier(setting.tier, p[0], p[1]);
  return {
    armAngleDeg: p[0],
    armAngleSdDeg,
    depthMm: p[1],
    depthSdMm,
    angleFromPlan: kept[0],
    depthFromPlan: kept[1],
    residuals: usable.map((m) => {
      const fitted = predicted(setting, cut, m)!;
      return {
        measure: m.name,
        k: m.k,
        measured: m.value,
        fitted,
        residual: m.value - fitted,
        sd: sdOf(setting, m.name),
      };
    }),
    wouldHelp: helpOf(setting, usable, p, info),
  };
}

export interface FacetFit {
  readonly k: number;
  readonly depthMm: number;
  readonly depthSdMm: number;
}

/** Depth of one facet measured by itself, its tier as fitted around it: the arm stood, so only the depth differs. */
export function fitFacet(
  setting: FitSetting,
  fit: TierFit,
  k: number,
  measurements: readonly Measurement[],
): FacetFit {
  const cutWith = (depthMm: number) =>
    cutTier(
      setting.tier,
      fit.armAngleDeg,
      setting.tier.azimuthsDeg.map((_, j) => (j === k ? depthMm : fit.depthMm)),
    );
  const own = measurements.filter(
    (m) =>
      m.k === k &&
      m.name !== "readDeg" &&
      m.name !== "pivotHeightMm" &&
      lengthAt(cutWith(fit.depthMm), m.name, k) !== null,
  );
  const observations = [
    ...own.map((m) => ({
      residual: (p: Pair) => lengthAt(cutWith(p[1]), m.name as LengthName, k)! - m.value,
      sd: setting.sdMm,
    })),
    // Without a reading of its own the facet is as deep as its tier; strokes differ by about this much.
    { residual: (p: Pair) => p[1] - fit.depthMm, sd: depthPriorSd(fit.depthMm) * (own.length ? 10 : 1) },
    { residual: (p: Pair) => p[0] - fit.armAngleDeg, sd: 1 },
  ];
  const problem: Problem = { observations, steps: STEPS, clamp: clampTo(setting) };
  const p = solveLeastSquares(problem, [fit.armAngleDeg, fit.depthMm]);
  return { k, depthMm: p[1], depthSdMm: sdsOf(totalInformation(problem, p))[1] };
}
