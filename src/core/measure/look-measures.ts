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
import { HALF_TURN, isItself, SIDEWAYS, UPSIDE_DOWN } from "./mirrors.ts";
import {
  BACK,
  emptyEnds,
  GRID,
  INSIDE,
  leaningViewer,
  type RayBody,
  type RayEnds,
  StraightRays,
  seenOf,
  THROUGH,
} from "./straight-rays.ts";

interface FaceMeasures {
  /** Shares of what is seen of the piece, 0 .. 1, mean over the leans. */
  readonly back: number;
  readonly through: number;
  readonly inside: number;
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

/** Twelve lamps in the corners of an icosahedron about the viewer; a ray that leaves within 8 degrees of one is lit. */
const GOLDEN = (1 + Math.sqrt(5)) / 2;
const LIT_COSINE = Math.cos((8 * Math.PI) / 180) * Math.hypot(1, GOLDEN);

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

/** Marks the grid places that are lit, as the viewer of this lean sees the lamps. */
function markLit({ fates, ends }: RayEnds, leanDeg: number, lit: Uint8Array): void {
  const { up, view } = leaningViewer(leanDeg);
  for (let k = 0; k < fates.length; k++) {
    if (fates[k] !== BACK && fates[k] !== THROUGH) {
      lit[k] = 0;
      continue;
    }
    const y = ends[3 * k + 1];
    const z = ends[3 * k + 2];
    const a = Math.abs(ends[3 * k]);
    const b = Math.abs(y * up[1] + z * up[2]);
    const c = Math.abs(y * view[1] + z * view[2]);
    lit[k] = Math.max(b + GOLDEN * c, a + GOLDEN * b, c + GOLDEN * a) >= LIT_COSINE ? 1 : 0;
  }
}

const differing = (a: Uint8Array, b: Uint8Array): number => {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k] ^ b[k];
  return sum;
};

/** Which of the measures are wanted: each costs rays. */
export type LookNeed = "face" | "sparkle" | "images";

/** What looking needs of memory, to be used again by who looks at thousands. */
export interface LookRoom {
  readonly ends: RayEnds;
  readonly lit: readonly [Uint8Array, Uint8Array];
  /** One ray of so many is followed. */
  readonly every: number;
}

/**
 * @param grid rays across: `GRID` for the measures as they are defined, fewer for a guess at them
 * @param every 1 for the measures, more for a guess
 */
export function lookRoom(grid = GRID, every = 1): LookRoom {
  const ends = emptyEnds(grid);
  return { ends, lit: [new Uint8Array(ends.fates.length), new Uint8Array(ends.fates.length)], every };
}

/**
 * Looks at the body from one lean after another. What mirrors give for free is not traced twice: a body that is its own image
 * where y becomes -y, or turned half round, shows the same from the other lean, upside down or turned, and the lamps stand the
 * same way whichever way up.
 * @param rays of this body, where it is looked at more than once
 * @returns only what was asked for
 */
export function measureLook(
  body: RayBody,
  needs: readonly LookNeed[],
  room: LookRoom = lookRoom(),
  rays = new StraightRays(body),
): Partial<LookMeasures> {
  const { ends } = room;
  const isSameBothSides = isItself(body, SIDEWAYS);
  const isSameBothLeans = isItself(body, UPSIDE_DOWN) || isItself(body, HALF_TURN);
  const first = isSameBothLeans ? 0 : -MOST_LEAN;
  const [wantsFace, wantsSparkle, wantsImages] = (["face", "sparkle", "images"] as const).map((need) =>
    needs.includes(need),
  );
  const sums = { back: 0, through: 0, inside: 0, turned: 0, images: 0 };
  let [lit, next] = room.lit;
  let seenBefore = 0;
  for (let lean = first; lean <= MOST_LEAN; lean++) {
    const isOnFace = wantsFace && lean % LEAN_STEP === 0;
    if (!wantsSparkle && !isOnFace && !(wantsImages && lean === 0)) continue;
    // images ask where each ray meets the inside
    rays.look(leaningViewer(lean), ends, isSameBothSides, wantsImages && lean === 0, room.every);
    const seen = Math.max(1, seenOf(ends));
    if (isOnFace) {
      const weight = isSameBothLeans && lean > 0 ? 2 : 1;
      sums.back += (weight * ends.counts[BACK]) / seen;
      sums.through += (weight * ends.counts[THROUGH]) / seen;
      sums.inside += (weight * ends.counts[INSIDE]) / seen;
    }
    if (wantsImages && lean === 0) sums.images = countImages(ends);
    if (!wantsSparkle) continue;
    markLit(ends, lean, next);
    if (lean > first) {
      const turned = differing(lit, next);
      sums.turned += turned / seenBefore;
      // from -lean to -lean + 1 the same places turn, over what is seen at -lean
      if (isSameBothLeans) sums.turned += turned / seen;
    }
    seenBefore = seen;
    [lit, next] = [next, lit];
  }
  const leans = (2 * MOST_LEAN) / LEAN_STEP + 1;
  const { back, through, inside, turned, images } = sums;
  return {
    ...(wantsFace ? { back: back / leans, through: through / leans, inside: inside / leans } : {}),
    ...(wantsSparkle ? { sparkle: (100 * turned) / (2 * MOST_LEAN) } : {}),
    ...(wantsImages ? { images } : {}),
  };
}
