/** Index wheel and set-ups. The machine is modelled on its own here: what it really brings down to the lap is checked. */
import { describe, expect, it } from "vitest";
import { benchOf } from "../../../src/core/bench/bench.ts";
import {
  afterFineTurn,
  afterTrialFacet,
  canTrim,
  directionOf,
  offsetLeft,
  offsetTurn,
  readMark,
  readStop,
  startAt,
  startLabel,
  startStop,
  wheelFit,
} from "../../../src/core/bench/rig/set-up.ts";
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import type { Plan, Side, Tier } from "../../../src/core/plan/document.ts";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { plan, tier } from "./plans.ts";

const DEG = Math.PI / 180;
const turnZ = ([x, y, z]: Vec3, deg: number): Vec3 => {
  const [c, s] = [Math.cos(deg * DEG), Math.sin(deg * DEG)];
  return [c * x - s * y, s * x + c * y, z];
};
/** Half a turn about x: what turning the piece over does. */
const turnOver = ([x, y, z]: Vec3): Vec3 => [x, -y, -z];

/**
 * Where a facet's normal points when the wheel shows stop k: the piece is mounted with the wheel's zero mark at azimuth
 * `zeroDeg` towards the lap (+x here), and each stop turns the dop on by 360 / N against the count.
 */
function atTheLap(normal: Vec3, side: Side, zeroDeg: number, stop: number, stops: number): Vec3 {
  const held = side === "front" ? normal : turnOver(normal);
  const mounted = turnZ(held, side === "front" ? -zeroDeg : zeroDeg);
  return turnZ(mounted, (-360 * stop) / stops);
}

/** A pattern with a hand: single facets at unequal turns, front and back. */
const handed = (setUps: Plan["rig"]["setUps"]): Plan =>
  plan(
    (["front", "back"] as const).flatMap((side) =>
      [0, 15, 60, 131.25].map((startDeg, i) =>
        tier({ id: `${side}${i}`, side, count: 1, startDeg, armAngleDeg: 10 + 10 * i }),
      ),
    ),
    { setUps },
  );

