/**
 * What the eye gets of a piece, as numbers: how much of its face sends light back, lets one see through or shows what is inside,
 * how much of it turns on and off as it leans, and how many times the inside is seen. Straight rays of one colour (n_d),
 * polished glass, a viewer far away: exact for each ray, a count on a grid of 96 x 96 for the whole.
 */
import { indexAt, LINE_D_NM, opticalGlass } from "../optics/glasses.ts";
import { packDesigns } from "../optics/inside.ts";
import type { Rasters } from "../optics/raster.ts";
import type { SolvedPlan } from "../plan/solved.ts";
import { countImages } from "./images.ts";
import { kernelFor, type RayKernel } from "./kernel/kernel.ts";
import { HALF_TURN, isItself, SIDEWAYS, UPSIDE_DOWN } from "./mirrors.ts";
import { ALL_PARTS, ALL_PLACES, LEFT_PLACES, type Places } from "./places.ts";
import {
  BACK,
  emptyEnds,
  emptyMarks,
  INSIDE,
  NEITHER,
  type RayBody,
  type RayLooker,
  type RayMarks,
  StraightRays,
  seenOf,
  THROUGH,
} from "./straight-rays.ts";
import { leaningViewer, type Viewer } from "./viewer.ts";

interface FaceMeasures {
  /** Shares of what is seen of the piece, 0 .. 1, mean over the leans. */
  readonly back: number;
  readonly through: number;
  readonly inside: number;
}
/** What leaning shows; sparkle only where it was asked for. */
export interface LookCounts extends FaceMeasures {
  readonly sparkle?: number;
}
export interface LookMeasures extends FaceMeasures {
  /** Per cent of the face that turns on or off for each degree of leaning. */
  readonly sparkle: number;
  /** Separate images of the inside, seen straight from the front. */
  readonly images: number;
}

/** Leans, degrees: -20, -15 .. 20 for the shares, every degree between for the sparkle. */
const MOST_LEAN = 20;
const LEAN_STEP = 5;

/** What is looked at: planes, glass and inside of a solved plan; a picture is met where more than half of it is there. */
export function rayBodyOf({ plan, planes }: SolvedPlan, rasters: Rasters = new Map()): RayBody {
  const nd = indexAt(opticalGlass(plan.piece.glass).dispersion, LINE_D_NM);
  return {
    planeCount: planes.length,
    planes: Float64Array.from(planes.flatMap(({ n, h }) => [...n, h])),
    nd,
    designs: packDesigns(plan.piece, nd, rasters),
  };
}

/** How many of the places in this part of the order are lit in one of the two and not in the other. */
function differing(a: RayMarks, b: RayMarks, [from, to]: readonly [number, number]): number {
  const wordsFrom = Math.min(to, (from + 3) & ~3);
  const wordsTo = Math.max(wordsFrom, to & ~3);
  let sum = 0;
  for (let r = from; r < wordsFrom; r++) sum += a.lit[r] ^ b.lit[r];
  // four at a time: bytes of 0 or 1, so that this product has their sum in its highest
  for (let w = wordsFrom >> 2, last = wordsTo >> 2; w < last; w++)
    sum += Math.imul(a.litWords[w] ^ b.litWords[w], 0x01010101) >>> 24;
  for (let r = wordsTo; r < to; r++) sum += a.lit[r] ^ b.lit[r];
  return sum;
}

/** What looking needs of memory, to be used again by who looks at thousands: what is seen at each lean. */
export interface LookRoom {
  readonly marks: readonly RayMarks[];
  /** Who follows rays where it can, with the marks in its own memory; null where rays are followed without. */
  readonly kernel: RayKernel | null;
}

/** Leans of one piece at the most. */
const LEANS = 2 * MOST_LEAN + 1;
const plainRoom = (leans: number): LookRoom => ({
  marks: Array.from({ length: leans }, () => emptyMarks()),
  kernel: null,
});
/** Room for all leans at a time: looks may be broken off and gone on with. */
export function lookRoom(): LookRoom {
  const kernel = kernelFor(LEANS);
  return kernel ? { marks: kernel.marks, kernel } : plainRoom(LEANS);
}
/** Room for one lean and the next: enough for all places at once. */
const smallRoom = (): LookRoom => plainRoom(2);

