/**
 * A picture as it gathers: the sums of two halves of its rays (see `pass.ts`) in float textures that take turns with a third,
 * which the next pass is drawn to. A pass may come in bands over several frames; only when its last band is drawn do the
 * textures change places, so that the halves always hold whole passes. RGB = sum of radiance, alpha = sum of coverage.
 *
 * What shows is a picture of its own, made of the halves now and then (`resolve.frag`); after a restart it stays until a pass
 * of the new picture is whole. Where wavelengths part the first passes are a sketch without: it is shown until what follows is
 * nearer, and is no part of their sums.
 */
import { makeFramebuffer, makeTarget } from "./gl-target.ts";
import {
  gainsColour,
  type Half,
  halfOfPass,
  samplesAfter,
  samplesForSketch,
  samplesOfHalves,
  sketchOfHalves,
  soFar,
  WAVES_A_RAY,
} from "./pass.ts";

type Slot = 0 | 1 | 2;

/** A smoothed picture is made again once it has so many times the samples. */
const SMOOTHED_AGAIN = 2;

/** Some of its pixels. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The sum of one half. */
export interface HalfSum {
  readonly texture: WebGLTexture;
  readonly samples: number;
}

/** What to look at: the mean of both halves, without the noise by which they differ if they are to be `smoothed`. */
export interface Showable {
  readonly halves: readonly [HalfSum, HalfSum];
  readonly smoothed: boolean;
}

export class Accumulator {
  private readonly textures: readonly WebGLTexture[];
  private readonly framebuffers: readonly WebGLFramebuffer[];
  /** Mean radiance and coverage, as it shows. */
  readonly picture: WebGLTexture;
  readonly pictureTarget: WebGLFramebuffer;
  private places: readonly [Slot, Slot] = [0, 1];
  /** Passes of the sketch; 0 where no wavelengths part. */
  sketches = 0;
  /** That sketch is a coloured one, see `pass.ts`. */
  isColoured = false;
  /** Whole passes drawn since the restart. */
  passes = 0;
  /** Samples per pixel of all whole passes; after a restart those of the old picture, until a new pass is whole. */
  samples = 0;
  /** `picture` has been made since the restart. */
  private isMade = false;
  /** Samples that `picture` was last smoothed at, 0 when it is not smoothed. */
  private smoothedAt = 0;
  private hasNews = false;

  /** @throws Error when the device can't draw to floats (the device check has said so before) */
  constructor(
    private readonly gl: WebGL2RenderingContext,
    readonly width: number,
    readonly height: number,
  ) {
    this.textures = [0, 1, 2].map(() => makeTarget(gl, gl.RGBA32F, width, height));
    this.framebuffers = this.textures.map((texture) => makeFramebuffer(gl, [texture]));
    this.picture = makeTarget(gl, gl.RGBA16F, width, height);
    this.pictureTarget = makeFramebuffer(gl, [this.picture]);
  }

  /** What the pass that is being drawn adds to. */
  get front(): WebGLTexture {
    return this.textures[this.places[this.half]];
  }

  /** The other half, which knows nothing of the ray that is being followed; the sketch before there is one. */
  get guess(): WebGLTexture {
    return this.textures[this.places[1 - this.half]];
  }

  /** Where the pass that is being drawn goes. */
  get back(): WebGLFramebuffer {
    return this.framebuffers[this.free];
  }

  private get free(): Slot {
    return ([0, 1, 2] as const).find((place) => !this.places.includes(place)) ?? 0;
  }

  /** Brings to `back` what stays as it is wherever the pass adds nothing. */
  carryOver(): void {
    const { gl, width, height } = this;
    gl.bindFramebuffer(gl.READ_FRAMEBUFFER, this.framebuffers[this.places[this.half]]);
    gl.bindFramebuffer(gl.DRAW_FRAMEBUFFER, this.back);
    gl.blitFramebuffer(0, 0, width, height, 0, 0, width, height, gl.COLOR_BUFFER_BIT, gl.NEAREST);
  }

