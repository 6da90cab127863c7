/** Dragging on the piece: a pull along the shift of one degree or millimetre means that degree or millimetre. */
import { describe, expect, it } from "vitest";
import { solvePlan } from "../../../src/core/plan/solve.ts";
import { FIRST_EXAMPLE } from "../../../src/ui/examples.ts";
import { HOME } from "../../../src/ui/piece/camera.ts";
import { facetShifts, pieceDrag } from "../../../src/ui/piece/piece-drag.ts";

const solved = solvePlan(FIRST_EXAMPLE);
const facet = solved.facets.findIndex(({ id }) => id === "shoulder/1");
const SHORT = 600;
/** Looking at the facet from a little below, so that all of start and angle shows. */
const view = { ...HOME, azimuthDeg: solved.facets[facet].azimuthDeg, elevationDeg: 10 };

describe("a pull on a facet", () => {
  const shifts = facetShifts(view, SHORT, solved, facet);
  const drag = pieceDrag(view, SHORT, solved, facet);

  it.each(["start", "angle"] as const)("along the shift of its %s means that and as much", (value) => {
    const [x, y] = shifts[value];
    const to = [100 + 5 * x, 100 + 5 * y] as const;
    expect(drag.meant("shoulder", [100, 100], to)).toBe(value);
    expect(drag.delta(value, "shoulder", [100, 100], to)).toBeCloseTo(5, 9);
  });
  it("means nothing before it is a drag", () => {
    expect(drag.meant("shoulder", [100, 100], [101, 101])).toBeNull();
  });
  it("goes to the right for a larger start and up for a larger angle, seen from outside", () => {
    expect(shifts.start[0]).toBeGreaterThan(0);
    expect(shifts.angle[1]).toBeLessThan(0);
  });
  it("means depth only where the facet is seen from the side", () => {
    const aside = { ...view, azimuthDeg: view.azimuthDeg - 80, elevationDeg: 0 };
    const [x, y] = facetShifts(aside, SHORT, solved, facet).depth;
    const to = [100 + 2 * x, 100 + 2 * y] as const;
    expect(pieceDrag(aside, SHORT, solved, facet).meant("shoulder", [100, 100], to)).toBe("depth");
    expect(drag.meant("shoulder", [100, 100], [100 + shifts.depth[0] * 3, 130])).not.toBe("depth");
  });
});
