/** The shaders' texts for programs that run without Vite: the same table as `src/render/shader-files.ts`, read from disk. */
import { readdirSync, readFileSync } from "node:fs";
import { assembleShader, type ShaderFiles } from "../../../src/render/shader-assembler.ts";

const FOLDER = new URL("../../../shaders/", import.meta.url);

export function readShaderTexts(): ShaderFiles {
  const names = readdirSync(FOLDER).filter((name) => /\.(glsl|frag|vert)$/.test(name));
  return Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, FOLDER), "utf8")]));
}

/** The yardstick for a number of planes. */
export const bareText = (planes: number): string =>
  assembleShader({ "bare.frag": readFileSync(new URL("bare.frag", import.meta.url), "utf8") }, "bare.frag", {
    PLANES: String(planes),
  }).text;
