/** How a piece lies on a table on Look, and that the eye goes round that and never below it. */
import { describe, expect, it } from "vitest";
import { dot, scale } from "../../../src/core/geometry/vec.ts";
import { RESTS, restOnFacet } from "../../../src/core/optics/rest.ts";
import { tableFrame } from "../../../src/core/optics/tabletop.ts";
import type { Plan } from "../../../src/core/plan/document.ts";
import { solid, solved } from "../../../src/state/derived.ts";
import { FIRST_EXAMPLE } from "../../../src/ui/first-example.ts";
import { downOf, flatOf, ON_TABLE, restood, standOf } from "../../../src/ui/look/lying.ts";
import { eyeFrame, HOME, LOOKS, turned } from "../../../src/ui/piece/camera.ts";

const plan: Plan = FIRST_EXAMPLE;
const uncut: Plan = { ...plan, tiers: [] };

describe("a piece on a table", () => {
  it("lies on the largest of the facets that bear it, on its side where none does", () => {
    const n = flatOf(plan);
    expect(n).not.toBeNull();
    const { facets } = solid(plan);
    const planes = solved(plan).planes;
    const [lain] = facets.filter((_, i) => n && dot(planes[i].n, n) > 1 - 1e-12);
    expect(lain.area).toBeGreaterThan(0);
    expect(flatOf(uncut)).toBeNull();
    expect(downOf(uncut, "flat")).toEqual(RESTS.side.down);
  });

  it("is seen the same way in the hand and on the table, where the table lets it", () => {
    for (const down of [RESTS.side.down, RESTS.back.down, restOnFacet([0.6, 0, 0.8]).down]) {
      const stand = tableFrame(scale(down, -1));
      const above = { ...ON_TABLE, stand };
      const free = restood(above, undefined);
      expect(free.stand).toBeUndefined();
      expect(dot(eyeFrame(free).out, eyeFrame(above).out)).toBeCloseTo(1, 12);
      expect(dot(eyeFrame(restood(free, stand)).out, eyeFrame(above).out)).toBeCloseTo(1, 12);
      // What is up stands up in the picture.
      expect(dot(eyeFrame(above).right, stand.up)).toBeCloseTo(0, 12);
      expect(dot(eyeFrame(above).up, stand.up)).toBeGreaterThan(0);
    }
  });

  it("is never seen from below the table, however it is turned", () => {
    for (const rest of ["side", "flat", "back"] as const) {
      const stand = standOf(plan, { table: "slate", rest });
      if (!stand) throw new Error("no table");
      for (const view of [
        HOME,
        LOOKS.front,
        LOOKS.back,
        LOOKS.side,
        turned({ ...ON_TABLE, stand }, 20, -300),
      ])
        expect(dot(eyeFrame(restood(view, stand)).out, stand.up)).toBeGreaterThan(0.1);
    }
    expect(standOf(plan, { table: "none", rest: "side" })).toBeUndefined();
  });

  it("keeps its stand through an edit that leaves it lying so", () => {
    const again: Plan = { ...plan, name: "another" };
    expect(standOf(again, { table: "oak", rest: "flat" })).toBe(
      standOf(plan, { table: "oak", rest: "flat" }),
    );
  });
});
