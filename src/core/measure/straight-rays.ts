/**
 * What a far viewer sees of a piece by straight rays of one colour, each followed along its stronger way: in through the
 * surface, reflected where reflection is total, out where it is not, until it leaves or meets the design inside. Exact for
 * every ray, a count on a grid for the whole. Unit sphere. Nothing is allocated for a ray: patterns are looked at by the thousand.
 */
import { SKIN } from "../optics/body.ts";
import type { SceneDesign } from "../optics/inside.ts";
import { type Caps, capsOf, fieldAt } from "./caps.ts";
import { isLamp } from "./lamps.ts";
import { MetInside } from "./met-inside.ts";
import { ALL_PLACES, GRID, NEAR, type Places } from "./places.ts";
import type { Viewer } from "./viewer.ts";

/** After so many reflections a ray counts as neither. */
const MOST_REFLECTIONS = 40;

/** What becomes of a ray. */
const MISSED = 0;
export const BACK = 1;
export const THROUGH = 2;
export const INSIDE = 3;
export const NEITHER = 4;

/** The parts of a scene that straight rays need. */
export interface RayBody {
  readonly planeCount: number;
  /** Four numbers a plane: outward unit normal, distance h from the centre. */
  readonly planes: Float64Array;
  readonly nd: number;
  readonly designs: readonly SceneDesign[];
}

/** Where the rays of one viewer end; ray (i, j) is entry GRID * j + i, j upwards. */
export interface RayEnds {
  readonly fates: Uint8Array;
  /** Three numbers a ray: the direction in which it left, or the place where it met the inside. */
  readonly ends: Float64Array;
  /** How many rays have each fate; of those that miss, only the ones within the ball's outline. */
  readonly counts: Uint32Array;
}

export const emptyEnds = (): RayEnds => ({
  fates: new Uint8Array(GRID * GRID),
  ends: new Float64Array(3 * GRID * GRID),
  counts: new Uint32Array(NEITHER + 1),
});

/**
 * What is kept of the rays of one viewer while more of them are sent: entry r is the r-th in the order in which they are, so that
 * each part lies together in memory. One more entry stands for places that no ray is sent to.
 */
export interface RayMarks {
  readonly fates: Uint8Array;
  /** 1 where a ray leaves towards a lamp. */
  readonly lit: Uint8Array;
  /** The same memory, four entries a word. */
  readonly litWords: Int32Array;
  /** Which planes a ray met, one after the other, and whether it ended inside, as one number; MIXED where the ball's own surface is among them. */
  readonly paths: Float64Array;
  /** The plane by which it came in. */
  readonly entries: Int16Array;
  /** How far the line of such a ray passed the ball inside, at the nearest. */
  readonly clearances: Float64Array;
  /** As of `RayEnds`. */
  readonly counts: Uint32Array;
}

const ENTRIES = ALL_PLACES.order.length + 1;
const WORDS = Math.ceil(ENTRIES / 4);
/** Where each column begins in the memory of one look's marks, the widest first, and how much all take: whole doubles. */
const CLEARANCES = 8 * ENTRIES;
const COUNTS = CLEARANCES + 8 * ENTRIES;
const LIT = COUNTS + 4 * (NEITHER + 1);
const FATES = LIT + 4 * WORDS;
const ENTERED_BY = FATES + 4 * WORDS;
export const MARKS_BYTES = 8 * Math.ceil((ENTERED_BY + 2 * ENTRIES) / 8);

/** Marks without a ray, in this memory from this byte on, which is a whole number of doubles. */
export function emptyMarks(memory: ArrayBufferLike = new ArrayBuffer(MARKS_BYTES), at = 0): RayMarks {
  return {
    fates: new Uint8Array(memory, at + FATES, ENTRIES),
    lit: new Uint8Array(memory, at + LIT, ENTRIES),
    litWords: new Int32Array(memory, at + LIT, WORDS),
    paths: new Float64Array(memory, at, ENTRIES),
    entries: new Int16Array(memory, at + ENTERED_BY, ENTRIES),
    clearances: new Float64Array(memory, at + CLEARANCES, ENTRIES),
    counts: new Uint32Array(memory, at + COUNTS, NEITHER + 1),
  };
}

