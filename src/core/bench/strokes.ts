/**
 * How many strokes a pass takes. Preston (1927), dh/dt = k p v: the rate of depth is proportional to pressure and speed. With a hand
 * that presses equally (force F on a face of area A, p = F / A) the rate of volume A dh/dt = k F v does not depend
 * on the area: a stroke takes about constant volume, in proportion to the surface's speed, and depth grows ever slower.
 */
import type { Calibration, Lap, Stage } from "../plan/document.ts";
import { bandMiddle } from "./rig.ts";

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
  /** True for the rough default, which nobody has measured. */
  readonly isGuess: boolean;
}

/** Volume that a test facet took on a ball, mm3. */
const testVolume = (test: Calibration, radiusMm: number): number => {
  const radius = test.diameterMm ? test.diameterMm / 2 : radiusMm;
  return capVolume(radius, test.widthMm) - capVolume(radius, test.fromWidthMm ?? 0);
};

/**
 * Volume a stroke from test facets, least squares through the origin (volume against strokes).
 * Each test is scaled to the middle of the band by its own contact radius; one without radius was made there.
 * @returns null when there is no test, or none that took any glass
 */
export function calibrate(
  tests: readonly Calibration[] | undefined,
  pieceRadiusMm: number,
  lap?: Lap,
): Removal | null {
  const atRadiusMm = lap ? bandMiddle(lap) : null;
  const measured = (tests ?? []).flatMap((test) => {
    const slower = atRadiusMm && test.radiusMm ? atRadiusMm / test.radiusMm : 1;
    const volume = testVolume(test, pieceRadiusMm) * slower;
    return volume > 0 && test.strokes > 0 ? [{ strokes: test.strokes, volume }] : [];
  });
  if (measured.length === 0) return null;
  const sum = (of: (t: (typeof measured)[number]) => number) => measured.reduce((s, t) => s + of(t), 0);
  const mm3PerStroke = sum((t) => t.strokes * t.volume) / sum((t) => t.strokes ** 2);
  const variance =
    sum((t) => (t.volume / t.strokes / mm3PerStroke - 1) ** 2) / Math.max(1, measured.length - 1);
  return {
    mm3PerStroke,
    atRadiusMm,
    spread: measured.length > 1 ? Math.sqrt(variance) : null,
    tests: measured.length,
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
