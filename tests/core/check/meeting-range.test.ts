/** Ranges in which everything still meets, held against the verdict on plans inside and outside them. */
import { expect, it } from "vitest";
import { meetingAngles, meetingCounts } from "../../../src/core/check/meeting-range.ts";
import { reportPlan } from "../../../src/core/check/report.ts";
import { verdictOf } from "../../../src/core/check/verdict.ts";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "../plan/sample.ts";

const answers = <T>(steps: Iterable<T | null>): T[] =>
  [...steps].filter((one): one is T & {} => one !== null);
const kindOf = (p: Plan) => verdictOf(solvePlan(p), reportPlan(p)).kind;
const changed = (p: Plan, at: number, change: Partial<Tier>): Plan => ({
  ...p,
  tiers: p.tiers.map((one, i) => (i === at ? { ...one, ...change } : one)),
});

const TWO = plan([
  tier("a", 20, 12, { rule: "edge", mm: 4 }),
  tier("b", 45, 12, { rule: "close", to: "a" }, 15),
]);

it("goes as far as a ring that touches does by the closed form, when nothing else is cut", () => {
  // n neighbours at depth d touch where cos a = sin(acos(1 - d / R)) / sin(pi / n)
  const ring = plan([tier("a", 30, 8, { rule: "touch" })]);
  // touching is possible at any angle: the depth follows
  expect(answers(meetingAngles(ring, 0))).toEqual([{ fromDeg: 0, toDeg: expect.any(Number) }]);
  // a fixed depth touches or overlaps only up to that angle
  const depthMm = 0.5;
  const most = (Math.acos(Math.sin(Math.acos(1 - depthMm / 15)) / Math.sin(Math.PI / 8)) * 180) / Math.PI;
  const fixed = plan([tier("a", 60, 8, { rule: "depth", mm: depthMm })]);
  const [range] = answers(meetingAngles(fixed, 0));
  // towards the equator neighbours come apart; within the tolerance of 0.05 mm they still touch
  expect(range.fromDeg).toBeLessThan(most + 0.1);
  expect(range.fromDeg).toBeGreaterThan(most - 1);
});

it("ends where the verdict changes or something that met is lost, in a plan whose tiers follow each other", () => {
  for (const at of [0, 1]) {
    const [{ fromDeg, toDeg }] = answers(meetingAngles(TWO, at));
    const own = TWO.tiers[at].armAngleDeg;
    expect(fromDeg).toBeLessThan(own);
    expect(toDeg).toBeGreaterThan(own);
    for (let deg = fromDeg; deg <= toDeg; deg += (toDeg - fromDeg) / 6)
      expect(kindOf(changed(TWO, at, { armAngleDeg: deg })), `${at} at ${deg}`).toBe("meets");
  }
});

it("keeps what meets in a plan that is meant to stay open, and lets it get no worse", () => {
  const open = plan([tier("a", 10, 12, { rule: "touch" }), tier("b", 60, 8, { rule: "touch" })]);
  expect(kindOf(open)).toBe("apart");
  const [{ fromDeg, toDeg }] = answers(meetingAngles(open, 1));
  expect(fromDeg).toBeLessThan(60);
  expect(toDeg).toBeGreaterThan(60);
  for (const deg of [fromDeg, toDeg])
    expect(["apart", "meets"]).toContain(kindOf(changed(open, 1, { armAngleDeg: deg })));
  expect(answers(meetingCounts(open, 1))).toContain(6);
});

it("finds the angles that would do where the plan can't be ground now", () => {
  const stopped = (deg: number) => plan([tier("a", deg, 6, { rule: "edge", mm: 28 })]);
  expect(kindOf(stopped(30))).toBe("stops");
  const [{ fromDeg, toDeg }] = answers(meetingAngles(stopped(30), 0));
  expect(toDeg).toBeLessThan(30);
  expect(kindOf(stopped((fromDeg + toDeg) / 2))).toBe("meets");
  expect(kindOf(stopped(toDeg))).toBe("meets");
  expect(kindOf(stopped(toDeg + 0.2))).not.toBe("meets");
});

it("answers nothing where no angle does it", () => {
  const never = plan([tier("a", 20, 3, { rule: "edge", mm: 80 })]);
  expect(answers(meetingAngles(never, 0))).toEqual([]);
});

it("names the counts that still meet, the nearest first, as the verdict says of each", () => {
  const counts = answers(meetingCounts(TWO, 1));
  expect(counts[0]).toBe(12);
  for (const count of [3, 4, 6, 8, 12, 16, 24, 32, 48])
    expect(counts.includes(count), String(count)).toBe(kindOf(changed(TWO, 1, { count })) === "meets");
  expect(counts.length).toBeLessThan(9);
});
