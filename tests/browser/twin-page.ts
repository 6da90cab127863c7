/** Runs one function of the shader on many inputs, into a float target, and hands over what it gave. */
import { compileProgram, UniformSetter } from "../../src/render/gl-program.ts";
import type { ByteTexels, Texels } from "../../src/render/packed-scene.ts";
import { assembleShader } from "../../src/render/shader-assembler.ts";
import { shaderFiles } from "../../src/render/shader-files.ts";
import { int, type Uniforms } from "../../src/render/uniforms.ts";

/** Numbers as they come out of JSON. */
export interface SentTexels {
  readonly width: number;
  readonly height: number;
  readonly bytes: boolean;
  readonly rgba: readonly number[];
}
export interface ProbeWish {
  /** Files to include, and statements that set `first` and `second` from `given(0)`, `given(1)` ... */
  readonly include: readonly string[];
  readonly body: string;
  readonly defines: Readonly<Record<string, string>>;
  readonly uniforms: Uniforms;
  /** Uniform blocks and samplers by name. */
  readonly blocks: Readonly<Record<string, readonly number[]>>;
  readonly samplers: Readonly<Record<string, SentTexels>>;
  /** Four numbers a texel, the same number of texels an input. */
  readonly inputs: readonly (readonly number[])[];
}

const sourceOf = ({ include, body }: ProbeWish): string => `#version 300 es
precision highp float;
precision highp int;
precision highp sampler2D;
${include.map((file) => `#include "${file}"`).join("\n")}
uniform sampler2D inputs;
layout(location = 0) out vec4 first;
layout(location = 1) out vec4 second;
vec4 given(int k) {
  return texelFetch(inputs, ivec2(k, int(gl_FragCoord.y)), 0);
}
// A whole number of 32 bits, sent as two of 16.
uint whole(vec2 halves) {
  return (uint(halves.x) << 16) | uint(halves.y);
}
void main() {
  first = vec4(0.0);
  second = vec4(0.0);
  ${body}
}
`;

function texture(gl: WebGL2RenderingContext, unit: number, texels: Texels | ByteTexels): void {
  gl.activeTexture(gl.TEXTURE0 + unit);
  gl.bindTexture(gl.TEXTURE_2D, gl.createTexture());
  const isBytes = texels.rgba instanceof Uint8Array;
  const [format, kind] = isBytes ? [gl.RGBA8, gl.UNSIGNED_BYTE] : [gl.RGBA32F, gl.FLOAT];
  gl.texImage2D(gl.TEXTURE_2D, 0, format, texels.width, texels.height, 0, gl.RGBA, kind, texels.rgba);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
}

/** Eight numbers an input. */
async function probe(wish: ProbeWish): Promise<number[][]> {
  const gl = document.createElement("canvas").getContext("webgl2");
  if (!gl?.getExtension("EXT_color_buffer_float")) throw new Error("no float targets");
  const files = { ...shaderFiles, "probe.frag": sourceOf(wish) };
  const program = await compileProgram(
    gl,
    assembleShader(files, "screen.vert"),
    assembleShader(files, "probe.frag", wish.defines),
  );
  // biome-ignore lint/correctness/useHookAtTopLevel: a call of WebGL, no hook
  gl.useProgram(program);
  const uniforms = new UniformSetter(gl, program);
  uniforms.set(wish.uniforms);
  const height = wish.inputs.length;
  const width = wish.inputs[0].length / 4;
  texture(gl, 0, { width, height, rgba: Float32Array.from(wish.inputs.flat()) });
  uniforms.set({ inputs: int(0) });
  Object.entries(wish.samplers).forEach(([name, sent], k) => {
    const { width, height, rgba } = sent;
    if (sent.bytes) texture(gl, k + 1, { width, height, rgba: Uint8Array.from(rgba) });
    else texture(gl, k + 1, { width, height, rgba: Float32Array.from(rgba) });
    uniforms.set({ [name]: int(k + 1) });
  });
  Object.entries(wish.blocks).forEach(([name, numbers], binding) => {
    const block = gl.getUniformBlockIndex(program, name);
    if (block === gl.INVALID_INDEX) return;
    const buffer = gl.createBuffer();
    gl.bindBuffer(gl.UNIFORM_BUFFER, buffer);
    gl.bufferData(gl.UNIFORM_BUFFER, Float32Array.from(numbers), gl.STATIC_DRAW);
    gl.uniformBlockBinding(program, block, binding);
    gl.bindBufferBase(gl.UNIFORM_BUFFER, binding, buffer);
  });
  const out = [gl.COLOR_ATTACHMENT0, gl.COLOR_ATTACHMENT1];
  gl.bindFramebuffer(gl.FRAMEBUFFER, gl.createFramebuffer());
  out.forEach((attachment, k) => {
    texture(gl, 15 - k, { width: 1, height, rgba: new Float32Array(4 * height) });
    const target = gl.getParameter(gl.TEXTURE_BINDING_2D) as WebGLTexture;
    gl.framebufferTexture2D(gl.FRAMEBUFFER, attachment, gl.TEXTURE_2D, target, 0);
  });
  gl.drawBuffers(out);
  gl.viewport(0, 0, 1, height);
  gl.drawArrays(gl.TRIANGLES, 0, 3);
  const halves = out.map((attachment) => {
    const numbers = new Float32Array(4 * height);
    gl.readBuffer(attachment);
    gl.readPixels(0, 0, 1, height, gl.RGBA, gl.FLOAT, numbers);
    return numbers;
  });
  const fault = gl.getError();
  if (fault !== gl.NO_ERROR) throw new Error(`WebGL error ${fault}`);
  gl.getExtension("WEBGL_lose_context")?.loseContext();
  return wish.inputs.map((_, i) => halves.flatMap((half) => [...half.subarray(4 * i, 4 * i + 4)]));
}

Object.assign(window, { probe });
