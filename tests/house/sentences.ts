/** Finds words for a person among the literals of a source. */

/** Three words in a row, as no code, path or identifier has them. */
const SENTENCE = /[\p{L}']{2,}[,:;]? [\p{L}']{2,}[,:;]? [\p{L}']{2,}/u;
const LITERAL = /"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g;
/** What a fault of ours says in a trace, which nobody is shown. */
const THROWN = /new (?:Range|Type)?Error\(\s*$/;

/** The literals of a source that read as words for a person. */
export function sentencesIn(source: string): string[] {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$|\s\/\/ .*$/gm, "");
  return [...code.matchAll(LITERAL)]
    .filter(({ index }) => !THROWN.test(code.slice(0, index)))
    .map(([literal]) => literal.replace(/\$\{[^}]*\}/g, "x"))
    .filter((text) => SENTENCE.test(text));
}