  /** The pass in `back` is complete. */
  endPass(): void {
    const { free, half } = this;
    this.places = half === 0 ? [free, this.places[1]] : [this.places[0], free];
    if (this.passes === 0) {
      this.smoothedAt = 0;
      this.isMade = false;
    }
    this.passes += 1;
    this.samples = samplesAfter(this.passes, this.sketches);
    this.hasNews = true;
  }

  /** Forgets what was gathered; the next pass starts from nothing (its shader is told so by `keep` = 0). */
  restart(sketches: number, isColoured = false): void {
    this.passes = 0;
    this.sketches = sketches;
    this.isColoured = isColoured;
    this.hasNews = false;
  }

  /** What `picture` has to be made of now; null when it is still good enough. */
  get overdue(): Showable | null {
    if (!this.hasNews) return null;
    const { passes, sketches, isColoured } = this;
    const [first, second] = this.held;
    const samples = first + second;
    // The sketch changes no more until what follows is nearer, and in software making a picture takes as long as a good part of a
    // sample: so whole rays are waited for, if there is anything to show meanwhile.
    const isBetween = samples % WAVES_A_RAY !== 0 || samples < samplesForSketch(sketches, isColoured);
    if (sketches > 0 && passes > sketches && this.isMade && isBetween) return null;
    const halves = [this.halfSum(0, first), this.halfSum(1, second)] as const;
    const smoothed = first === second;
    const isNew =
      samples >= this.smoothedAt * SMOOTHED_AGAIN || (isColoured && gainsColour(passes, sketches));
    if (smoothed) return isNew ? { halves, smoothed } : null;
    return this.smoothedAt > 0 ? null : { halves, smoothed };
  }

  /** Samples in each half that make one picture: those of the sketch, until a ray has all its wavelengths. */
  private get held(): readonly [number, number] {
    const { passes, sketches, isColoured } = this;
    const samples = samplesOfHalves(passes, sketches);
    if (sketches === 0 || samples[0] >= WAVES_A_RAY) return samples;
    const [first, second] = sketchOfHalves(passes, sketches, isColoured);
    return [passes > sketches ? 0 : first, second];
  }

  /** `picture` has been made of what was overdue. */
  resolved({ halves, smoothed }: Showable): void {
    this.hasNews = false;
    this.isMade = true;
    this.smoothedAt = smoothed ? halves[0].samples + halves[1].samples : 0;
  }

  /** What a half holds, see `soFar` of `pass.ts`. */
  soFar(half: Half): HalfSum {
    return this.halfSum(...soFar(half, this.passes, this.sketches, this.isColoured));
  }

  /** The half that the pass that is being drawn adds to. */
  get half(): Half {
    return halfOfPass(this.passes, this.sketches);
  }

  private halfSum(half: Half, samples: number): HalfSum {
    return { texture: this.textures[this.places[half]], samples };
  }

  /** Mean over the samples, not smoothed, RGBA, rows bottom to top. Waits for the graphics card: for tests and saving only. */
  readMean(): Float32Array {
    const { passes, sketches, isColoured } = this;
    const counts =
      passes > sketches ? samplesOfHalves(passes, sketches) : sketchOfHalves(passes, sketches, isColoured);
    const mean = new Float32Array(this.width * this.height * 4);
    for (const half of [0, 1] as const) {
      if (counts[half] === 0) continue;
      this.read(this.framebuffers[this.places[half]]).forEach((value, i) => {
        mean[i] += value / (counts[0] + counts[1]);
      });
    }
    return mean;
  }

  /** What shows, as it was last made. Waits for the graphics card: for tests only. */
  readPicture(): Float32Array {
    return this.read(this.pictureTarget);
  }

  private read(framebuffer: WebGLFramebuffer): Float32Array {
    const { gl, width, height } = this;
    const rgba = new Float32Array(width * height * 4);
    gl.bindFramebuffer(gl.FRAMEBUFFER, framebuffer);
    gl.readPixels(0, 0, width, height, gl.RGBA, gl.FLOAT, rgba);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    return rgba;
  }

  dispose(): void {
    for (const texture of [...this.textures, this.picture]) this.gl.deleteTexture(texture);
    for (const framebuffer of [...this.framebuffers, this.pictureTarget])
      this.gl.deleteFramebuffer(framebuffer);
  }
}