/** Makes marks ready for a look from the first ray on. */
export function beginLook({ fates, paths, counts }: RayMarks, { order }: Places): void {
  counts.fill(0);
  fates[order.length] = MISSED;
  paths[order.length] = MIXED;
}

/** Sends rays of a viewer to some places of the grid. */
export interface RayLooker {
  /** @param from first of `places`' order, and `to` the one after the last: whole parts; what comes before `from` has been looked at */
  lookOn(viewer: Viewer, into: RayMarks, places: Places, from: number, to: number): void;
}

/** Rays that meet the piece. */
export const seenOf = ({ counts }: Pick<RayEnds, "counts">): number =>
  counts[BACK] + counts[THROUGH] + counts[INSIDE] + counts[NEITHER];

/** Place of a ray on the surface and its direction, or where it ended; and once it has ended, its path, how near it came to the ball inside and the surface it came in by. */
const [PX, PY, PZ, DX, DY, DZ, PATH, CLEARANCE, ENTRY] = [0, 1, 2, 3, 4, 5, 6, 7, 8];
const RAY_NUMBERS = 9;
/** Where the viewer's axes begin. */
const [RIGHT, UP, VIEW] = [0, 3, 6];

const MIXED = -1;
/** Planes are written into a path one after the other, to the base of their number, as far as a double holds whole numbers. */
const MOST_PATH = Number.MAX_SAFE_INTEGER;
/** Rounding of a distance to the ball inside, with room. */
const CLEAR = 1e-9;

/** One body, ready for many viewers. What `kernel/` needs of it can be read. */
export class StraightRays implements RayLooker {
  readonly body: RayBody;
  readonly caps: Caps;
  /** For each plane as this viewer's rays come, four numbers: n.right, n.up, n.d and 0; the direction of a ray that goes in through it and 0. */
  readonly coming: Float64Array;
  readonly entered: Float64Array;
  /** By how much rays that go in through a plane may be farther apart within than they came, at the most. */
  readonly spread: Float64Array;
  /** The only design, a ball about this place with this radius squared; none where it is negative. */
  readonly ball: Float64Array;
  /** The viewer's right, up and view, three numbers each. */
  readonly frame = new Float64Array(9);
  private readonly met: MetInside;
  private readonly ray = new Float64Array(RAY_NUMBERS);

  constructor(body: RayBody) {
    this.body = body;
    this.met = new MetInside(body.designs);
    this.ball = this.met.onlyBall ?? new Float64Array([0, 0, 0, -1]);
    this.caps = capsOf(body.planes, body.planeCount);
    this.coming = new Float64Array(4 * body.planeCount);
    this.entered = new Float64Array(4 * body.planeCount);
    this.spread = new Float64Array(body.planeCount);
  }

  /** Whether there is nothing inside, or one ball. */
  get isSimple(): boolean {
    return this.met.isSimple;
  }

  /** Follows every ray of a viewer one by one, so that it is known where each meets the inside. */
  look(viewer: Viewer, { fates, ends, counts }: RayEnds): void {
    const { order } = ALL_PLACES;
    const { ray } = this;
    this.face(viewer);
    counts.fill(0);
    fates.fill(MISSED);
    for (let r = 0; r < order.length; r++) {
      const k = order[r];
      const fate = this.send(ALL_PLACES, r, false);
      fates[k] = fate;
      counts[fate]++;
      const at = fate === INSIDE ? PX : DX;
      for (let c = 0; c < 3; c++) ends[3 * k + c] = ray[at + c];
    }
  }

