/**
 * The plan: one frozen plain document that says everything about a piece and how it is to be cut.
 * Lengths in millimetres, angles in degrees, as in the file. The shapes here and the checks in `schema.ts` are one.
 */
import type { AnyInsideDesign } from "../inside/records.ts";
import type { GlassName } from "../optics/glasses.ts";
import type { Bond } from "./bonds.ts";

export type Side = "front" | "back";
export type Finish = "ground" | "prepolished" | "polished";

interface Sized {
  readonly mm: number;
}
/** What each depth rule says beside its name: a length, the id of an earlier tier, or nothing. */
interface RuleFields {
  depth: Sized;
  width: Sized;
  gap: Sized;
  touch: Readonly<Record<never, never>>;
  edge: Sized;
  close: { readonly to: string };
  corners: { readonly of: string };
}
export type RuleName = keyof RuleFields;
export type RuleOf<R extends RuleName> = { readonly [K in R]: { readonly rule: K } & RuleFields[K] }[R];
export type DepthRule = RuleOf<RuleName>;

export interface OwnGlass {
  readonly name: string;
  readonly nd: number;
  readonly vd: number;
  readonly densityGcm3: number;
}
export type Glass = GlassName | OwnGlass;

export interface Dop {
  readonly side: Side;
  readonly diameterMm: number;
  readonly lengthMm?: number;
  readonly chuckDiameterMm?: number;
}

/** Colour that a clear glass takes: linear sRGB transmittance (0..1 each) seen through `atMm` of it. */
export interface Tint {
  readonly rgb: readonly [number, number, number];
  readonly atMm: number;
}

/** A layer of the glass: all within this ball about the centre has its colour instead; without one it is clear. */
export interface Cased {
  readonly diameterMm: number;
  readonly tint?: Tint;
}

/** How far a fire-polished skin sways: root mean square of its slope, and how far it is from crest to crest. */
export interface SkinWaves {
  readonly slopeDeg: number;
  readonly acrossMm: number;
  readonly seed?: number;
}

/** Tiny bubbles that melting left: so many in the whole ball, all of one size. */
export interface SeedBubbles {
  readonly count: number;
  readonly diameterMm: number;
  readonly seed?: number;
}

/** Where a thing inside sits: offset of its centre from the ball's centre (mm), tilt of its axis from +z, then turn about +z from the ink mark. */
export interface Placement {
  readonly atMm?: readonly [number, number, number];
  readonly tiltDeg?: number;
  readonly turnDeg?: number;
}
export type Rgb = readonly [number, number, number];

/** Each kind's fields stand in its own file of `core/inside/`. */
export type InsideDesign = AnyInsideDesign;

export interface Piece {
  readonly diameterMm: number;
  /** Further diameters measured elsewhere on the piece, at most two more. */
  readonly otherDiametersMm?: readonly number[];
  readonly glass: Glass;
  readonly tint?: Tint;
  /** Layers under the outermost glass, which `tint` colours: a place has the colour of the smallest ball that holds it. */
  readonly cased?: readonly Cased[];
  readonly seeds?: SeedBubbles;
  /** Of the natural skin; facets are flat. Without it the skin is round. */
  readonly waviness?: SkinWaves;
  readonly inside?: readonly InsideDesign[];
  readonly dop?: Dop;
  /** Azimuth of the ink line that the maker draws on the skin, default 0. */
  readonly inkMarkDeg?: number;
}

export interface Arm {
  readonly lengthMm: readonly [number, number];
  readonly pivotToAxisMm: number;
  readonly pivotHeightMm: readonly [number, number];
  readonly hingeOffsetMm?: number;
}
export interface Lap {
  readonly diameterMm: number;
  readonly bandMm: readonly [number, number];
  readonly rpm: number;
}
/**
 * One test facet: `strokes` strokes at this stage gave `widthMm`, on a ball of `diameterMm` (default the piece), at contact
 * radius `radiusMm`, on a disc that had done `discStrokes` strokes before (default 0, a new disc).
 */
