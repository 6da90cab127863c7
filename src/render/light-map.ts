/**
 * What a piece changes of the light on its table, as it gathers: a square of texels round where it rests, each with the two halves
 * of a picture (see `accumulator.ts`). One half is only ever made of that half, and only read by that half of a picture: so the
 * halves stay independent. It knows of no eye, and stays while one moves. What is read of a half is smoothed (`smooth-map.frag`) as
 * soon as both have as much; the other half only says where.
 */
import { Accumulator, type Area, type HalfSum } from "./accumulator.ts";
import { makeFramebuffer, makeTarget } from "./gl-target.ts";
import type { PackedScene } from "./packed-scene.ts";
import {
  type Half,
  type Pass,
  type PassScene,
  passAt,
  samplesOfHalves,
  sketchOfHalves,
  WAVES_A_RAY,
} from "./pass.ts";

/** A map has so many texels for a picture's pixels, each way. */
const TEXELS_A_PIXEL = 0.33;
const [LEAST_SIDE, MOST_SIDE] = [128, 512];
/** Until it has so many passes it gains one with each pass of any picture: while an eye moves, no picture has many. */
const SOON = 17;
/**
 * A map is ahead of the picture, which is only as good as the map was pass by pass: it has few texels, and blotches of their size are
 * what one sees first. By the end of a picture's first ray it has been smoothed by its halves; it gains so many passes more with each of the
 * picture's, until it leads by this many. In software a texel's path costs three of a pixel's, and a picture would wait for its table.
 */
const AT_FIRST = 3;
const LEADS = 32;
const LEADS_EACH = { card: 3, software: 0.5 } as const;
export type Leading = keyof typeof LEADS_EACH;
const leadAt = (passes: number, by: Leading): number =>
  passes === 0 ? 0 : Math.min(LEADS, AT_FIRST + Math.floor(LEADS_EACH[by] * (passes - 1)));
/** With so many it is left as it is. */
const MOST_PASSES = 4097;
/**
 * It is smoothed once it has as many passes more as it had, at most so many or a share of what it had, in steps of which each looks at neighbours so many texels
 * apart. Its first pass, one path a texel, knows no halves yet: all neighbours count alike then, so that a table's first picture is
 * soft, and not strewn with dots; and as long as halves hold few paths they may agree by chance, so that the first step goes on as that.
 */
const SMOOTHED_AFTER = 8;
const SMOOTHED_SHARE = 1 / 8;
export const SMOOTHING_STEPS = [1, 2, 4] as const;
/** Two wavelengths half a spectrum apart are grey enough for what is smoothed, and leave a map twice as many rays as a picture. */
const WAVES_A_RAY_OF_MAP = 2;
/**
 * Close to the piece lie nearly all edges, caustics and noise: there, in a square of so much of a side, a map gains every pass, and
 * beyond it, as long as it holds few paths and then in each such round of both halves.
 */
const INNER = 0.65;
const WHOLE_UNTIL = 16;
const WHOLE_EACH = 8;
/**
 * Rays that a map gains of a sketch of several passes. A picture's coloured sketch waits for them: its colours are traced one after the
 * other, and read from one map, else the table would be coloured by what the map gained meanwhile.
 */
const MAP_SKETCHES = 8;
/** Passes of the sketch that the map of a picture with so many begins with. */
const mapSketches = (sketches: number): number => (sketches > 1 ? MAP_SKETCHES : sketches);
/** A map's chances are not its picture's. */
const SEED_OF_MAP = 0x7f4a7c15;

/** Texels each way of the map for pictures of so many pixels. */
export const mapSide = (pixels: number): number =>
  Math.round(Math.min(MOST_SIDE, Math.max(LEAST_SIDE, TEXELS_A_PIXEL * Math.sqrt(pixels))));

/** Whether the pass after so many goes over all of the map. Both halves get as much. */
export function isWholeAt(passes: number, sketches: number): boolean {
  const samples = passes - sketches;
  const round = Math.floor(samples / (sketches > 0 ? 2 * WAVES_A_RAY : 2));
  return samples < WHOLE_UNTIL || round % WHOLE_EACH === 0;
}

/** The texels of a map that the pass after so many goes over. */
export function areaAt(passes: number, sketches: number, side: number): Area {
  const margin = isWholeAt(passes, sketches) ? 0 : Math.floor(0.5 * (1 - INNER) * side);
  return { x: margin, y: margin, width: side - 2 * margin, height: side - 2 * margin };
}

/** How many passes a map that has `now` is to gain before a picture does that has so many already. */
export function mapPassesDue(now: number, passes: number, by: Leading): number {
  const wanted = Math.min(MOST_PASSES, passes + leadAt(passes, by) + 1);
  return Math.max(wanted - now, now < SOON ? 1 : 0);
}

/** The same of a picture whose sketch is a coloured one, as long as that is not whole. */
const mapPassesDueAtSketch = (now: number): number => Math.max(0, MAP_SKETCHES - now);

/** Paths that go into the map of a picture of so many pixels and samples, if it is made for that picture alone. */
export function mapPaths(pixels: number, samples: number, sketches: number, by: Leading): number {
  const side = mapSide(pixels);
  let paths = 0;
  for (let passes = 0; passes < samples + leadAt(samples, by); passes++)
    paths += areaAt(passes, sketches, side).width ** 2;
  return paths;
}

/**
 * Whether it is to be smoothed after so many passes: both halves have as much, and it was not just done; or it is the first.
 * @returns how many of the steps, from the first, are to take all neighbours alike; null when it is not to be smoothed
 */
