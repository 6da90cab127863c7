/** Sizes that the tracer's shaders and what packs for them must agree on: they stand here alone, and every program is told them. */
import { FIELDS } from "../core/measure/caps.ts";
import { COUNTS, RANGES } from "../core/plan/limits.ts";
import { ROW_TEXELS } from "./plane-texels.ts";

export const SHADER_LIMITS = {
  /** Planes that the uniform block `Body` holds: 2 x 256 vectors are half of what OpenGL ES 3.0 promises. More come in a texture. */
  BLOCK_PLANES: 256,
  /** Planes are gone through in groups of so many. */
  GROUP: 8,
  /** What a plan may have inside. */
  MAX_DESIGNS: COUNTS.inside,
  /** The most bodies that they are made of; with DESIGN_TEXELS vectors each less than the 16 KiB that a block may take. */
  MAX_BODIES: COUNTS.inside * RANGES.bubbles.max,
  DESIGN_TEXELS: 8,
  MAX_PANELS: 8,
  FIELDS,
  ROW_TEXELS,
} as const;

/** The same as names to set in `trace.frag`. */
export const LIMIT_DEFINES: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(SHADER_LIMITS).map(([name, size]) => [name, String(size)]),
);
