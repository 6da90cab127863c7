/** A scene as the shader takes it: which variant of the shader, its uniforms, the body's uniform block, a light's picture. */
import type { Uniforms } from "./gl-program.ts";

export interface PackedScene {
  /** Names set in `trace.frag`; scenes with the same names share one compiled program. */
  readonly defines: Readonly<Record<string, string>>;
  readonly uniforms: Uniforms;
  /** The uniform block `Body`, std140. */
  readonly body: Float32Array;
  /** Equirectangular light, RGBA, first row = bottom (v = 0); null when the light is one of ours. */
  readonly environment: { readonly width: number; readonly height: number; readonly rgba: Float32Array } | null;
}
