/**
 * How many strokes a pass takes. Preston (1927), dh/dt = k p v: the rate of depth is proportional to pressure and speed. With a hand
 * that presses equally (force F on a face of area A, p = F / A) the rate of volume A dh/dt = k F v does not depend
 * on the area: a stroke takes about constant volume, in proportion to the surface's speed, and depth grows ever slower.
 */
import type { Calibration, Lap, Stage } from "../../plan/document.ts";
import type { BenchFinding } from "../bench-finding.ts";
import { bandMiddle } from "../rig/rig.ts";

/** Depth of an uncut circle of this width on a ball, mm; a width beyond the diameter counts as the diameter. */
export const depthOfWidth = (radiusMm: number, widthMm: number): number =>
  radiusMm - Math.sqrt(Math.max(0, radiusMm ** 2 - (widthMm / 2) ** 2));

/** Volume of the cap under a flat of this width, mm3: pi d^2 (3R - d) / 3. */
export function capVolume(radiusMm: number, widthMm: number): number {
  const d = depthOfWidth(radiusMm, widthMm);
  return (Math.PI * d * d * (3 * radiusMm - d)) / 3;
}

export interface Removal {
  /** Volume of one stroke at `atRadiusMm` from the lap's axis, mm3. */
  readonly mm3PerStroke: number;
  /** Contact radius that it holds for; null when the rig isn't known, then speed is not accounted for. */
  readonly atRadiusMm: number | null;
  /** Standard deviation of single test facets, as a fraction; null for one test. */
  readonly spread: number | null;
  readonly tests: number;
  /** How the disc dulls; null where the tests don't tell, then it counts as always the same. */
  readonly wear: Wear | null;
  /** Strokes that the disc has done by now; `mm3PerStroke` is what it takes then. */
  readonly discStrokes: number;
  /** True for the rough default, which nobody has measured. */
  readonly isGuess: boolean;
}

/** Volume that a test facet took on a ball, mm3. */
const testVolume = (test: Calibration, radiusMm: number): number => {
  const radius = test.diameterMm ? test.diameterMm / 2 : radiusMm;
  return capVolume(radius, test.widthMm) - capVolume(radius, test.fromWidthMm ?? 0);
};

/** A test facet as the fit sees it. */
interface Test {
  readonly strokes: number;
  /** At the middle of the band. */
  readonly volume: number;
  /** Strokes of the disc when half of the test was done: what the test says of its age. */
  readonly discStrokes: number;
  /** Strokes of the disc after the test. */
  readonly after: number;
}

const testOf = (test: Calibration, pieceRadiusMm: number, atRadiusMm: number | null): Test => {
  const slower = atRadiusMm && test.radiusMm ? atRadiusMm / test.radiusMm : 1;
  const before = test.discStrokes ?? 0;
  return {
    strokes: test.strokes,
    volume: testVolume(test, pieceRadiusMm) * slower,
    discStrokes: before + test.strokes / 2,
    after: before + test.strokes,
  };
};

/** How the disc dulls, when tests were made at stated, different ages of it; null otherwise. */
const wearOf = (stage: Calibrated, tests: readonly Test[]): Wear | null =>
  (stage.calibration ?? []).some((test) => test.discStrokes !== undefined)
    ? fitWear(tests.map((t) => ({ discStrokes: t.discStrokes, mm3PerStroke: t.volume / t.strokes })))
    : null;

/** What a stage says about its strokes. */
export type Calibrated = Pick<Stage, "calibration" | "discStrokes">;

/**
 * Volume a stroke from a stage's test facets, least squares through the origin (volume against strokes). When tests say how
 * many strokes the disc had done, and they differ, the rate is the worn disc's at its age now instead.
 * Each test is scaled to the middle of the band by its own contact radius; one without radius was made there.
 * @returns null when there is no test, or none that took any glass
 */
export function calibrate(stage: Calibrated, pieceRadiusMm: number, lap?: Lap): Removal | null {
  const atRadiusMm = lap ? bandMiddle(lap) : null;
  const tests = (stage.calibration ?? [])
    .map((test) => testOf(test, pieceRadiusMm, atRadiusMm))
    .filter(({ volume, strokes }) => volume > 0 && strokes > 0);
  if (tests.length === 0) return null;
  const sum = (of: (t: Test) => number) => tests.reduce((s, t) => s + of(t), 0);
  const same = sum((t) => t.strokes * t.volume) / sum((t) => t.strokes ** 2);
  const wear = wearOf(stage, tests);
  const rateAt = (discStrokes: number) => (wear ? wornRate(wear, discStrokes) : same);
  const discStrokes = stage.discStrokes ?? Math.max(...tests.map((t) => t.after));
  // Two numbers of the wear come from the tests, one of the even rate.
  const free = tests.length - (wear ? 2 : 1);
  const variance = sum((t) => (t.volume / t.strokes / rateAt(t.discStrokes) - 1) ** 2) / Math.max(1, free);
  return {
    mm3PerStroke: rateAt(discStrokes),
    atRadiusMm,
    spread: free > 0 ? Math.sqrt(variance) : null,
    tests: tests.length,
    wear,
    discStrokes,
    isGuess: false,
  };
}

