/**
 * One shader text out of many files: `#include "fresnel.glsl"` on a line of its own is replaced by that file.
 * Each file enters once, at its first mention; a cycle is an error. `#line` directives number the files, so that a
 * compiler's complaint can be traced back to the file it is about. Pure: the files come in as a table name -> text.
 */

/** File name (`fresnel.glsl`) -> its text. */
export type ShaderFiles = Readonly<Record<string, string>>;

export interface AssembledShader {
  readonly text: string;
  /** Position k holds the name of the file that `#line` numbers k. */
  readonly files: readonly string[];
}

/** A shader that can't be put together; `file` is where the trouble stands. */
export class ShaderAssemblyError extends Error {
  constructor(
    readonly file: string,
    message: string,
  ) {
    super(`${file}: ${message}`);
    this.name = "ShaderAssemblyError";
  }
}

const INCLUDE = /^\s*#include\s+"([^"]+)"\s*$/;
const VERSION = /^\s*#version\s/;

/**
 * @param entry name of the file to start from; it alone may carry `#version`, in its first line
 * @param defines names to set right after `#version` (`{ MAX_PLANES: "256" }`)
 * @throws ShaderAssemblyError for a missing file, a cycle, or a `#version` out of place
 */
export function assembleShader(
  files: ShaderFiles,
  entry: string,
  defines: Readonly<Record<string, string>> = {},
): AssembledShader {
  const done: string[] = [];
  const out: string[] = [];

  const append = (name: string, path: readonly string[]): void => {
    const source = files[name];
    if (source === undefined) throw new ShaderAssemblyError(path.at(-1) ?? name, `there is no "${name}"`);
    if (path.includes(name))
      throw new ShaderAssemblyError(name, `includes itself: ${[...path, name].join(" -> ")}`);
    if (done.includes(name)) return;
    const number = done.push(name) - 1;
    const inner = [...path, name];
    source.split("\n").forEach((line, at) => {
      const included = INCLUDE.exec(line)?.[1];
      if (included !== undefined) {
        append(included, inner);
        out.push(`#line ${at + 2} ${number}`);
      } else if (VERSION.test(line)) {
        if (name !== entry || at !== 0)
          throw new ShaderAssemblyError(name, "#version belongs in line 1 only");
        out.push(
          line,
          ...Object.entries(defines).map(([key, value]) => `#define ${key} ${value}`),
          "#line 2 0",
        );
      } else {
        if (at === 0) out.push(`#line 1 ${number}`);
        out.push(line);
      }
    });
  };

  append(entry, []);
  return { text: `${out.join("\n")}\n`, files: done };
}

/** A compiler's log with `0:12:` turned into `trace.frag:12:`. */
export function explainShaderLog(log: string, shader: AssembledShader): string {
  return log.replace(/\b(\d+):(\d+):/g, (whole, file: string, line: string) => {
    const name = shader.files[Number(file)];
    return name === undefined ? whole : `${name}:${line}:`;
  });
}
