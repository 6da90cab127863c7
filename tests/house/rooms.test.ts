/** Each room says what lives in it and what it may import, by the table that its imports are held to. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { mayImport, ruleInWords } from "./rooms.ts";

const src = fileURLToPath(new URL("../../src", import.meta.url));
const foldersOf = (path: string): string[] =>
  readdirSync(join(src, path), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => (path ? `${path}/${name}` : name));
const rooms = [...foldersOf(""), ...foldersOf("core"), ...foldersOf("ui")];

it("there are rooms", () => {
  expect(rooms.length).toBeGreaterThan(30);
});

describe.each(rooms)("src/%s", (room) => {
  const file = join(src, room, "README.md");
  it("says in a few lines what lives there", () => {
    expect(existsSync(file)).toBe(true);
    const [what] = readFileSync(file, "utf8").split(/\n\n/);
    expect(what.length).toBeGreaterThan(60);
    expect(what.split("\n").length).toBeLessThan(6);
  });

  it("says last what it may import, and names folders that are there", () => {
    expect(readFileSync(file, "utf8").trimEnd().split("\n").at(-1)).toBe(ruleInWords(room));
    for (const other of mayImport(room)) expect(existsSync(join(src, other)), other).toBe(true);
  });
});
