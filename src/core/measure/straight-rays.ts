/**
 * What a far viewer sees of a piece by straight rays of one colour, each followed along its stronger way: in through the
 * surface, reflected where reflection is total, out where it is not, until it leaves or meets the design inside. Exact for
 * every ray, a count on a grid for the whole. Unit sphere. Nothing is allocated for a ray: patterns are looked at by the thousand.
 */
import type { Vec3 } from "../geometry/vec.ts";
import { SKIN } from "../optics/body.ts";
import { BACKING, BUBBLE, CORE, hitDesign, type SceneDesign, TINTED_CORE } from "../optics/inside.ts";

/** Rays across the picture of the ball: measures are counted on a grid of so many by so many. */
export const GRID = 96;
/** After so many reflections a ray counts as neither. */
const MOST_REFLECTIONS = 40;

/** What becomes of a ray. */
const MISSED = 0;
export const BACK = 1;
export const THROUGH = 2;
export const INSIDE = 3;
const NEITHER = 4;

/** The parts of a scene that straight rays need. */
export interface RayBody {
  readonly planeCount: number;
  /** Four numbers a plane: outward unit normal, distance h from the centre. */
  readonly planes: Float64Array;
  readonly nd: number;
  readonly designs: readonly SceneDesign[];
}

/** A viewer far away in direction `view`; `right` and `up` make a right-handed frame with it. All unit. */
export interface Viewer {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly view: Vec3;
}

/** The viewer at a lean of the piece's front about its x axis, degrees. */
export function leaningViewer(leanDeg: number): Viewer {
  const t = (leanDeg * Math.PI) / 180;
  const [s, c] = [Math.sin(t), Math.cos(t)];
  return { right: [1, 0, 0], up: [0, c, -s], view: [0, s, c] };
}

/** Where all rays of one viewer end; ray (i, j) is entry grid * j + i, j upwards. Filled anew by each look. */
export interface RayEnds {
  /** Rays across. */
  readonly grid: number;
  readonly fates: Uint8Array;
  /** Three numbers a ray: the direction in which it left, or the place where it met the inside. */
  readonly ends: Float64Array;
  /** How many rays have each fate. */
  readonly counts: Uint32Array;
}

export const emptyEnds = (grid = GRID): RayEnds => ({
  grid,
  fates: new Uint8Array(grid * grid),
  ends: new Float64Array(3 * grid * grid),
  counts: new Uint32Array(NEITHER + 1),
});

/** Rays that meet the piece. */
export const seenOf = ({ fates, counts }: RayEnds): number => fates.length - counts[MISSED];

const isBall = ({ kind }: SceneDesign): boolean => kind === CORE || kind === BUBBLE || kind === TINTED_CORE;

/** Place of a ray on the surface and its direction, and where it ended. */
const [PX, PY, PZ, DX, DY, DZ] = [0, 1, 2, 3, 4, 5];

/** The right half from the left one. */
function fillMirrored({ grid, fates, ends, counts }: RayEnds): void {
  for (let j = 0; j < grid; j++)
    for (let i = 0; i < grid / 2; i++) {
      const [from, to] = [grid * j + i, grid * j + grid - 1 - i];
      fates[to] = fates[from];
      ends[3 * to] = -ends[3 * from];
      ends[3 * to + 1] = ends[3 * from + 1];
      ends[3 * to + 2] = ends[3 * from + 2];
    }
  for (let fate = 0; fate < counts.length; fate++) counts[fate] *= 2;
}

/** One body, ready for many viewers. */
export class StraightRays {
  private readonly body: RayBody;
  /** Balls and ellipsoids as twelve numbers each: centre, then the three axes over their half lengths. */
  private readonly balls: Float64Array;
  private readonly others: readonly SceneDesign[];
  private readonly hasInside: boolean;
  private readonly ray = new Float64Array(6);
  /** For each plane as this viewer's rays come: n.right, n.up, n.d; and the direction of a ray that goes in through it. */
  private readonly coming: Float64Array;
  private readonly entered: Float64Array;

  constructor(body: RayBody) {
    this.body = body;
    const designs = body.designs.filter(({ kind }) => kind !== BACKING);
    this.balls = Float64Array.from(
      designs
        .filter(isBall)
        .flatMap(({ centre, axisX, axisY, axisZ, size }) => [
          ...centre,
          ...[axisX, axisY, axisZ].flatMap((axis, k) => axis.map((a) => a / size[k])),
        ]),
    );
    this.others = designs.filter((design) => !isBall(design));
    this.hasInside = designs.length > 0;
    this.coming = new Float64Array(3 * body.planeCount);
    this.entered = new Float64Array(3 * body.planeCount);
  }