/**
 * Guess of the glass one stroke takes for each micrometre of grain, mm3. Nobody's measurement: about one second at 1 m/s and
 * a few newtons. For cerium oxide it agrees with k F v for k = 5e-13 1/Pa (optics literature in general, from memory) within a factor of two.
 */
const GUESS_MM3_PER_UM = 0.003;

/** The rough default for screens, labelled a guess. */
export const guessRemoval = (stage: Stage, lap?: Lap): Removal => ({
  mm3PerStroke: GUESS_MM3_PER_UM * stage.grainUm,
  atRadiusMm: lap ? bandMiddle(lap) : null,
  spread: null,
  tests: 0,
  wear: null,
  discStrokes: 0,
  isGuess: true,
});

/** Volume a stroke takes at a contact radius: in proportion to surface speed, so to the radius. */
export const strokeVolume = (removal: Removal, contactRadiusMm: number | null): number =>
  removal.atRadiusMm && contactRadiusMm
    ? (removal.mm3PerStroke * contactRadiusMm) / removal.atRadiusMm
    : removal.mm3PerStroke;

/** Strokes that a volume takes, not rounded. */
export const strokesFor = (volumeMm3: number, removal: Removal, contactRadiusMm: number | null): number =>
  volumeMm3 / strokeVolume(removal, contactRadiusMm);

/** Strokes as they may be said: whole, at least one; beyond a hundred no more than two figures deserve trust. */
export function sayableStrokes(strokes: number): number {
  const whole = Math.max(1, Math.round(strokes));
  return whole <= 100 ? whole : Number(whole.toPrecision(2));
}

export interface WearTest {
  /** Strokes that the disc had done before this test. */
  readonly discStrokes: number;
  readonly mm3PerStroke: number;
}
export interface Wear {
  readonly newMm3PerStroke: number;
  /** Strokes after which the disc takes half of what it took when new; Infinity when no wear shows. */
  readonly halfLifeStrokes: number;
}

/**
 * How a disc dulls, from tests at different ages: ln(rate) against strokes done, least squares, never growing.
 * Exponential dulling is a rule of thumb, no source. Needs two tests at different ages, else null.
 */
export function fitWear(tests: readonly WearTest[]): Wear | null {
  const n = tests.length;
  const mean = (of: (t: WearTest) => number) => tests.reduce((s, t) => s + of(t), 0) / n;
  const age = mean((t) => t.discStrokes);
  const log = mean((t) => Math.log(t.mm3PerStroke));
  const spread = tests.reduce((s, t) => s + (t.discStrokes - age) ** 2, 0);
  if (n < 2 || spread === 0) return null;
  const rise = tests.reduce((s, t) => s + (t.discStrokes - age) * (Math.log(t.mm3PerStroke) - log), 0);
  const slope = Math.min(0, rise / spread);
  return {
    newMm3PerStroke: Math.exp(log - slope * age),
    halfLifeStrokes: slope === 0 ? Number.POSITIVE_INFINITY : Math.LN2 / -slope,
  };
}

/** What a worn disc takes a stroke. */
export const wornRate = (wear: Wear, discStrokes: number): number =>
  wear.newMm3PerStroke * 2 ** -(discStrokes / wear.halfLifeStrokes);

/** A disc that will take less than this share of what it takes now is called worn: common practice, no source. */
const WORN_SHARE = 0.8;

/** Says which discs dull so much over the planned strokes that the counts can't hold to the end. */
export function wearFindings(
  stages: readonly Stage[],
  removals: readonly (Removal | null)[],
  plannedStrokes: readonly number[],
): readonly BenchFinding[] {
  return stages.flatMap((stage, i): BenchFinding[] => {
    const removal = removals[i];
    if (!removal?.wear) return [];
    const share = wornRate(removal.wear, removal.discStrokes + plannedStrokes[i]) / removal.mm3PerStroke;
    if (share >= WORN_SHARE) return [];
    return [
      {
        code: "disc-dulls",
        severity: "warn",
        data: { stage: stage.id, plannedStrokes: plannedStrokes[i], share },
      },
    ];
  });
}
