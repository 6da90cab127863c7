/**
 * The running sum of a picture's samples, in float textures that take turns: a pass reads one and writes another.
 * A pass may come in bands over several frames; only when its last band is drawn do the textures change places, so that
 * `front` always holds whole passes. RGB = sum of radiance, alpha = sum of coverage.
 *
 * A guided picture's first pass is a sketch without dispersion (see `pass.ts`): it is shown, but the second pass
 * replaces it, so that n passes hold n - 1 samples. The sum after the last whole ray, `guess`, is kept beside the front.
 */
import { isRayWhole, samplesAfter, WAVES_A_RAY } from "./pass.ts";

type Place = 0 | 1 | 2;

export class Accumulator {
  private readonly textures: readonly WebGLTexture[];
  private readonly framebuffers: readonly WebGLFramebuffer[];
  private frontIndex: Place = 0;
  private guessIndex: Place = 0;
  private isGuided = false;
  /** Whole passes drawn since the restart. */
  passes = 0;
  /** Samples per pixel that `front` is the sum of; after a restart those of the old picture, until a new pass is whole. */
  samples = 0;

  /** @throws Error when the device can't draw to floats (the device check has said so before) */
  constructor(
    private readonly gl: WebGL2RenderingContext,
    readonly width: number,
    readonly height: number,
  ) {
    this.textures = [0, 1, 2].map(() => this.makeTexture());
    this.framebuffers = this.textures.map((texture) => this.makeFramebuffer(texture));
  }

  /** The sum of all whole passes. */
  get front(): WebGLTexture {
    return this.textures[this.frontIndex];
  }

  /** The sum when a ray was last followed at all its wavelengths; the sketch before the first was. */
  get guess(): WebGLTexture {
    return this.textures[this.guessIndex];
  }

  /** What to look at, and of how many samples it is the sum: the sketch until the first ray has all its wavelengths. */
  get shown(): { readonly texture: WebGLTexture; readonly samples: number } {
    const isOneColour = this.isGuided && this.passes > 1 && this.samples < WAVES_A_RAY;
    return isOneColour ? { texture: this.guess, samples: 1 } : { texture: this.front, samples: this.samples };
  }

  /** Where the pass that is being drawn goes. */
  get back(): WebGLFramebuffer {
    return this.framebuffers[this.backIndex];
  }

  private get backIndex(): Place {
    const free = ([0, 1, 2] as const).find((place) => place !== this.frontIndex && place !== this.guessIndex);
    return free ?? 0;
  }

  /** The pass in `back` is complete. */
  endPass(): void {
    this.frontIndex = this.backIndex;
    this.passes += 1;
    if (isRayWhole(this.passes, this.isGuided)) this.guessIndex = this.frontIndex;
    this.samples = samplesAfter(this.passes, this.isGuided);
  }

  /** Forgets what was gathered; the next pass starts from nothing (its shader is told so by `passes` = 0). */
  restart(isGuided: boolean): void {
    this.passes = 0;
    this.isGuided = isGuided;
  }

  /** Mean over the samples, RGBA, rows bottom to top. Waits for the graphics card: for tests and saving only. */
  readMean(): Float32Array {
    const { gl, width, height } = this;
    const sum = new Float32Array(width * height * 4);
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.framebuffers[this.frontIndex]);
    gl.readPixels(0, 0, width, height, gl.RGBA, gl.FLOAT, sum);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    return this.samples === 0 ? sum.fill(0) : sum.map((value) => value / this.samples);
  }

  dispose(): void {
    for (const texture of this.textures) this.gl.deleteTexture(texture);
    for (const framebuffer of this.framebuffers) this.gl.deleteFramebuffer(framebuffer);
  }

  private makeTexture(): WebGLTexture {
    const { gl } = this;
    const texture = gl.createTexture();
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA32F, this.width, this.height);
    for (const filter of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER])
      gl.texParameteri(gl.TEXTURE_2D, filter, gl.NEAREST);
    for (const wrap of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T])
      gl.texParameteri(gl.TEXTURE_2D, wrap, gl.CLAMP_TO_EDGE);
    return texture;
  }

  private makeFramebuffer(texture: WebGLTexture): WebGLFramebuffer {
    const { gl } = this;
    const framebuffer = gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, framebuffer);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
    const complete = gl.checkFramebufferStatus(gl.FRAMEBUFFER) === gl.FRAMEBUFFER_COMPLETE;
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    if (!complete && !gl.isContextLost()) throw new Error("the device can't draw to a float texture");
    return framebuffer;
  }
}
