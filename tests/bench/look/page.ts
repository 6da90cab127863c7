import { Accumulator } from "../../src/render/accumulator.ts";
import {
  compileProgram,
  float,
  mat3,
  UniformSetter,
  type Uniforms,
  uint,
  vec2,
  vec3,
  vec4,
} from "../../src/render/gl-program.ts";
import { assembleShader } from "../../src/render/shader-assembler.ts";
import { shaderFiles } from "../../src/render/shader-files.ts";
import bareText from "./look-bare.frag?raw";

async function bare(size: number, frames: number) {
  const canvas = document.createElement("canvas");
  const gl = canvas.getContext("webgl2")!;
  gl.getExtension("EXT_color_buffer_float");
  const program = await compileProgram(
    gl,
    assembleShader(shaderFiles, "screen.vert"),
    assembleShader({ "bare.frag": bareText }, "bare.frag"),
  );
  const acc = new Accumulator(gl, size, size);
  gl.useProgram(program);
  const planes: number[] = [];
  for (let k = 0; k < 25; k++) {
    const t = k * 2.399963,
      z = 1 - (2 * k + 1) / 25,
      r = Math.sqrt(1 - z * z);
    planes.push(r * Math.cos(t), r * Math.sin(t), z, 0.93);
  }
  const f = Math.tan((Math.PI / 180) * 7);
  const u: Uniforms = {
    planes: vec4(planes),
    eye: vec3([0, 0, 10]),
    view: mat3([f, 0, 0, 0, f, 0, 0, 0, 1]),
    resolution: vec2([size, size]),
  };
  const set = new UniformSetter(gl, program);
  set.set(u);
  gl.bindFramebuffer(gl.FRAMEBUFFER, acc.back);
  gl.viewport(0, 0, size, size);
  const draw = (k: number) => {
    set.set({ frameIndex: uint(k) });
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  };
  const px = new Float32Array(4);
  draw(0);
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.FLOAT, px);
  const t0 = performance.now();
  for (let k = 0; k < frames; k++) draw(k);
  gl.readPixels(size / 2, size / 2, 1, 1, gl.RGBA, gl.FLOAT, px);
  const ms = performance.now() - t0;
  return { mps: (size * size * frames) / ms / 1e3, px: [...px], float: float(1) };
}
Object.assign(window, { bare });
