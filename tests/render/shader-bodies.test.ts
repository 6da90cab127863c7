/** Each body inside the glass is known to the shaders under its name: its number, its bit of DESIGNS, and code where it is there. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { BODIES } from "../../src/core/inside/bodies.ts";

const folder = fileURLToPath(new URL("../../shaders/", import.meta.url));
const texts = readdirSync(folder)
  .filter((name) => /\.(glsl|frag|vert)$/.test(name))
  .map((name) => readFileSync(`${folder}${name}`, "utf8"));
const inside = readFileSync(`${folder}inside.glsl`, "utf8");
const bodies = Object.entries(BODIES).map(([number, { glsl }]) => ({ number: Number(number), glsl }));
const MELTED = ["TWIST", "MELTED_RIBBON", "MELTED_PETALS", "SWIRL"];

describe.each(bodies)("$glsl", ({ number, glsl }) => {
  it("has the same number in the shaders", () => {
    expect(inside).toContain(`const int ${glsl} = ${number};`);
    expect(inside).toContain(`#define HAS_${glsl} ((DESIGNS & ${1 << number}) != 0)`);
  });

  it("has code that is compiled only where it is there", () => {
    const asked = new RegExp(`^#(?:el)?if .*\\bHAS_${glsl}\\b`, "m");
    expect(texts.some((text) => asked.test(text))).toBe(true);
  });
});

it("has no body in the shaders that is none here, and no two of one number", () => {
  const known = [...inside.matchAll(/^#define HAS_(\w+) \(\(DESIGNS & \d+\) != 0\)$/gm)].map(
    ([, name]) => name,
  );
  expect(known.filter((name) => name !== "MEDIA").sort()).toEqual(bodies.map(({ glsl }) => glsl).sort());
  const melted = bodies
    .filter(({ glsl }) => MELTED.includes(glsl))
    .reduce((all, { number }) => all | (1 << number), 0);
  expect(inside).toContain(`#define HAS_MEDIA ((DESIGNS & ${melted}) != 0)`);
});