  /**
   * Sends rays of a viewer to some places of the grid.
   *
   * Rays that meet the same planes one after the other and nothing else fill a convex part of the picture: each plane turns or
   * mirrors space as a whole, so that being within a facet is a half-plane of the picture for each of its sides. What lies on a line between
   * two places of one such path has it too, and leaves in the same direction. It is not followed, unless
   * a ball inside may stand between; how near it comes is bounded from the two.
   */
  lookOn(viewer: Viewer, into: RayMarks, places: Places, from: number, to: number): void {
    const { near } = places;
    const { ray } = this;
    const { fates, lit, paths, entries, clearances, counts } = into;
    const { isSimple } = this;
    this.face(viewer);
    if (from === 0) beginLook(into, places);
    for (let r = from; r < to; r++) {
      if (!isSimple || !this.isKnown(into, places, r)) {
        // the piece is convex: what lies between two that met it meets it too
        const isSure = fates[near[NEAR * r]] !== MISSED && fates[near[NEAR * r + 1]] !== MISSED;
        const fate = this.send(places, r, isSure);
        fates[r] = fate;
        lit[r] = (fate === BACK || fate === THROUGH) && this.isLit() ? 1 : 0;
        paths[r] = ray[PATH];
        entries[r] = ray[ENTRY];
        clearances[r] = ray[CLEARANCE];
      }
      counts[fates[r]]++;
    }
  }

  /** Whether `ray`, as it leaves, goes towards a lamp. */
  private isLit(): boolean {
    const { ray, frame } = this;
    const x = ray[DX];
    const y = ray[DY];
    const z = ray[DZ];
    return isLamp(
      Math.abs(x * frame[RIGHT] + y * frame[RIGHT + 1] + z * frame[RIGHT + 2]),
      Math.abs(x * frame[UP] + y * frame[UP + 1] + z * frame[UP + 2]),
      Math.abs(x * frame[VIEW] + y * frame[VIEW + 1] + z * frame[VIEW + 2]),
    );
  }

  /** Gives the r-th ray what two on a line with it have, where it must have it too. */
  private isKnown(
    { fates, lit, paths, entries, clearances }: RayMarks,
    { near, apart }: Places,
    r: number,
  ): boolean {
    for (let n = NEAR * r, last = n + NEAR; n < last; n += 2) {
      const a = near[n];
      const b = near[n + 1];
      const path = paths[a];
      if (path < 0 || path !== paths[b]) continue;
      let left = 1;
      if (this.ball[3] >= 0) {
        const spread = this.spread[entries[a]];
        left = Math.max(clearances[a] - apart[n] * spread, clearances[b] - apart[n + 1] * spread) - CLEAR;
        if (left <= 0) continue;
      }
      paths[r] = path;
      entries[r] = entries[a];
      clearances[r] = left;
      fates[r] = fates[a];
      lit[r] = lit[a];
      return true;
    }
    return false;
  }

  /** Works out what all rays of one viewer share: they come in parallel. */
  face({ right, up, view }: Viewer): void {
    this.frame.set([...right, ...up, ...view]);
    const { planeCount, planes, nd } = this.body;
    const { coming, entered, spread } = this;
    const eta = 1 / nd;
    for (let i = 0; i < planeCount; i++) {
      const [nx, ny, nz] = [planes[4 * i], planes[4 * i + 1], planes[4 * i + 2]];
      const cosI = nx * view[0] + ny * view[1] + nz * view[2];
      coming[4 * i] = nx * right[0] + ny * right[1] + nz * right[2];
      coming[4 * i + 1] = nx * up[0] + ny * up[1] + nz * up[2];
      coming[4 * i + 2] = -cosI;
      const cosT = Math.sqrt(Math.max(0, 1 - eta * eta * (1 - cosI * cosI)));
      spread[i] = Math.max(1, cosT / Math.abs(cosI));
      const k = eta * cosI - cosT;
      entered[4 * i] = k * nx - eta * view[0];
      entered[4 * i + 1] = k * ny - eta * view[1];
      entered[4 * i + 2] = k * nz - eta * view[2];
    }
  }

