/**
 * The script and style of a customer's page, bundled from the sources as they are, so that no build has to come first; and each
 * with its hash, by which the page's policy names it.
 */
import { createHash } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { build, type Plugin, transform } from "esbuild";
import type { Hashed } from "../core/show/show-page.ts";
import { faceRules } from "../sheet/sheet-face.ts";
import { sheetFace } from "./sheet-face.ts";

/** Comments and what indents lines say nothing to a compiler; lines stay, since directives need theirs. */
const bare = (glsl: string): string =>
  glsl
    .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "")
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .join("\n");

/** Takes the shaders' texts in, where the app's own build does it in its way. */
const shaders = (top: string): Plugin => ({
  name: "shaders",
  setup(bundle) {
    bundle.onLoad({ filter: /[\\/]render[\\/]shader-files\.ts$/ }, async () => {
      const folder = join(top, "shaders");
      const names = (await readdir(folder)).filter((name) => /\.(glsl|frag|vert)$/.test(name));
      const texts = await Promise.all(names.map((name) => readFile(join(folder, name), "utf8")));
      const files = Object.fromEntries(names.map((name, i) => [name, bare(texts[i])]));
      return { contents: `export const shaderFiles = ${JSON.stringify(files)};` };
    });
  },
});

const hashed = (text: string): Hashed => ({
  text,
  sha256: createHash("sha256").update(text, "utf8").digest("base64"),
});

/** Letters of Western languages; whose name has others reads it in the device's own face. */
const latinFace = async () =>
  (await sheetFace()).filter(({ characters }) => characters.includes("U+0000-00FF"));

/** @param top folder of the project */
export async function bundleShow(top: string): Promise<{ readonly script: Hashed; readonly style: Hashed }> {
  const made = await build({
    entryPoints: [join(top, "src/show/main.ts")],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: ["chrome110", "firefox110", "safari16"],
    charset: "utf8",
    legalComments: "none",
    logLevel: "error",
    plugins: [shaders(top)],
  });
  const css = await readFile(join(top, "src/show/show.css"), "utf8");
  const style = await transform(css, { loader: "css", minify: true });
  return {
    script: hashed(made.outputFiles[0].text),
    style: hashed(`${faceRules(await latinFace())}\n${style.code}`),
  };
}