export function blindStepsAt(passes: number, smoothedAt: number, sketches: number): number | null {
  if (passes === 1 && smoothedAt === 0) return SMOOTHING_STEPS.length;
  const [first, second] = (passes > sketches ? samplesOfHalves : sketchOfHalves)(passes, sketches);
  const more = Math.max(Math.min(SMOOTHED_AFTER, Math.max(1, smoothedAt - 1)), SMOOTHED_SHARE * smoothedAt);
  if (first === 0 || first !== second || passes < smoothedAt + more) return null;
  return passes < SOON ? 1 : 0;
}

/** What the pass over a map does that has so many already. */
export const mapPassAt = (index: number, { sketches, maxMeetings, seed }: PassScene): Pass =>
  passAt(index, {
    sketches,
    maxMeetings,
    seed: (seed ^ SEED_OF_MAP) >>> 0,
    wavesARay: WAVES_A_RAY_OF_MAP,
  });

/** A picture as a map sees it. */
type Gaining = Pick<Accumulator, "passes" | "sketches" | "isColoured">;

export class LightMap {
  readonly sums: Accumulator;
  /** Two smoothed halves for each step. */
  private readonly smoothed: readonly (readonly [WebGLTexture, WebGLTexture])[];
  private readonly targets: readonly WebGLFramebuffer[];
  /** Passes that they were smoothed at; 0 before that. */
  private smoothedAt = 0;

  private constructor(
    private readonly gl: WebGL2RenderingContext,
    private readonly packed: PackedScene,
    side: number,
    private readonly leading: Leading,
    sketches: number,
  ) {
    this.sums = new Accumulator(gl, side, side);
    const make = () => makeTarget(gl, gl.RGBA16F, side, side, gl.LINEAR);
    this.smoothed = SMOOTHING_STEPS.map(() => [make(), make()] as const);
    this.targets = this.smoothed.map((halves) => makeFramebuffer(gl, halves));
    this.sums.restart(sketches);
  }

  /**
   * @param pixels of the pictures that are to read it
   * @param others maps that are there; where one would be the same it goes on
   * @param sketches passes of the pictures' sketch
   */
  static make(
    gl: WebGL2RenderingContext,
    packed: PackedScene,
    pixels: number,
    others: readonly (LightMap | null | undefined)[],
    leading: Leading,
    sketches: number,
  ): LightMap {
    const side = mapSide(pixels);
    const same = others.find((map) => map?.sums.width === side && haveOneMap(map.packed, packed));
    return same ?? new LightMap(gl, packed, side, leading, mapSketches(sketches));
  }

  /** What it holds is rough as yet. */
  get isEarly(): boolean {
    return this.sums.passes < SOON;
  }

  /** How many passes it is to gain before a picture gains one. */
  due({ passes, sketches, isColoured }: Gaining): number {
    if (isColoured && passes < sketches) return mapPassesDueAtSketch(this.sums.passes);
    return mapPassesDue(this.sums.passes, passes, this.leading);
  }

  /** The pass that it gains next. */
  get next(): Pass {
    return mapPassAt(this.sums.passes, { ...this.packed, sketches: this.sums.sketches });
  }

  /** The texels that this goes over; all others stay as they are. */
  get nextArea(): Area {
    return areaAt(this.sums.passes, this.sums.sketches, this.sums.width);
  }

  /** What a picture's half reads, or another pass of its own; null before the first. */
  smoothedOf(half: Half): WebGLTexture | null {
    return this.smoothedAt > 0 ? this.smoothed[SMOOTHING_STEPS.length - 1][half] : null;
  }

  /** How it is to be smoothed now, step by step: from which halves, where to, and how. */
  get smoothing(): readonly {
    from: readonly [HalfSum, HalfSum];
    into: WebGLFramebuffer;
    apart: number;
    isBlind: boolean;
  }[] {
    const blind = blindStepsAt(this.sums.passes, this.smoothedAt, this.sums.sketches);
    if (blind === null) return [];
    const sums = [this.sums.soFar(0), this.sums.soFar(1)] as const;
    return SMOOTHING_STEPS.map((apart, k) => {
      const [first, second] = this.smoothed[k - 1] ?? [];
      const before =
        k > 0
          ? ([
              { texture: first, samples: 1 },
              { texture: second, samples: 1 },
            ] as const)
          : sums;
      return { from: before, into: this.targets[k], apart, isBlind: k < blind };
    });
  }

  /** It has been smoothed. */
  endSmoothing(): void {
    this.smoothedAt = this.sums.passes;
  }

  dispose(): void {
    this.sums.dispose();
    for (const texture of this.smoothed.flat()) this.gl.deleteTexture(texture);
    for (const target of this.targets) this.gl.deleteFramebuffer(target);
  }
}

/** What a map is made of; what whoever looks past the piece sees is no part of it. */
const partsOf = ({ uniforms, gain: _, ...parts }: PackedScene) => ({
  ...parts,
  uniforms: { ...uniforms, behind: null },
});

/** Whether two scenes have the same light on their tables. */
const haveOneMap = (a: PackedScene, b: PackedScene): boolean => a === b || isSame(partsOf(a), partsOf(b));

/** Plain data that is the same, number by number. */
function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (ArrayBuffer.isView(a) && ArrayBuffer.isView(b)) {
    const [ours, theirs] = [a as Float32Array, b as Float32Array];
    return ours.length === theirs.length && ours.every((value, i) => value === theirs[i]);
  }
  const [ours, theirs] = [Object.entries(a), Object.entries(b)];
  return (
    ours.length === theirs.length &&
    ours.every(([key, value]) => isSame(value, (b as Record<string, unknown>)[key]))
  );
}
