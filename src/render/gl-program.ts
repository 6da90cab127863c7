/** Compiling a program without holding up the page, and handing it its uniforms. */
import { type AssembledShader, explainShaderLog } from "./shader-assembler.ts";
import type { Uniforms, UniformValue } from "./uniforms.ts";

/** A shader this device's compiler refuses, or a program it can't link; the log names files and lines. */
class ShaderCompileError extends Error {
  constructor(readonly log: string) {
    super(`the graphics card refuses the shader: ${log}`);
    this.name = "ShaderCompileError";
  }
}

/** How often a compile that runs in the background is asked whether it is done, milliseconds. */
const POLL_MS = 8;

/**
 * Compiles and links in the background where the browser can (KHR_parallel_shader_compile), else when first asked.
 * @throws ShaderCompileError when the device refuses; the signal's reason when aborted or when the context is lost
 */
export async function compileProgram(
  gl: WebGL2RenderingContext,
  vertex: AssembledShader,
  fragment: AssembledShader,
  signal?: AbortSignal,
): Promise<WebGLProgram> {
  const parallel = gl.getExtension("KHR_parallel_shader_compile");
  const shaders = [
    compileShader(gl, gl.VERTEX_SHADER, vertex),
    compileShader(gl, gl.FRAGMENT_SHADER, fragment),
  ];
  const program = gl.createProgram();
  for (const shader of shaders) gl.attachShader(program, shader);
  gl.linkProgram(program);

  // No status may be asked for before the work is done: asking would wait for it.
  while (
    parallel &&
    !gl.isContextLost() &&
    !gl.getProgramParameter(program, parallel.COMPLETION_STATUS_KHR)
  ) {
    await new Promise((resume) => setTimeout(resume, POLL_MS));
    signal?.throwIfAborted();
  }
  signal?.throwIfAborted();

  if (!gl.isContextLost() && !gl.getProgramParameter(program, gl.LINK_STATUS)) {
    const logs = [
      explainShaderLog(gl.getShaderInfoLog(shaders[0]) ?? "", vertex),
      explainShaderLog(gl.getShaderInfoLog(shaders[1]) ?? "", fragment),
      gl.getProgramInfoLog(program) ?? "",
    ];
    throw new ShaderCompileError(logs.filter((log) => log !== "").join("\n"));
  }
  for (const shader of shaders) gl.deleteShader(shader);
  return program;
}

function compileShader(gl: WebGL2RenderingContext, kind: number, source: AssembledShader): WebGLShader {
  const shader = gl.createShader(kind);
  if (!shader) throw new ShaderCompileError("no shader object could be made");
  gl.shaderSource(shader, source.text);
  gl.compileShader(shader);
  return shader;
}

/** Looks up each uniform's place once and remembers it; names a shader does not use are passed over, as GL does. */
export class UniformSetter {
  private readonly places = new Map<string, WebGLUniformLocation | null>();

  constructor(
    private readonly gl: WebGL2RenderingContext,
    private readonly program: WebGLProgram,
  ) {}

  /** The program must be in use. */
  set(uniforms: Uniforms): void {
    for (const [name, uniform] of Object.entries(uniforms)) this.setOne(this.placeOf(name), uniform);
  }

  private placeOf(name: string): WebGLUniformLocation | null {
    const known = this.places.get(name);
    if (known !== undefined) return known;
    const place = this.gl.getUniformLocation(this.program, name);
    this.places.set(name, place);
    return place;
  }

  private setOne(place: WebGLUniformLocation | null, uniform: UniformValue): void {
    const { gl } = this;
    if (uniform.kind === "int") gl.uniform1i(place, uniform.value);
    else if (uniform.kind === "uint") gl.uniform1ui(place, uniform.value);
    else if (uniform.kind === "float") gl.uniform1f(place, uniform.value);
    else if (uniform.kind === "vec2") gl.uniform2fv(place, uniform.value);
    else if (uniform.kind === "vec3") gl.uniform3fv(place, uniform.value);
    else if (uniform.kind === "vec4") gl.uniform4fv(place, uniform.value);
    else if (uniform.kind === "mat3") gl.uniformMatrix3fv(place, false, [...uniform.value]);
  }
}
