/** The page, our server and static hosts say the same of what may run and who may frame (`npm run build` first; `npm test` does). */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { HEADERS, PAGE_POLICY } from "../../src/cli/headers.ts";

const dist = process.env.BUILT_APP ?? fileURLToPath(new URL("../../dist", import.meta.url));
const built = (name: string) => readFileSync(`${dist}/${name}`, "utf8");

it("has the page's own policy and referrer in the built page", () => {
  const page = built("index.html");
  expect(
    /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1].replaceAll("&#39;", "'"),
  ).toBe(PAGE_POLICY);
  expect(/<meta name="referrer" content="([^"]*)"/.exec(page)?.[1]).toBe(HEADERS["Referrer-Policy"]);
});

it("has a file for static hosts that says for every path what our server says", () => {
  const blocks = new Map(
    built("_headers")
      .split(/\n(?=\S)/)
      .map((block) => block.trimEnd().split("\n"))
      .map(([path, ...lines]) => [
        path,
        Object.fromEntries(lines.map((line) => line.trim().split(/: (.*)/, 2))),
      ]),
  );
  expect(blocks.get("/*")).toEqual(HEADERS);
  expect(Object.keys(blocks.get("/assets/*") ?? {})).toEqual(["Cache-Control"]);
  // as much of a line as the hosts that read such a file take
  for (const line of built("_headers").split("\n")) expect(line.length).toBeLessThan(2000);
});
