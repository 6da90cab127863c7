import { describe, expect, it } from "vitest";
import { type CheckableContext, checkDevice } from "../../src/render/device-check.ts";

/** A context that has everything, except what `lacks` takes away. */
function context(lacks: {
  extension?: string;
  parameters?: Record<number, unknown>;
  bits?: number;
  lost?: boolean;
}): CheckableContext {
  const parameters: Record<number, unknown> = {
    36349: 224,
    35376: 16384,
    7937: "A graphics card",
    ...lacks.parameters,
  };
  return {
    isContextLost: () => lacks.lost ?? false,
    getExtension: ((name: string) =>
      name === lacks.extension || name === "WEBGL_debug_renderer_info"
        ? null
        : {}) as CheckableContext["getExtension"],
    getParameter: (name: number) => parameters[name],
    getShaderPrecisionFormat: () =>
      ({ precision: lacks.bits ?? 23, rangeMin: 127, rangeMax: 127 }) as WebGLShaderPrecisionFormat,
  };
}

describe("the device check", () => {
  it("passes a machine that keeps OpenGL ES 3.0's promises and draws to floats", () => {
    expect(checkDevice(context({}))).toEqual({ pass: true, code: "ok", detail: "A graphics card" });
  });

  it("passes a software renderer and says that it is one", () => {
    const renderer = "ANGLE (Google, Vulkan 1.3.0 (SwiftShader Device), SwiftShader driver)";
    const check = checkDevice(context({ parameters: { 7937: renderer } }));
    expect(check).toEqual({ pass: true, code: "software", detail: renderer });
  });

  it.each([
    ["no-webgl2", null],
    ["context-lost", context({ lost: true })],
    ["no-float-colour", context({ extension: "EXT_color_buffer_float" })],
    ["too-few-uniforms", context({ parameters: { 36349: 64 } })],
    ["small-uniform-block", context({ parameters: { 35376: 4096 } })],
    ["low-precision", context({ bits: 10 })],
  ] as const)("names the cause %s", (code, gl) => {
    expect(checkDevice(gl)).toMatchObject({ pass: false, code });
  });
});