  /**
   * Sets `ray` to where the r-th ray of an order is just within the surface. Gives that surface, less than SKIN for a miss.
   * @param isSure it is known to meet the piece
   */
  private enter({ at: places }: Places, r: number, isSure: boolean): number {
    const { planes, nd } = this.body;
    const { coming, entered, ray, frame } = this;
    const x = places[3 * r];
    const y = places[3 * r + 1];
    const root = places[3 * r + 2];
    const vx = frame[VIEW];
    const vy = frame[VIEW + 1];
    const vz = frame[VIEW + 2];
    const mx = x * frame[RIGHT] + y * frame[UP];
    const my = x * frame[RIGHT + 1] + y * frame[UP + 1];
    const mz = x * frame[RIGHT + 2] + y * frame[UP + 2];
    const px = mx + root * vx;
    const py = my + root * vy;
    const pz = mz + root * vz;
    // where it comes to the ball: it goes in by the last of the planes that cut this place away
    const { first, planes: capPlanes } = this.caps;
    const here = fieldAt(px, py, pz);
    let enter = -root;
    let surface = SKIN;
    for (let c = first[here], end = first[here + 1]; c < end; c++) {
      const i = capPlanes[c];
      const at = 4 * i;
      if (planes[at] * px + planes[at + 1] * py + planes[at + 2] * pz <= planes[at + 3]) continue;
      const facing = coming[4 * i + 2];
      // it runs away from what is left
      if (facing >= 0) return SKIN - 1;
      const t = (planes[at + 3] - x * coming[4 * i] - y * coming[4 * i + 1]) / facing;
      if (t > enter) {
        enter = t;
        surface = i;
      }
    }
    if (surface === SKIN) {
      // the ball's normal is the place itself
      const eta = 1 / nd;
      const along = eta * root - Math.sqrt(Math.max(0, 1 - eta * eta * (1 - root * root)));
      ray[PX] = px;
      ray[PY] = py;
      ray[PZ] = pz;
      ray[DX] = along * px - eta * vx;
      ray[DY] = along * py - eta * vy;
      ray[DZ] = along * pz - eta * vz;
      return SKIN;
    }
    if (!isSure) {
      if (enter >= root) return SKIN - 1;
      // it is out again, by one of the planes that cut away the ball's far place, before it would come in
      const there = fieldAt(mx - root * vx, my - root * vy, mz - root * vz);
      for (let c = first[there], end = first[there + 1]; c < end; c++) {
        const i = capPlanes[c];
        const facing = coming[4 * i + 2];
        const above = planes[4 * i + 3] - x * coming[4 * i] - y * coming[4 * i + 1];
        if (facing > 0 ? above <= enter * facing : above < 0 && facing === 0) return SKIN - 1;
      }
    }
    ray[PX] = mx - enter * vx;
    ray[PY] = my - enter * vy;
    ray[PZ] = mz - enter * vz;
    ray[DX] = entered[4 * surface];
    ray[DY] = entered[4 * surface + 1];
    ray[DZ] = entered[4 * surface + 2];
    return surface;
  }

  /** Sends the r-th ray of an order. What is left in `ray`: where it ended, its path and clearance. @returns its fate */
  private send(places: Places, r: number, isSure: boolean): number {
    const surface = this.enter(places, r, isSure);
    this.ray[ENTRY] = surface;
    if (surface >= SKIN) return this.follow(surface);
    this.ray[PATH] = MIXED;
    return MISSED;
  }

