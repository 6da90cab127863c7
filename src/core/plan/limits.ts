/**
 * What a plan may say: the range of every number and the size of every list. Fields of a form and checks of a file
 * take their limits from here, so that a screen never lets through what a file would refuse. mm and degrees.
 */

/** Closed range, unless `openMin`: then the least value itself is not allowed. */
export interface Range {
  readonly min: number;
  readonly max: number;
  readonly integer?: boolean;
  readonly openMin?: boolean;
}

/** Nothing on a workshop's bench is longer than this, mm. */
const BENCH = 5000;
const anyNumber = { min: -Number.MAX_VALUE, max: Number.MAX_VALUE };
const positive = (max: number): Range => ({ min: 0, max, openMin: true });

export const RANGES = {
  diameterMm: { min: 3, max: 300 },
  armAngleDeg: { min: 0, max: 90 },
  count: { min: 1, max: 120, integer: true },
  wheelStops: { min: 2, max: 400, integer: true },
  /** A stop of the coarsest wheel is half a turn. */
  indexTrimDeg: { min: 0, max: 180 },
  /** Angles counted round the axis may be any finite number of turns. */
  turnDeg: anyNumber,
  /** Steeper than this no skin is that came round from the flame. */
  seedBubbles: { min: 0, max: 3000, integer: true },
  /** Larger ones are bubbles, which are designs. */
  seedMm: { min: 0.02, max: 1 },
  waveSlopeDeg: { min: 0, max: 5 },
  waveAcrossMm: { min: 0.5, max: 300 },
  /** Far more than any piece is wide, so that what can't be met is answered by the rule, not by the file. */
  ruleMm: { min: 0, max: 1e6 },
  toleranceMm: positive(10),
  /** From below the index of air (an index-matched check) to above every transparent solid. */
  nd: { min: 1, max: 4 },
  vd: { min: 5, max: 1000 },
  densityGcm3: { min: 0.5, max: 15 },
  unit: { min: 0, max: 1 },
  sizeMm: positive(300),
  offsetMm: { min: -300, max: 300 },
  tiltDeg: { min: -180, max: 180 },
  ribbonTurns: { min: -50, max: 50 },
  /** Strands of a twisted cane, fine threads over them, arms of a swirl, bubbles in a row or a ring. */
  strands: { min: 2, max: 12, integer: true },
  threads: { min: 0, max: 24, integer: true },
  arms: { min: 1, max: 12, integer: true },
  bubbles: { min: 2, max: 10, integer: true },
  fadeMm: { min: 0, max: 20 },
  petals: { min: 2, max: 60, integer: true },
  speckles: { min: 1, max: 5000, integer: true },
  seed: { min: 0, max: 2 ** 32 - 1, integer: true },
  heightMm: { min: -150, max: 150 },
  lengthMm: positive(BENCH),
  distanceMm: { min: 0, max: BENCH },
  pivotHeightMm: { min: -BENCH, max: BENCH },
  hingeOffsetMm: { min: -500, max: 500 },
  rpm: { min: 0, max: 20_000 },
  grainUm: positive(5000),
  damageUm: { min: 0, max: 20_000 },
  discMm: { min: 0, max: 200 },
  gritNumber: positive(100_000),
  strokes: positive(1_000_000),
  discStrokes: { min: 0, max: 10_000_000 },
  /** Minutes of one task: a working day at most. */
  taskMin: { min: 0, max: 600 },
  strokeSeconds: positive(60),
  widthMm: { min: 0, max: 300 },
  gapMm: { min: -1000, max: 1000 },
  acrossMm: { min: 0, max: 600 },
  readDeg: { min: -90, max: 180 },
  sdMm: positive(50),
  sdDeg: positive(90),
  spreadMm: { min: 0, max: 50 },
  spreadDeg: { min: 0, max: 90 },
  /** Money: enough for any currency's small coins. */
  amount: { min: 0, max: 1e9 },
  /** Ten times at most, so that a share given in per cent is noticed. */
  share: { min: 0, max: 10 },
  roundTo: positive(1e6),
  validDays: { min: 1, max: 3650, integer: true },
} as const satisfies Record<string, Range>;

/** A mark: a picture that is its own address, so that nothing is fetched. */
export const MARK = /^data:image\/(?:png|svg\+xml);base64,[A-Za-z0-9+/]+={0,2}$/;

/** A currency's code by ISO 4217. */
export const CURRENCY = /^[A-Z]{3}$/;

/** Longest texts, in UTF-16 units. */
export const TEXT = {
  id: 100,
  facetId: 104,
  name: 500,
  notes: 20_000,
  label: 40,
  terms: 2000,
  mark: 100_000,
} as const;

/** Longest lists. */
export const COUNTS = {
  tiers: 60,
  facets: 1000,
  otherDiameters: 2,
  cased: 4,
  inside: 12,
  stages: 24,
  calibrations: 50,
} as const;

/** Pictures that a plan carries: how many, pixels along an edge, and characters of text together. */
export const PICTURES = { count: 8, edge: 2048, characters: 3 * 1024 * 1024 } as const;

/**
 * Size of a plan file, its pictures included: UTF-16 units of text, bytes (a unit takes three in UTF-8 at most, a picture's
 * one), and depth of brackets within brackets.
 */
export const FILE = {
  characters: 2_000_000 + PICTURES.characters,
  bytes: 6_000_000 + PICTURES.characters,
  depth: 32,
} as const;

export function isWithin(range: Range, value: number): boolean {
  if (!Number.isFinite(value) || (range.integer && !Number.isInteger(value))) return false;
  return (range.openMin ? value > range.min : value >= range.min) && value <= range.max;
}
