import { describe, expect, it } from "vitest";
import type { Snap } from "../../../../src/core/plan/snaps.ts";
import {
  meantBy,
  restOf,
  roundTo,
  travelBy,
  travelFrom,
  turned,
} from "../../../../src/ui/plan/drag/drag-maths.ts";

const plain = { free: false, fine: false };
const touch: Snap = {
  name: { kind: "rule", rule: { rule: "touch" } },
  value: 1.234,
  depth: { rule: "touch" },
};

describe("a drag", () => {
  it("rests exactly at a snap within reach, and leaves it again without a jump", () => {
    let travel = travelBy(travelFrom("depth", 1, 15), 0.2, plain);
    expect(restOf(travel, [touch], 0.1, plain)).toEqual({ value: 1.234, snap: touch });
    travel = travelBy(travel, 0.2, plain);
    expect(restOf(travel, [touch], 0.1, plain)).toEqual({ value: 1.4, snap: null });
  });

  it("passes snaps when it is free", () => {
    const travel = travelBy(travelFrom("depth", 1, 15), 0.234, plain);
    expect(restOf(travel, [touch], 0.1, { free: true, fine: false })).toEqual({ value: 1.25, snap: null });
  });

  it("takes the nearer of two snaps", () => {
    const other: Snap = {
      name: { kind: "rule", rule: { rule: "close", to: "a" } },
      value: 1.3,
      depth: { rule: "close", to: "a" },
    };
    const travel = travelFrom("depth", 1.28, 15);
    expect(restOf(travel, [touch, other], 0.1, plain).snap).toBe(other);
  });

  it("moves a tenth of the way in finer steps when fine", () => {
    const fine = { free: true, fine: true };
    const travel = travelBy(travelFrom("angle", 30, 15), 4.2, fine);
    expect(restOf(travel, [], 0, fine).value).toBe(30.4);
  });

  it("does not jump when it turns fine in the middle", () => {
    const travel = travelBy(travelBy(travelFrom("angle", 30, 15), 5, plain), 5, { free: false, fine: true });
    expect(travel.at).toBeCloseTo(35.5, 12);
  });

  it("keeps angles within 0 and 90, depths within the radius, and lets starts go round", () => {
    expect(travelBy(travelFrom("angle", 80, 15), 40, plain).at).toBe(90);
    expect(travelBy(travelFrom("angle", 3, 15), -40, plain).at).toBe(0);
    expect(travelBy(travelFrom("depth", 1, 15), 40, plain).at).toBe(15);
    expect(turned(travelBy(travelFrom("start", 350, 15), 20, plain).at)).toBe(10);
    expect(turned(-30)).toBe(330);
  });

  it("rounds without the dust of binary fractions", () => {
    expect(roundTo(0.151, 0.05)).toBe(0.15);
    expect(roundTo(36.4999, 0.1)).toBe(36.5);
  });

  it("takes its meaning from the first direction, and none before four pixels", () => {
    expect(meantBy(2, 2, "a", "b")).toBeNull();
    expect(meantBy(6, 2, "a", "b")).toBe("a");
    expect(meantBy(-2, 6, "a", "b")).toBe("b");
  });
});