export interface Calibration {
  readonly strokes: number;
  readonly widthMm: number;
  readonly fromWidthMm?: number;
  readonly diameterMm?: number;
  readonly radiusMm?: number;
  readonly discStrokes?: number;
}
export type GritScale = "fepa-f" | "fepa-p" | "jis" | "ansi" | "mesh";
export interface Stage {
  readonly id: string;
  readonly name: string;
  readonly grainUm: number;
  /** The grit number as the maker states it; the same number means different sizes on different scales. */
  readonly grit?: { readonly scale: GritScale; readonly number: number };
  readonly bond?: Bond;
  readonly damageUm?: number;
  readonly discMm?: number;
  readonly calibration?: readonly Calibration[];
  /** Strokes that the disc in use has done by now; default as many as after the latest test. */
  readonly discStrokes?: number;
  /** The face that this abrasive leaves; default by its place: the last polishes, of three or more the one before pre-polishes. */
  readonly leaves?: Finish;
}
/** The dop of one set-up: what is cemented on while that side is cut. */
export interface SetUpDop {
  readonly diameterMm: number;
  readonly lengthMm?: number;
  readonly chuckDiameterMm?: number;
  /** How far the piece's axis circles about the dop's, mm. */
  readonly runOutMm?: number;
}
/** How one side is held: what the index wheel reads there. */
export interface SetUp {
  /** Azimuth (degrees, seen from the front) at which the wheel's stop 0 stands. */
  readonly zeroDeg?: number;
  /** Whether stop numbers grow with or against the azimuth; turning the piece over reverses the wheel. */
  readonly direction?: "with" | "against";
  /** What the wheel calls its zero stop, for example "96" on a wheel numbered 1..96. */
  readonly zeroLabel?: string;
  readonly wheelStops?: number | null;
  readonly dop?: SetUpDop;
}
/** The artist's own spread: one standard deviation of each setting. */
export interface Spread {
  readonly armDeg?: number;
  readonly stopDeg?: number;
  readonly depthMm?: number;
  /** How far off an angle comes back when it is found again, degrees. */
  readonly againDeg?: number;
}
/** Minutes that the parts of the work take this artist, and seconds that a stroke takes. */
export interface Habits {
  readonly prepareMin?: number;
  readonly setArmMin?: number;
  readonly findAngleMin?: number;
  readonly discMin?: number;
  readonly cleanMin?: number;
  readonly indexMin?: number;
  readonly inspectMin?: number;
  readonly measureMin?: number;
  readonly turnOverMin?: number;
  readonly strokeSeconds?: number;
}
export interface Rig {
  readonly wheelStops: number | null;
  /** How far the index can be trimmed between stops, either way, degrees; 0 without. */
  readonly indexTrimDeg?: number;
  readonly arm?: Arm;
  readonly lap?: Lap;
  readonly stages?: readonly Stage[];
  readonly setUps?: { readonly front?: SetUp; readonly back?: SetUp };
  readonly spread?: Spread;
  readonly habits?: Habits;
}

export interface Measured {
  readonly widthMm?: number;
  readonly heightMm?: number;
  readonly gapMm?: number;
  readonly edgeMm?: number;
  readonly acrossMm?: number;
  readonly flatToSkinMm?: number;
  /** Outside calipers, one jaw flat on the facet, the other at the farthest point opposite. */
  readonly caliperMm?: number;
  readonly readDeg?: number;
  readonly pivotHeightMm?: number;
  readonly armLengthMm?: number;
}
export interface AsCut extends Measured {
  readonly sdMm?: number;
  readonly readSdDeg?: number;
  readonly facets?: Readonly<Record<string, Measured>>;
}

export interface Tier {
  readonly id: string;
  readonly name: string;
  readonly side: Side;
  readonly armAngleDeg: number;
  readonly count: number;
  readonly startDeg: number;
  readonly depth: DepthRule;
  readonly finish?: Finish;
  readonly asCut?: AsCut;
}

/**
 * Where the work at the lap stands: the facet that is to be ground next, at which stage; with `done` the facet that was ground
 * last, where what comes next is no facet (a disc, an arm, the end of the work). None before the first facet.
 */
export interface Work {
  readonly tier: string;
  readonly stage: string;
  /** `tierId/k` of that tier. */
  readonly facet: string;
  readonly done?: boolean;
}

/** Who made the piece, as a customer reads it. */
export interface Maker {
  readonly name?: string;
  /** Their own mark: a PNG or SVG picture as a `data:` address in base64. */
  readonly mark?: string;
}

/** What a customer's page says of this piece beside its name. */
export interface Showing {
  readonly caption?: string;
  /** As it is to be read, with its currency. */
  readonly price?: string;
}

/** What the artist asks for: amounts in one currency. What is missing is 0, `roundTo` 1. */
export interface Offer {
  /** ISO 4217, three capital letters. */
  readonly currency: string;
  readonly hourly: number;
  /** For glass that is bought by mass; left out where the blank is bought. */
  readonly glassPerKg?: number;
  readonly consumables?: number;
  readonly blank?: number;
  /** Of labour, glass, consumables and blank: 0.1 is a tenth. */
  readonly overheadShare?: number;
  /** Of all that. */
  readonly taxShare?: number;
  readonly roundTo?: number;
  /** The artist's own terms, as they stand on a quote. */
  readonly terms?: string;
  /** Days for which a quote holds. */
  readonly validDays?: number;
}

export interface Plan {
  readonly format: "glintwright-plan";
  readonly version: 1;
  readonly name: string;
  readonly notes?: string;
  readonly toleranceMm?: number;
  readonly piece: Piece;
  readonly rig: Rig;
  readonly tiers: readonly Tier[];
  /** Pictures for the inside, by id: PNG or JPEG as data URLs, see `pictures.ts`. */
  readonly pictures?: Readonly<Record<string, string>>;
  readonly work?: Work;
  readonly offer?: Offer;
  readonly maker?: Maker;
  readonly showing?: Showing;
}
