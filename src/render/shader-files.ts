/** The texts of all shaders, taken in at build time; the map from path to name is `shaders/fresnel.glsl` -> `fresnel.glsl`. */
import type { ShaderFiles } from "./shader-assembler.ts";

const texts = import.meta.glob<string>("../../shaders/*.{glsl,frag,vert}", {
  query: "?raw",
  import: "default",
  eager: true,
});

export const shaderFiles: ShaderFiles = Object.fromEntries(
  Object.entries(texts).map(([path, text]) => [path.slice(path.lastIndexOf("/") + 1), text]),
);