/**
 * Looks at a body from one lean after another, at few places of the grid or all. What mirrors give for free is not traced: a body
 * that is its own image where y becomes -y, or turned half round, shows the same from the other lean, upside down or turned, and the
 * lamps stand the same way whichever way up; of one that is its own image where x becomes -x only the left half is looked at.
 */
export class Looks {
  private readonly rays: RayLooker;
  private readonly room: readonly RayMarks[];
  private readonly places: Places;
  /** Leans that are looked at, degrees, ascending; the first is 0 where the others show the same. */
  private readonly leans: readonly Viewer[];
  private readonly hasSparkle: boolean;
  private readonly isSameBothLeans: boolean;
  private known = 0;
  /** For each lean: rays that meet the piece, those of each fate, and places lit otherwise than at the lean before. */
  private readonly seen: Float64Array;
  private readonly fates: readonly Uint32Array[];
  private readonly turned: Float64Array;

  /** @param hasSparkle sparkle takes four times the looks: only asked for where it decides */
  constructor(body: RayBody, hasSparkle: boolean, room: LookRoom) {
    const rays = new StraightRays(body);
    this.rays = room.kernel?.looker(rays) ?? rays;
    this.room = room.marks;
    this.hasSparkle = hasSparkle;
    this.places = isItself(body, SIDEWAYS) ? LEFT_PLACES : ALL_PLACES;
    this.isSameBothLeans = isItself(body, UPSIDE_DOWN) || isItself(body, HALF_TURN);
    const step = hasSparkle ? 1 : LEAN_STEP;
    const first = this.isSameBothLeans ? 0 : -MOST_LEAN;
    const count = (MOST_LEAN - first) / step + 1;
    this.leans = Array.from({ length: count }, (_, i) => leaningViewer(first + step * i));
    this.seen = new Float64Array(count);
    this.turned = new Float64Array(count);
    this.fates = Array.from({ length: count }, () => new Uint32Array(NEITHER + 1));
  }

  /**
   * Looks at what is missing of so many parts of the grid's 25.
   * @returns the measures as these places count them: exact with all parts
   */
  upTo(parts: number): LookCounts {
    const { places, room, leans, rays } = this;
    const part = [this.known, places.ends[parts]] as const;
    leans.forEach((viewer, i) => {
      const marks = room[i % room.length];
      rays.lookOn(viewer, marks, places, part[0], part[1]);
      this.seen[i] = seenOf(marks);
      this.fates[i].set(marks.counts);
      if (this.hasSparkle && i > 0) this.turned[i] += differing(room[(i - 1) % room.length], marks, part);
    });
    this.known = part[1];
    return this.counted();
  }

  private counted(): LookCounts {
    const { seen, fates, turned, hasSparkle, isSameBothLeans } = this;
    const sums = { back: 0, through: 0, inside: 0, turned: 0 };
    const step = hasSparkle ? LEAN_STEP : 1;
    for (let i = 0; i < seen.length; i++) {
      const rays = Math.max(1, seen[i]);
      if (i % step === 0) {
        const weight = isSameBothLeans && i > 0 ? 2 : 1;
        sums.back += (weight * fates[i][BACK]) / rays;
        sums.through += (weight * fates[i][THROUGH]) / rays;
        sums.inside += (weight * fates[i][INSIDE]) / rays;
      }
      if (i === 0) continue;
      sums.turned += turned[i] / Math.max(1, seen[i - 1]);
      // from -lean to -lean + 1 the same places turn, over what is seen at -lean
      if (isSameBothLeans) sums.turned += turned[i] / rays;
    }
    const leans = (2 * MOST_LEAN) / LEAN_STEP + 1;
    return {
      back: sums.back / leans,
      through: sums.through / leans,
      inside: sums.inside / leans,
      ...(hasSparkle ? { sparkle: (100 * sums.turned) / (2 * MOST_LEAN) } : {}),
    };
  }
}

/** Images of the inside as one sees them straight from the front. */
export function imagesSeen(body: RayBody): number {
  const ends = emptyEnds();
  new StraightRays(body).look(leaningViewer(0), ends);
  return countImages(ends);
}

/** All measures of a look, counted on the whole grid. */
export function measureLook(body: RayBody): LookMeasures {
  const { sparkle = 0, ...face } = new Looks(body, true, smallRoom()).upTo(ALL_PARTS);
  return { ...face, sparkle, images: imagesSeen(body) };
}
