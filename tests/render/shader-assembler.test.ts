import { describe, expect, it } from "vitest";
import { assembleShader, explainShaderLog, ShaderAssemblyError } from "../../src/render/shader-assembler.ts";
import { shaderFiles } from "../../src/render/shader-files.ts";

describe("the shader assembler", () => {
  it("puts an included file in the place of its line", () => {
    const { text } = assembleShader({ main: '#version 300 es\n#include "a"\nend', a: "first" }, "main");
    const lines = text.split("\n").filter((line) => line !== "" && !line.startsWith("#line"));
    expect(lines).toEqual(["#version 300 es", "first", "end"]);
  });

  it("takes each file once although two files ask for it", () => {
    const files = { main: '#include "a"\n#include "b"', a: '#include "c"', b: '#include "c"', c: "common" };
    expect(assembleShader(files, "main").text.match(/common/g)).toHaveLength(1);
  });

  it("refuses a cycle and says how it runs", () => {
    const files = { main: '#include "a"', a: '#include "b"', b: '#include "a"' };
    expect(() => assembleShader(files, "main")).toThrow("main -> a -> b -> a");
  });

  it("refuses a file that is not there and names who asked for it", () => {
    expect(() => assembleShader({ main: '#include "gone"' }, "main")).toThrow(
      new ShaderAssemblyError("main", 'there is no "gone"'),
    );
  });

  it("refuses #version inside an included file", () => {
    const files = { main: '#version 300 es\n#include "a"', a: "#version 300 es" };
    expect(() => assembleShader(files, "main")).toThrow(ShaderAssemblyError);
  });

  it("sets names right after #version", () => {
    const { text } = assembleShader({ main: "#version 300 es\nx" }, "main", { PLANES: "25" });
    expect(text.split("\n").slice(0, 2)).toEqual(["#version 300 es", "#define PLANES 25"]);
  });

  it("numbers lines so that a complaint finds its file", () => {
    const shader = assembleShader({ main: '#version 300 es\n#include "a"\nlast', a: "one\ntwo" }, "main");
    const lines = shader.text.split("\n");
    expect(lines[lines.indexOf("last") - 1]).toBe("#line 3 0");
    expect(lines[lines.indexOf("one") - 1]).toBe("#line 1 1");
    expect(explainShaderLog("ERROR: 1:2: 'two'", shader)).toBe("ERROR: a:2: 'two'");
  });

  it("can assemble every shader of the product", () => {
    const entries = Object.keys(shaderFiles).filter((name) => /\.(frag|vert)$/.test(name));
    expect(entries).toContain("trace.frag");
    for (const entry of entries)
      expect(assembleShader(shaderFiles, entry).text).toMatch(/^#version 300 es\n/);
  });
});
