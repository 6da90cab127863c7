/**
 * What the measures of a look say, against what eyes see: rank correlation with the mean of four blind rankings of traced pictures
 * (Spearman), and where it lies 19 times of 20 (Bonett and Wright, Sample size requirements for estimating Pearson, Kendall and
 * Spearman correlations, Psychometrika 65, 2000). The figures that people read are these.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { measurePlan } from "../../../src/core/measure/measures.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { ideasWords } from "../../../src/ui/messages/ideas.ts";

interface Eyes {
  readonly piece: Plan["piece"];
  readonly rig: Plan["rig"];
  readonly pieces: readonly { readonly inside: Plan["piece"]["inside"]; readonly tiers: Plan["tiers"] }[];
  readonly rankings: Readonly<Record<"back" | "through", readonly (readonly number[])[]>>;
}
const eyes: Eyes = JSON.parse(
  readFileSync(new URL("../../fixtures/ideas/eyes.json", import.meta.url), "utf8"),
);

const measured = eyes.pieces.map(({ inside, tiers }) =>
  measurePlan({
    format: "glintwright-plan",
    version: 1,
    name: "",
    piece: { ...eyes.piece, inside },
    rig: eyes.rig,
    tiers,
  }),
);

/** Ranks from the least, from 0; equal ones share the mean of theirs. */
function ranksOf(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const equal = values.filter((other) => other === value).length;
    return below + (equal - 1) / 2;
  });
}

/** Pearson's correlation. */
function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  const [x, y] = [a, b].map((values) => values.map((v) => v - mean(values)));
  const product = (u: readonly number[], v: readonly number[]) => u.reduce((sum, w, i) => sum + w * v[i], 0);
  return product(x, y) / Math.sqrt(product(x, x) * product(y, y));
}

/** Spearman's correlation of a measure with the mean of the rankings, and the two ends of its interval. */
function followed(name: "back" | "through"): readonly [number, number, number] {
  const places = measured.map((_, piece) =>
    eyes.rankings[name].reduce((sum, ranking) => sum - ranking.indexOf(piece), 0),
  );
  const r = correlation(ranksOf(places), ranksOf(measured.map((measures) => measures[name])));
  const off = 1.96 * Math.sqrt((1 + r ** 2 / 2) / (measured.length - 3));
  return [r, Math.tanh(Math.atanh(r) - off), Math.tanh(Math.atanh(r) + off)];
}

describe("a measure of a look and blind eyes", () => {
  it.each(["back", "through"] as const)("rank the same pieces much alike, as is said: %s", (name) => {
    const all = measured.map((_, piece) => piece);
    for (const ranking of eyes.rankings[name]) expect([...ranking].sort((a, b) => a - b)).toEqual(all);
    const [r, from, to] = followed(name).map((value) => value.toFixed(2));
    expect(Number(from)).toBeGreaterThan(0.8);
    expect(ideasWords.en.measures.eyes).toContain(`${r} (${from} to ${to})`);
    const [de, least, most] = [r, from, to].map((text) => text.replace(".", ","));
    expect(ideasWords.de.measures.eyes).toContain(`${de} (${least} bis ${most})`);
  });
});
