/**
 * Straight rays in WebAssembly, for who looks at thousands of plans: the same bits as `straight-rays.ts` in little more than half
 * its time. One kernel has the memory of one room: tables of the places, what is kept of each look, the body that is looked at.
 */
import { ALL_FIELDS } from "../caps.ts";
import { GOLDEN, LIT_COSINE } from "../lamps.ts";
import { ALL_PLACES, LEFT_PLACES, type Places } from "../places.ts";
import {
  beginLook,
  emptyMarks,
  MARKS_BYTES,
  type RayLooker,
  type RayMarks,
  type StraightRays,
} from "../straight-rays.ts";
import type { Viewer } from "../viewer.ts";
import { MODULE_BASE64 } from "./module.ts";

/** What `rays.as.ts` exports: how much it takes, where its tables are, bytes, and what it does. */
type Constant =
  | "LONGEST_PART"
  | "MOST_PLANES"
  | "FRAME"
  | "PLANES"
  | "COMING"
  | "ENTERED"
  | "SPREAD"
  | "FIRST"
  | "PAIRS"
  | "FREE";
interface Exports extends Readonly<Record<Constant, { readonly value: number }>> {
  readonly memory: WebAssembly.Memory;
  setLamps(golden: number, litCosine: number): void;
  setBody(planeCount: number, nd: number, x: number, y: number, z: number, radius2: number): void;
  setPlaces(...tables: PlaceTables): void;
  setMarks(...columns: MarkColumns): void;
  lookOn(from: number, to: number): void;
}
type PlaceTables = readonly [at: number, near: number, apart: number];
type MarkColumns = readonly [
  fates: number,
  lit: number,
  entries: number,
  paths: number,
  clearances: number,
  counts: number,
];

const PAGE_BYTES = 65536;
/** Numbers a plane has in each table but `SPREAD`. */
const STRIDE = 4;
/** A plane that cuts nothing of the unit ball away. */
const NONE = [0, 0, 0, 2] as const;
/** Bytes of a plane's number in `PAIRS`. */
const NUMBER_BYTES = 4;

const code = (): WebAssembly.Module =>
  new WebAssembly.Module(Uint8Array.from(atob(MODULE_BASE64), (c) => c.charCodeAt(0)));

/** A table of doubles for the planes and for the one that stands for none. */
const planesAt = ({ memory, MOST_PLANES }: Exports, { value }: { readonly value: number }): Float64Array =>
  new Float64Array(memory.buffer, value, STRIDE * (MOST_PLANES.value + 1));

export class RayKernel {
  /** What is kept of so many looks, in the kernel's memory. */
  readonly marks: readonly RayMarks[];
  private readonly calls: Exports;
  private readonly tables: ReadonlyMap<Places, PlaceTables>;
  private readonly planes: Float64Array;
  private readonly coming: Float64Array;
  private readonly entered: Float64Array;
  private readonly spread: Float64Array;
  private readonly frame: Float64Array;
  private readonly first: Uint32Array;
  private readonly pairs: Int32Array;
  /** Whose planes lie in the tables. */
  private loaded: StraightRays | null = null;

  /** @throws where WebAssembly is not to be had */
  constructor(looks: number) {
    const calls = new WebAssembly.Instance(code()).exports as unknown as Exports;
    const { memory, MOST_PLANES, FIRST, PAIRS, FREE } = calls;
    this.calls = calls;
    let top = FREE.value;
    const take = (bytes: number): number => {
      const at = top;
      top += Math.ceil(bytes / 8) * 8;
      return at;
    };
    const placed = [ALL_PLACES, LEFT_PLACES].map(
      (places) =>
        [
          places,
          [take(places.at.byteLength), take(places.near.byteLength), take(places.apart.byteLength)],
        ] as const,
    );
    const marksAt = Array.from({ length: looks }, () => take(MARKS_BYTES));
    memory.grow(Math.ceil((top - memory.buffer.byteLength) / PAGE_BYTES));
    const { buffer } = memory;
    for (const [{ at, near, apart }, tables] of placed) {
      new Float64Array(buffer, tables[0], at.length).set(at);
      new Int16Array(buffer, tables[1], near.length).set(near);
      new Float64Array(buffer, tables[2], apart.length).set(apart);
    }
    this.tables = new Map(placed.map(([places, [at, near, apart]]) => [places, [at, near, apart]]));
    this.marks = marksAt.map((at) => emptyMarks(buffer, at));
    this.planes = planesAt(calls, calls.PLANES);
    this.coming = planesAt(calls, calls.COMING);
    this.entered = planesAt(calls, calls.ENTERED);
    this.spread = new Float64Array(buffer, calls.SPREAD.value, MOST_PLANES.value);
    this.frame = new Float64Array(buffer, calls.FRAME.value, 9);
    this.first = new Uint32Array(buffer, FIRST.value, ALL_FIELDS + 1);
    this.pairs = new Int32Array(buffer, PAIRS.value, (FREE.value - PAIRS.value) / NUMBER_BYTES);
    calls.setLamps(GOLDEN, LIT_COSINE);
  }

