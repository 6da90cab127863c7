/** The command line makes no sentences: what a person reads stands in `src/words`, in both languages. */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { sentencesIn } from "./sentences.ts";

const folder = fileURLToPath(new URL("../../src/cli", import.meta.url));
/** Policies of a page, and a program that is written: neither is for a person. */
const ALLOWED = ["headers.ts", "show-bundle.ts"];

it("has no sentence in the command line", () => {
  const found = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .filter((file) => !ALLOWED.includes(file))
    .flatMap((file) =>
      sentencesIn(readFileSync(join(folder, file), "utf8")).map((text) => `${file}: ${text}`),
    );
  expect(found).toEqual([]);
});