  /**
   * Follows every ray of a viewer.
   * @param into a grid of an even number of rays across
   * @param isMirrored the body is its own image where x becomes -x, and so is the viewer: one half is traced, the other filled in
   */
  look(viewer: Viewer, into: RayEnds, isMirrored = false): void {
    const { grid, fates, ends, counts } = into;
    const { ray } = this;
    const columns = isMirrored ? grid / 2 : grid;
    this.face(viewer);
    counts.fill(0);
    for (let j = 0; j < grid; j++) {
      const y = (2 * j + 1) / grid - 1;
      for (let i = 0; i < columns; i++) {
        const k = grid * j + i;
        const surface = this.enter((2 * i + 1) / grid - 1, y, viewer);
        const fate = surface < SKIN ? MISSED : this.follow(surface, viewer.view);
        fates[k] = fate;
        counts[fate]++;
        const at = fate === INSIDE ? PX : DX;
        ends[3 * k] = ray[at];
        ends[3 * k + 1] = ray[at + 1];
        ends[3 * k + 2] = ray[at + 2];
      }
    }
    if (isMirrored) fillMirrored(into);
  }

  /** Works out what all rays of one viewer share: they come in parallel. */
  private face({ right, up, view }: Viewer): void {
    const { planeCount, planes, nd } = this.body;
    const { coming, entered } = this;
    const eta = 1 / nd;
    for (let i = 0; i < planeCount; i++) {
      const [nx, ny, nz] = [planes[4 * i], planes[4 * i + 1], planes[4 * i + 2]];
      const cosI = nx * view[0] + ny * view[1] + nz * view[2];
      coming[3 * i] = nx * right[0] + ny * right[1] + nz * right[2];
      coming[3 * i + 1] = nx * up[0] + ny * up[1] + nz * up[2];
      coming[3 * i + 2] = -cosI;
      const k = eta * cosI - Math.sqrt(Math.max(0, 1 - eta * eta * (1 - cosI * cosI)));
      entered[3 * i] = k * nx - eta * view[0];
      entered[3 * i + 1] = k * ny - eta * view[1];
      entered[3 * i + 2] = k * nz - eta * view[2];
    }
  }

  /** Sets `ray` to where the ray at (x, y) is just within the surface. Gives that surface, less than SKIN for a miss. */
  private enter(x: number, y: number, { right, up, view }: Viewer): number {
    const { planeCount, planes, nd } = this.body;
    const { coming, entered, ray } = this;
    const room = 1 - x * x - y * y;
    if (room <= 0) return SKIN - 1;
    const root = Math.sqrt(room);
    // the farthest entry among all surfaces, if before the first exit
    let enter = -root;
    let exit = root;
    let surface = SKIN;
    for (let i = 0; i < planeCount; i++) {
      const facing = coming[3 * i + 2];
      const above = planes[4 * i + 3] - x * coming[3 * i] - y * coming[3 * i + 1];
      if (facing === 0) {
        if (above < 0) return SKIN - 1;
        continue;
      }
      const t = above / facing;
      if (facing > 0) {
        if (t < exit) exit = t;
      } else if (t > enter) {
        enter = t;
        surface = i;
      }
    }
    if (enter >= exit) return SKIN - 1;
    ray[PX] = x * right[0] + y * up[0] - enter * view[0];
    ray[PY] = x * right[1] + y * up[1] - enter * view[1];
    ray[PZ] = x * right[2] + y * up[2] - enter * view[2];
    if (surface !== SKIN) {
      ray[DX] = entered[3 * surface];
      ray[DY] = entered[3 * surface + 1];
      ray[DZ] = entered[3 * surface + 2];
      return surface;
    }
    // the ball's normal is the place itself
    const eta = 1 / nd;
    const k = eta * root - Math.sqrt(Math.max(0, 1 - eta * eta * (1 - root * root)));
    ray[DX] = k * ray[PX] - eta * view[0];
    ray[DY] = k * ray[PY] - eta * view[1];
    ray[DZ] = k * ray[PZ] - eta * view[2];
    return SKIN;
  }

