/**
 * Can this machine trace? Asked before anything is built on the answer. A failed check names its cause, so that the
 * screen can say in plain words why the simple picture is shown instead. A software renderer passes: slow, but right.
 */

import { SHADER_LIMITS } from "./shader-limits.ts";

type DeviceCode =
  | "ok"
  | "software"
  | "no-webgl2"
  | "no-float-colour"
  | "too-few-uniforms"
  | "small-uniform-block"
  | "low-precision"
  | "context-lost";

export interface DeviceCheck {
  readonly pass: boolean;
  readonly code: DeviceCode;
  /** What was found, for a bug report; never shown as the only explanation. */
  readonly detail: string;
}

/** What the tracer needs to know of a context; a real `WebGL2RenderingContext` is one. */
export type CheckableContext = Pick<
  WebGL2RenderingContext,
  "getExtension" | "getParameter" | "getShaderPrecisionFormat" | "isContextLost"
>;

/** Names of WebGL2 constants, so that the check can be tested without a browser. */
const GL = {
  MAX_FRAGMENT_UNIFORM_VECTORS: 0x8dfd,
  MAX_UNIFORM_BLOCK_SIZE: 0x8a30,
  FRAGMENT_SHADER: 0x8b30,
  HIGH_FLOAT: 0x8df2,
  RENDERER: 0x1f01,
} as const;

/** Vectors that the tracer's plain uniforms take (OpenGL ES 3.0 promises 224). */
const UNIFORM_VECTORS = 128;
/** Bytes of the uniform block that holds the body (OpenGL ES 3.0 promises 16384). */
const BODY_BLOCK_BYTES = 2 * SHADER_LIMITS.BLOCK_PLANES * 16;
/** Bits of mantissa below which rays would miss their facets; single precision has 23. */
const MANTISSA_BITS = 23;

const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** @param gl null when the browser gave no WebGL2 context */
export function checkDevice(gl: CheckableContext | null): DeviceCheck {
  const fail = (code: DeviceCode, detail: string): DeviceCheck => ({ pass: false, code, detail });
  if (!gl) return fail("no-webgl2", "the browser gives no WebGL2 context");
  if (gl.isContextLost()) return fail("context-lost", "the graphics context is lost");

  if (!gl.getExtension("EXT_color_buffer_float"))
    return fail("no-float-colour", "EXT_color_buffer_float is missing");
  const vectors: number = gl.getParameter(GL.MAX_FRAGMENT_UNIFORM_VECTORS);
  if (vectors < UNIFORM_VECTORS) return fail("too-few-uniforms", `${vectors} of ${UNIFORM_VECTORS} vectors`);
  const block: number = gl.getParameter(GL.MAX_UNIFORM_BLOCK_SIZE);
  if (block < BODY_BLOCK_BYTES) return fail("small-uniform-block", `${block} of ${BODY_BLOCK_BYTES} bytes`);
  const precision = gl.getShaderPrecisionFormat(GL.FRAGMENT_SHADER, GL.HIGH_FLOAT)?.precision ?? 0;
  if (precision < MANTISSA_BITS) return fail("low-precision", `${precision} bits of mantissa`);

  const named = gl.getExtension("WEBGL_debug_renderer_info");
  const renderer = String(gl.getParameter(named ? named.UNMASKED_RENDERER_WEBGL : GL.RENDERER));
  return { pass: true, code: SOFTWARE.test(renderer) ? "software" : "ok", detail: renderer };
}