describe("set-ups", () => {
  it.each([
    ["zero marks at 0", undefined],
    ["zero marks at any angle", { front: { zeroDeg: 7.3 }, back: { zeroDeg: 201.9 } }],
  ])("brings every facet of a handed pattern down to the lap, front and back, with %s", (_, setUps) => {
    const solved = solvePlan(handed(setUps));
    solved.facets.forEach((facet, k) => {
      const { side, armAngleDeg } = solved.plan.tiers[facet.tierIndex];
      const read = readStop(solved.plan, facet);
      const zero = setUps?.[side]?.zeroDeg ?? 0;
      const [x, y, z] = atTheLap(solved.planes[k].n, side, zero, read.stop!, 96);
      expect(x).toBeCloseTo(Math.cos(armAngleDeg * DEG), 9);
      expect(y).toBeCloseTo(0, 9);
      // The free pole is up on both sides.
      expect(z).toBeCloseTo(Math.sin(armAngleDeg * DEG), 9);
    });
  });

  it("counts against the azimuth behind, as worked by hand", () => {
    const solved = solvePlan(handed(undefined));
    const stops = solved.facets.map((facet) => readStop(solved.plan, facet).stop);
    // 15 degrees of 96 stops is stop 4; behind it is 96 - 4 = 92. 60 degrees: 16 and 80. 131.25: 35 and 61.
    expect(stops).toEqual([0, 4, 16, 35, 0, 92, 80, 61]);
  });

  it("lets a stated direction stand, and reverses the front's for the back", () => {
    expect(directionOf(handed({ front: { direction: "against" } }), "back")).toBe("with");
    expect(directionOf(handed({ back: { direction: "with" } }), "back")).toBe("with");
    expect(directionOf(handed(undefined), "back")).toBe("against");
  });

  it("writes the zero stop's own label and a protractor's degrees", () => {
    const labelled = solvePlan(handed({ front: { zeroLabel: "96" } }));
    expect(readStop(labelled.plan, labelled.facets[0]).label).toBe("96");
    expect(readStop(labelled.plan, labelled.facets[1]).label).toBe("4");
    const free = solvePlan({ ...handed(undefined), rig: { wheelStops: null } });
    expect(readStop(free.plan, free.facets[7])).toEqual({ stop: null, label: "228.8", turnDeg: 228.75 });
  });

  it("turns a measured offset along the skin into degrees", () => {
    // 0.5 mm on a ring of 15 cos 60 = 7.5 mm: 0.5 / 7.5 rad = 3.8197 degrees.
    expect(offsetTurn(0.5, 15, 60)).toBeCloseTo(3.8197, 4);
    expect(offsetTurn(0.5, 15, 90)).toBeNull();
  });

  it("re-solves the back after a trial facet: stops follow the offset, what is left stays known", () => {
    const before = handed(undefined);
    const after = solvePlan(afterTrialFacet(before, 5));
    const back = after.facets.filter((f) => after.plan.tiers[f.tierIndex].side === "back");
    // 5 degrees are one stop of 3.75 and 1.25 more.
    expect(offsetLeft(before, 5)).toBeCloseTo(1.25, 9);
    for (const [i, facet] of back.entries()) {
      const asked = [0, 15, 60, 131.25][i];
      expect(facet.azimuthDeg).toBeCloseTo(asked + 1.25, 9);
    }
    // The front stays where it was.
    expect(after.facets[1].azimuthDeg).toBeCloseTo(15, 9);
    expect(readStop(after.plan, back[1]).stop).toBe(93);
  });

  it("says where the wheel stands when the ink mark is up, on both sides and between stops", () => {
    // 96 stops of 3.75 degrees. Mark at 90: stop 24 in front. Behind, counted the other way from a zero at 7.5: 277.5 / 3.75 = stop 74.
    const own = plan([tier()], { setUps: { back: { zeroDeg: 7.5, zeroLabel: "96" } } });
    const marked = (inkMarkDeg: number): Plan => ({ ...own, piece: { ...own.piece, inkMarkDeg } });
    expect(readMark(marked(90), "front")).toEqual({ label: "24", isStop: true, pastDeg: 0 });
    expect(readMark(marked(90), "back")).toEqual({ label: "74", isStop: true, pastDeg: 0 });
    expect(readMark(marked(7.5), "back").label).toBe("96");
    expect(readMark(marked(91), "front").pastDeg).toBeCloseTo(1, 9);
    expect(readMark(marked(91), "back").pastDeg).toBeCloseTo(-1, 9);
    expect(readMark(marked(-1), "front")).toMatchObject({ label: "0", pastDeg: -1 });
    expect(readMark({ ...own, rig: { wheelStops: null } }, "back")).toMatchObject({
      label: "0.0",
      isStop: false,
    });
  });

  it("says how uneven a wheel makes a tier, as worked by hand", () => {
    const solved = solvePlan(plan([tier({ count: 10, armAngleDeg: 0 })]));
    const fit = wheelFit(solved, 0);
    // 96 / 10 = 9.6 stops apart: the worst is 0.4 of a stop of 3.75 degrees = 1.5 degrees off. Steps are 9 or 10 stops; one of 9
    // is 0.6 of a stop = 2.25 degrees too short, so its gap is 15 mm x 2.25 deg = 0.5890 mm narrower.
    expect(fit.divides).toBe(false);
    expect(fit.errorDeg).toBeCloseTo(1.5, 9);
    expect(fit.gapMm).toBeCloseTo(0.589, 4);
    expect(fit.evenCounts).toContain(12);
    const said = benchOf(solved).findings.find((finding) => finding.code === "uneven");
    expect(said?.data).toMatchObject({ stops: 96, count: 10, errorDeg: fit.errorDeg, gapMm: fit.gapMm });
    expect(wheelFit(solvePlan(plan([tier()])), 0).errorDeg).toBe(0);
  });
});

