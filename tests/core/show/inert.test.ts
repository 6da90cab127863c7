/** Whatever a plan's texts hold, a customer's page has the elements that it has with plain ones: a law over every field that takes text. */
import { expect, it } from "vitest";
import type { Plan } from "../../../src/core/plan/document.ts";
import { PlanFileError, planFromData } from "../../../src/core/plan/file.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { recipeOf, showPage } from "../../../src/core/show/show-page.ts";
import { showPiece } from "../../../src/core/show/show-piece.ts";
import { showSaid } from "../../../src/words/show.ts";
import { plan, tier } from "../bench/plans.ts";

const HOSTILE = `</script><script>alert(1)</script></p><img src=x onerror=alert(2)>"'&<!--`;
const FULL: Plan = {
  ...plan([
    tier({ id: "ring", name: "Waist", count: 3, depth: { rule: "depth", mm: 1 }, finish: "ground" }),
    tier({ id: "top", name: "Top", count: 1, armAngleDeg: 90, depth: { rule: "width", mm: 6 } }),
  ]),
  name: "Quay",
  notes: "for the sill",
  maker: { name: "Kiln Lane", mark: "data:image/png;base64,AAAA" },
  offer: { currency: "EUR", hourly: 40, terms: "half in advance" },
  piece: {
    diameterMm: 30,
    glass: { name: "Own", nd: 1.5, vd: 60, densityGcm3: 2.5 },
    inside: [{ kind: "core", diameterMm: 9, rgb: [0.1, 0.2, 0.5] }],
  },
  rig: { wheelStops: 96, stages: [{ id: "coarse", name: "Coarse", grainUm: 75 }] },
};

type Path = readonly (string | number)[];
/** Where texts stand. */
function textsIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === "string") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => textsIn(one, [...path, key]));
}

function withText([key, ...rest]: Path, text: string, value: unknown): unknown {
  if (key === undefined) return text;
  const copy: Record<string | number, unknown> | unknown[] = Array.isArray(value)
    ? [...value]
    : { ...(value as object) };
  Object.assign(copy, { [key]: withText(rest, text, (value as Record<string | number, unknown>)[key]) });
  return copy;
}

function pageOf(of: Plan, caption: string, price: string): string {
  const solved = solvePlan(of);
  const said = showSaid(solved, true);
  return showPage({
    name: of.name,
    diameterMm: of.piece.diameterMm,
    caption,
    price,
    maker: of.maker,
    data: { piece: showPiece(solved), light: "north-window", pictures: [], said },
    still: "data:image/jpeg;base64,AAAA",
    script: { text: "run()", sha256: "" },
    style: { text: "body{margin:0}", sha256: "" },
    plan: recipeOf(of),
  });
}

/** Tags and comments in order, as a reader of HTML meets them: within a script it looks for nothing but its end. */
function tagsOf(html: string): string[] {
  const tags: string[] = [];
  const next = /<script\b[^>]*>[\s\S]*?<\/script|<!--|<\/?([a-z][a-z0-9]*)(?:"[^"]*"|[^">])*>/gi;
  for (const [found, name] of html.matchAll(next))
    tags.push(name ? name.toLowerCase() : /^<script/i.test(found) ? "script" : "comment");
  return tags;
}

it("takes every text for text", () => {
  const usual = tagsOf(pageOf(FULL, "A line", "180"));
  expect(usual.filter((name) => name === "script")).toHaveLength(3);
  const taken: string[] = [];
  for (const path of textsIn(FULL)) {
    let read: Plan;
    try {
      read = planFromData(withText(path, HOSTILE, FULL)).plan;
    } catch (error) {
      // a word of the format's own, or one that others refer to
      if (error instanceof PlanFileError) continue;
      throw error;
    }
    taken.push(path.join("."));
    expect(tagsOf(pageOf(read, "A line", "180")), path.join(".")).toEqual(usual);
  }
  expect(taken).toEqual(
    expect.arrayContaining([
      "name",
      "notes",
      "maker.name",
      "offer.terms",
      "tiers.0.name",
      "piece.glass.name",
    ]),
  );
  expect(tagsOf(pageOf(FULL, HOSTILE, "180"))).toEqual(usual);
  expect(tagsOf(pageOf(FULL, "A line", HOSTILE))).toEqual(usual);
});
