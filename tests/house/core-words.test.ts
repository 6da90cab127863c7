/** The core emits data: what a person reads stands in `src/words`, in both languages. */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { sentencesIn } from "./sentences.ts";

const core = fileURLToPath(new URL("../../src/core", import.meta.url));

/**
 * Files that hold words all the same: what a file of ours says of itself, in English whoever made it, and where the sizes of
 * grits were read.
 */
const ALLOWED = /^(models\/|bench\/stages\/grits\.ts$|optics\/glasses\.ts$)/;

const files = readdirSync(core, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
  .map((entry) => relative(core, join(entry.parentPath, entry.name)));

it("has no sentence in the core", () => {
  const found = files
    .filter((file) => !ALLOWED.test(file))
    .flatMap((file) => sentencesIn(readFileSync(join(core, file), "utf8")).map((text) => `${file}: ${text}`));
  expect(found).toEqual([]);
});

it("knows a sentence from what is none", () => {
  expect(sentencesIn('const text = "it can be done";')).toHaveLength(1);
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the text of a program
  expect(sentencesIn("const text = `Tier ${id} can't touch here`;")).toHaveLength(1);
  expect(sentencesIn('/** "it can be done" */ const a = "soda-lime"; // it can be done')).toEqual([]);
  expect(sentencesIn('throw new Error("no tier is there");')).toEqual([]);
});
