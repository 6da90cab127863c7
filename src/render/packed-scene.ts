/** A scene as the shader takes it: which variant of the shader, its uniforms, its uniform blocks and its textures. */
import type { Rgb } from "../core/optics/spectrum.ts";
import type { Uniforms } from "./uniforms.ts";

/** Float RGBA, row by row from texel row 0. */
export interface Texels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Float32Array;
}

/** Bytes RGBA, likewise. */
export interface ByteTexels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

export interface PackedScene {
  /** Names set in `trace.frag`; scenes with the same names share one compiled program. */
  readonly defines: Readonly<Record<string, string>>;
  readonly uniforms: Uniforms;
  readonly planeCount: number;
  readonly hasTable: boolean;
  /** What red, green and blue are multiplied by before they are shown: see `metering.ts`. */
  readonly gain: Rgb;
  /** Whether wavelengths part: then a picture's first pass is a sketch without dispersion. */
  readonly hasDispersion: boolean;
  /** Index as red, green and blue see it on average. */
  readonly indexRgb: Rgb;
  /** Surfaces a path may meet. */
  readonly maxMeetings: number;
  readonly seed: number;
  /** The uniform block `Body`, std140. */
  readonly body: Float32Array;
  /** Planes in the first row, finishes in the second, where there are more than the block holds; else null. */
  readonly planes: Texels | null;
  /** The uniform block `Designs`, std140. */
  readonly designs: Float32Array;
  /** The pictures inside, side by side, rows from the top; null without any. */
  readonly pictures: ByteTexels | null;
  /** Strata of the spectrum, see `spectrum.glsl`. */
  readonly spectrum: Texels;
  /** What a white table throws back under the piece's middle, from which a light map is counted; 0 without one. */
  readonly mapGround: Rgb;
  /** What a white table throws back of what glows near by, see `tabletop.glsl`; null where nothing does. */
  readonly nearLight: Texels | null;
  /** Where a table looks for light, see `tabletop.glsl`; null without one or under even light. */
  readonly guide: Texels | null;
  /** Equirectangular light, rows from the top; null when the light is one of ours. */
  readonly environment: Texels | null;
}