  /**
   * Follows `ray` from the surface it has come in by. What is left in it: the direction it left in, or the place of the inside, and its path.
   * The surface just left is passed over by its number; one that rounding puts a hair behind the place is met at once.
   */
  private follow(entry: number): number {
    const { planes, nd, planeCount } = this.body;
    const { ray, met, ball, frame } = this;
    const base = planeCount + 1;
    const mostPath = MOST_PATH / base - 1;
    let path = entry === SKIN ? MIXED : entry + 1;
    let nearest = Number.MAX_VALUE;
    const { first, planes: capPlanes } = this.caps;
    const nd2 = nd * nd;
    let px = ray[PX];
    let py = ray[PY];
    let pz = ray[PZ];
    let dx = ray[DX];
    let dy = ray[DY];
    let dz = ray[DZ];
    let from = entry;
    // of the incidence where the stretch began
    let cosine = -(px * dx + py * dy + pz * dz);
    for (let reflections = 0; reflections < MOST_REFLECTIONS; reflections++) {
      let t: number;
      // from the ball to itself the chord is exactly 2 cos
      if (from === SKIN) t = 2 * cosine;
      else {
        const b = px * dx + py * dy + pz * dz;
        t = Math.sqrt(Math.max(0, b * b + 1 - px * px - py * py - pz * pz)) - b;
      }
      if (t < 0) t = 0;
      let surface = SKIN;
      const ex = px + t * dx;
      const ey = py + t * dy;
      const ez = pz + t * dz;
      const field = fieldAt(ex, ey, ez);
      for (let c = first[field], end = first[field + 1]; c < end; c++) {
        const i = capPlanes[c];
        const at = 4 * i;
        if (i === from || planes[at] * ex + planes[at + 1] * ey + planes[at + 2] * ez <= planes[at + 3])
          continue;
        const facing = planes[at] * dx + planes[at + 1] * dy + planes[at + 2] * dz;
        const above = planes[at + 3] - planes[at] * px - planes[at + 1] * py - planes[at + 2] * pz;
        if (facing <= 0 || above >= t * facing) continue;
        t = above > 0 ? above / facing : 0;
        surface = i;
        cosine = facing;
      }
      if (ball[3] >= 0) {
        const qx = px - ball[0];
        const qy = py - ball[1];
        const qz = pz - ball[2];
        const along = qx * dx + qy * dy + qz * dz;
        const apart = qx * qx + qy * qy + qz * qz - along * along;
        const room = ball[3] - apart;
        if (room > 0) {
          const root = Math.sqrt(room);
          const enter = -along - root;
          if (root > along && enter < t) {
            const within = Math.max(0, enter);
            ray[PX] = px + within * dx;
            ray[PY] = py + within * dy;
            ray[PZ] = pz + within * dz;
            // no plane has the number 0
            ray[PATH] = path >= mostPath ? MIXED : path * base;
            ray[CLEARANCE] = Math.sqrt(nearest) - Math.sqrt(ball[3]);
            return INSIDE;
          }
        }
        if (apart < nearest) nearest = apart;
      } else if (!met.isEmpty) {
        const within = met.distance(px, py, pz, dx, dy, dz, t);
        if (within >= 0) {
          ray[PX] = px + within * dx;
          ray[PY] = py + within * dy;
          ray[PZ] = pz + within * dz;
          ray[PATH] = MIXED;
          return INSIDE;
        }
      }
      if (path >= 0) {
        path = surface === SKIN || path >= mostPath ? MIXED : path * base + surface + 1;
      }
      px += t * dx;
      py += t * dy;
      pz += t * dz;
      let nx = px;
      let ny = py;
      let nz = pz;
      if (surface === SKIN) {
        // 1 / |p| by one step of Newton's: the place is off the ball by roundings alone
        const size = 1.5 - 0.5 * (px * px + py * py + pz * pz);
        nx *= size;
        ny *= size;
        nz *= size;
        px = nx;
        py = ny;
        pz = nz;
        // a chord meets the ball at both ends alike
        if (from !== SKIN) cosine = Math.max(0, nx * dx + ny * dy + nz * dz);
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
        const turn = Math.sqrt(cos2Out) - nd * cosine;
        ray[DX] = nd * dx + turn * nx;
        ray[DY] = nd * dy + turn * ny;
        ray[DZ] = nd * dz + turn * nz;
        ray[PATH] = path;
        ray[CLEARANCE] = Math.sqrt(nearest) - Math.sqrt(Math.max(0, ball[3]));
        return ray[DX] * frame[VIEW] + ray[DY] * frame[VIEW + 1] + ray[DZ] * frame[VIEW + 2] > 0
          ? BACK
          : THROUGH;
      }
      dx -= 2 * cosine * nx;
      dy -= 2 * cosine * ny;
      dz -= 2 * cosine * nz;
      from = surface;
    }
    ray[PATH] = MIXED;
    return NEITHER;
  }
}