  /** Who follows a body's rays here, into this kernel's marks; null for one with too many planes or more inside than a ball. */
  looker(rays: StraightRays): RayLooker | null {
    if (!rays.isSimple || rays.body.planeCount > this.calls.MOST_PLANES.value) return null;
    return { lookOn: (viewer, into, places, from, to) => this.lookOn(rays, viewer, into, places, from, to) };
  }

  private lookOn(
    rays: StraightRays,
    viewer: Viewer,
    into: RayMarks,
    places: Places,
    from: number,
    to: number,
  ): void {
    const { calls } = this;
    const tables = this.tables.get(places);
    if (!tables) throw new Error("the kernel has no tables of these places");
    if (this.loaded !== rays) this.load(rays);
    rays.face(viewer);
    this.coming.set(rays.coming);
    this.entered.set(rays.entered);
    this.spread.set(rays.spread);
    this.frame.set(rays.frame);
    if (from === 0) beginLook(into, places);
    const { fates, lit, entries, paths, clearances, counts } = into;
    calls.setPlaces(...tables);
    calls.setMarks(
      fates.byteOffset,
      lit.byteOffset,
      entries.byteOffset,
      paths.byteOffset,
      clearances.byteOffset,
      counts.byteOffset,
    );
    const longest = calls.LONGEST_PART.value;
    for (let part = 1; part < places.ends.length; part++) {
      const end = Math.min(to, places.ends[part]);
      for (let r = Math.max(from, places.ends[part - 1]); r < end; r += longest)
        calls.lookOn(r, Math.min(end, r + longest));
    }
  }

  /** Writes a body into the tables: its planes, and which of them are asked in each field, by twos. */
  private load(rays: StraightRays): void {
    const { planeCount, planes, nd } = rays.body;
    const { first, planes: listed } = rays.caps;
    const { pairs, calls } = this;
    this.planes.set(planes);
    this.planes.set(NONE, STRIDE * planeCount);
    let to = 0;
    for (let field = 0; field < ALL_FIELDS; field++) {
      this.first[field] = calls.PAIRS.value + NUMBER_BYTES * to;
      for (let c = first[field]; c < first[field + 1]; c++) pairs[to++] = listed[c];
      if (to % 2 === 1) pairs[to++] = planeCount;
    }
    this.first[ALL_FIELDS] = calls.PAIRS.value + NUMBER_BYTES * to;
    const [x, y, z, radius2] = rays.ball;
    calls.setBody(planeCount, nd, x, y, z, radius2);
    this.loaded = rays;
  }
}

/**
 * A kernel with room for so many looks; null where WebAssembly is not to be had: there is none, a policy forbids it or the processor lacks
 * its words of 128 bits (engines differ in how they say so), or memory is short. `straight-rays.ts` alone then gives the same answers, later.
 */
export function kernelFor(looks: number): RayKernel | null {
  if (typeof WebAssembly === "undefined") return null;
  try {
    return new RayKernel(looks);
  } catch (error) {
    const isRefused =
      error instanceof WebAssembly.CompileError || error instanceof EvalError || error instanceof RangeError;
    if (isRefused) return null;
    throw error;
  }
}