describe("one name for a stop", () => {
  const zeroed = (own: Partial<Tier> = {}): Plan =>
    plan([tier({ side: "back", armAngleDeg: 20, count: 12, startDeg: 0, ...own })]);

  it("is the bench's label of the first facet, whatever zero, direction and start, the least of the ring", () => {
    for (const zeroDeg of [0, 7, 63.2, -118, 180])
      for (const direction of ["with", "against"] as const)
        for (const side of ["front", "back"] as const)
          for (const count of [5, 12, 16])
            for (const startDeg of [0, 7.5, 22.5, 23, -40, 359]) {
              const base = plan([tier({ side, count, startDeg })], {
                setUps: { [side]: { zeroDeg, direction, zeroLabel: "96" } },
              });
              const solved = solvePlan(base);
              const labels = solved.facets.map((facet) => readStop(base, facet).label);
              const told = startLabel(base, base.tiers[0], startDeg)!;
              expect(labels).toContain(told);
              // Of an even ring no facet stands at a lower number.
              const stops = solved.facets.map((facet) => readStop(base, facet).stop!);
              if (96 % count === 0) expect(startStop(base, base.tiers[0], startDeg)).toBe(Math.min(...stops));
              else expect(told).toBe(labels[0]);
            }
  });

  it("counts stop 6 of 96 with 16 facets as stop 0", () => {
    const ring = plan([tier({ count: 16, startDeg: 22.5 })]);
    expect(startStop(ring, ring.tiers[0], 22.5)).toBe(0);
    expect(startAt(ring, ring.tiers[0], 6)).toBe(0);
    expect(startAt(ring, ring.tiers[0], 7.5)).toBeCloseTo(1.5 * 3.75, 9);
  });

  it("takes a start typed as engraved to the facet that reads so", () => {
    for (const direction of ["with", "against"] as const)
      for (const reading of [0, 1, 5, 7]) {
        const base = plan([tier({ side: "back", count: 12 })], {
          setUps: { back: { zeroDeg: 5.3, direction } },
        });
        const startDeg = startAt(base, base.tiers[0], reading);
        const solved = solvePlan({ ...base, tiers: [{ ...base.tiers[0], startDeg }] });
        expect(readStop(solved.plan, solved.facets[0]).stop).toBe(reading);
      }
  });

  it("stays one after the trial facet of the second side", () => {
    const after = afterTrialFacet(zeroed(), 8);
    const solved = solvePlan(after);
    const stops = solved.facets.map((facet) => readStop(after, facet).stop!);
    expect(startStop(after, after.tiers[0], 0)).toBe(Math.min(...stops));
  });

  it("takes off with a fine turn what whole stops leave, where the rig has one that reaches", () => {
    const trimmed = (indexTrimDeg: number): Plan => {
      const own = zeroed();
      return { ...own, rig: { ...own.rig, indexTrimDeg } };
    };
    // 8 degrees are two stops of 3.75 and half a degree more.
    expect(offsetLeft(zeroed(), 8)).toBeCloseTo(0.5, 9);
    expect(canTrim(zeroed(), 0.5)).toBe(false);
    expect(canTrim(trimmed(0.4), 0.5)).toBe(false);
    expect(canTrim(trimmed(0.5), -0.5)).toBe(true);
    const exact = solvePlan(zeroed()).facets.map((facet) => facet.azimuthDeg);
    const fine = solvePlan(afterFineTurn(trimmed(1), 8));
    fine.facets.forEach((facet, i) => {
      const off = Math.abs(facet.azimuthDeg - exact[i]);
      expect(Math.min(off, 360 - off)).toBeLessThan(1e-9);
    });
    // The wheel reads two stops further all the same.
    expect(readStop(fine.plan, fine.facets[0]).stop).toBe(2);
  });
});

describe("a ring that starts farther on", () => {
  const wheel = { wheelStops: 96 };
  const ringAt = (side: Side, startDeg: number): Plan =>
    plan(
      [
        tier({
          id: "low",
          name: "low",
          side,
          armAngleDeg: 5,
          count: 8,
          startDeg: 0,
          depth: { rule: "touch" },
        }),
        tier({
          id: "high",
          name: "high",
          side,
          armAngleDeg: 32,
          count: 8,
          startDeg,
          depth: { rule: "edge", mm: 3 },
        }),
      ],
      wheel,
    );

  it.each([
    ["front", 150],
    ["back", 150],
    ["front", 352.5],
    ["back", 307.5],
  ] as const)(
    "on the %s at %f degrees is listed and ground from its least stop, with the widths that go with it",
    (side, startDeg) => {
      const of = ringAt(side, startDeg);
      // the same ring named by its least stop, whose first facet is the plan's first
      const same = ringAt(side, startAt(of, of.tiers[1], startStop(of, of.tiers[1], startDeg) ?? Number.NaN));
      const [bench, wanted] = [of, same].map((one) => benchOf(solvePlan(one)));
      const [own, least] = [bench, wanted].map(({ tiers }) => tiers[1].facets);
      const stops = own.map(({ read }) => read.stop ?? Number.NaN);
      expect(stops[0]).toBe(Math.min(...stops));
      expect(own[0].facet).not.toBe("high/1");
      expect(stops).toEqual(least.map(({ read }) => read.stop));
      own.forEach(({ stages }, k) => {
        stages.forEach(({ widthWhileGroundMm, removeMm3 }, i) => {
          expect(widthWhileGroundMm).toBeCloseTo(least[k].stages[i].widthWhileGroundMm, 9);
          expect(removeMm3).toBeCloseTo(least[k].stages[i].removeMm3, 9);
        });
      });
      const groundAt = ({ order }: typeof bench) =>
        order[0].steps.flatMap((step) =>
          step.kind === "grind" && step.tier === "high" ? [step.wheelStop] : [],
        );
      expect(groundAt(bench)).toEqual(groundAt(wanted));
      // a program that reads the answer counts as the plan does
      const inPlan = benchOf(solvePlan(of), undefined, "plan").tiers[1].facets;
      expect(inPlan.map(({ facet }) => facet)).toEqual(own.map((_, k) => `high/${k + 1}`));
    },
  );
});