  /**
   * Follows `ray` from the surface it has come in by. What is left in it: the direction it left in, or the place of the inside.
   * The surface just left is passed over by its number; one that rounding puts a hair behind the place is met at once.
   */
  private follow(first: number, view: Vec3): number {
    const { planeCount, planes, nd } = this.body;
    const { ray, hasInside } = this;
    const nd2 = nd * nd;
    let px = ray[PX];
    let py = ray[PY];
    let pz = ray[PZ];
    let dx = ray[DX];
    let dy = ray[DY];
    let dz = ray[DZ];
    let from = first;
    for (let reflections = 0; reflections < MOST_REFLECTIONS; reflections++) {
      const b = px * dx + py * dy + pz * dz;
      let t: number;
      // from the ball to itself the chord is exactly 2 cos
      if (from === SKIN) t = -2 * b;
      else t = Math.sqrt(Math.max(0, b * b + 1 - px * px - py * py - pz * pz)) - b;
      if (t < 0) t = 0;
      let surface = SKIN;
      let cosine = 0;
      for (let i = 0, k = 0; i < planeCount; i++, k += 4) {
        const facing = planes[k] * dx + planes[k + 1] * dy + planes[k + 2] * dz;
        if (facing <= 0 || i === from) continue;
        const above = planes[k + 3] - planes[k] * px - planes[k + 1] * py - planes[k + 2] * pz;
        if (above >= t * facing) continue;
        t = above > 0 ? above / facing : 0;
        surface = i;
        cosine = facing;
      }
      if (hasInside) {
        const met = this.inside(px, py, pz, dx, dy, dz, t);
        if (met >= 0) {
          ray[PX] = px + met * dx;
          ray[PY] = py + met * dy;
          ray[PZ] = pz + met * dz;
          return INSIDE;
        }
      }
      px += t * dx;
      py += t * dy;
      pz += t * dz;
      let nx = px;
      let ny = py;
      let nz = pz;
      if (surface === SKIN) {
        const size = 1 / Math.sqrt(px * px + py * py + pz * pz);
        nx *= size;
        ny *= size;
        nz *= size;
        px = nx;
        py = ny;
        pz = nz;
        cosine = Math.max(0, nx * dx + ny * dy + nz * dz);
      } else {
        nx = planes[4 * surface];
        ny = planes[4 * surface + 1];
        nz = planes[4 * surface + 2];
        // back onto the plane, so that roundings do not add up
        const off = planes[4 * surface + 3] - nx * px - ny * py - nz * pz;
        px += off * nx;
        py += off * ny;
        pz += off * nz;
      }
      const cos2Out = 1 - nd2 * (1 - cosine * cosine);
      if (cos2Out > 0) {
        const k = Math.sqrt(cos2Out) - nd * cosine;
        ray[DX] = nd * dx + k * nx;
        ray[DY] = nd * dy + k * ny;
        ray[DZ] = nd * dz + k * nz;
        return ray[DX] * view[0] + ray[DY] * view[1] + ray[DZ] * view[2] > 0 ? BACK : THROUGH;
      }
      dx -= 2 * cosine * nx;
      dy -= 2 * cosine * ny;
      dz -= 2 * cosine * nz;
      from = surface;
    }
    return NEITHER;
  }

  /** Distance within `most` to the nearest design inside, or -1. A start within one meets it at once. */
  private inside(
    px: number,
    py: number,
    pz: number,
    dx: number,
    dy: number,
    dz: number,
    most: number,
  ): number {
    const { balls, others } = this;
    let nearest = most;
    let isMet = false;
    for (let k = 0; k < balls.length; k += 12) {
      const qx = px - balls[k];
      const qy = py - balls[k + 1];
      const qz = pz - balls[k + 2];
      let a = 0;
      let b = 0;
      let c = -1;
      for (let axis = k + 3; axis < k + 12; axis += 3) {
        const place = balls[axis] * qx + balls[axis + 1] * qy + balls[axis + 2] * qz;
        const along = balls[axis] * dx + balls[axis + 1] * dy + balls[axis + 2] * dz;
        a += along * along;
        b += place * along;
        c += place * place;
      }
      const room = b * b - a * c;
      if (room <= 0) continue;
      const root = Math.sqrt(room);
      const enter = (-b - root) / a;
      if (root <= b || enter >= nearest) continue;
      nearest = Math.max(0, enter);
      isMet = true;
    }
    for (const design of others) {
      const hit = hitDesign(design, [px, py, pz], [dx, dy, dz], nearest, SKIN - 1);
      if (!hit) continue;
      nearest = hit.t;
      isMet = true;
    }
    return isMet ? nearest : -1;
  }
}
