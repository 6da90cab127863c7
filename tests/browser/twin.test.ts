/**
 * The shader against its twin, function by function: each on the same thousand random inputs, so that a difference names its
 * culprit. The shader reckons in single precision, which the bounds allow for: away from edges (of a shape, of total reflection)
 * each number agrees to `within`, and at most `stray` of the inputs may lie so near an edge that they differ.
 */
import { expect, it } from "vitest";
import { chance } from "../core/optics/helpers.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";
import { CAPPED, EDGES } from "./twin/body-probes.ts";
import { BOUNDARY } from "./twin/crossing-probes.ts";
import { GLASS } from "./twin/glass-probes.ts";
import { HITS, THROUGH } from "./twin/inside-probes.ts";
import { LIGHTS, ON_TABLE, SPECTRUM } from "./twin/light-probes.ts";
import { PLACES, THROUGH_MELTED } from "./twin/melted-probes.ts";
import type { Probe } from "./twin/probe.ts";
import { ON_RING, TABLES } from "./twin/table-probes.ts";
import type { ProbeWish } from "./twin-page.ts";

const INPUTS = 1000;

const opened = sharedThing(
  async () => {
    const open = await openPage("tests/browser/twin-page.html");
    await open.page.waitForFunction("'probe' in window");
    return open;
  },
  ({ close }) => close(),
  ({ errors }) => expect(errors).toEqual([]),
);

const single = (values: readonly number[]): number[] => values.map(Math.fround);

/** How many inputs the two disagree on, and the first of them. */
async function disagreement({ name, wish, input, twin, within = 1e-4 }: Probe) {
  const random = chance(name.length);
  const inputs = Array.from({ length: INPUTS }, () => single(input(random)));
  const whole: ProbeWish = { defines: {}, uniforms: {}, blocks: {}, samplers: {}, ...wish, inputs };
  const ours = await opened().page.evaluate<number[][]>(`probe(${JSON.stringify(whole)})`);
  let [differ, told] = [0, 0];
  let first = "";
  inputs.forEach((given, i) => {
    const expected = twin(given);
    if (expected.some((v) => v !== 0)) told++;
    const isSame = expected.every((v, k) => Math.abs(ours[i][k] - v) <= within * Math.max(1, Math.abs(v)));
    if (isSame) return;
    if (differ++ === 0) first = `${given.join(" ")} gives ${ours[i].join(" ")} and not ${expected.join(" ")}`;
  });
  return { share: differ / INPUTS, first, told: told / INPUTS };
}

it.each(
  [
    ...ON_RING,
    ...TABLES,
    ...BOUNDARY,
    SPECTRUM,
    ...CAPPED,
    ...LIGHTS,
    ON_TABLE,
    ...HITS,
    ...THROUGH,
    ...GLASS,
    ...EDGES,
    ...PLACES,
    ...THROUGH_MELTED,
  ].map((probe) => [probe.name, probe] as const),
)("gives what its twin gives: %s", async (_, probe) => {
  const { share, first, told } = await disagreement(probe);
  expect(told, "inputs that say something").toBeGreaterThan(0.2);
  expect(share, first).toBeLessThanOrEqual(probe.stray ?? 0);
});
