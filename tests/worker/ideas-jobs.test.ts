/** How much is still judged and measured once nobody wants it: the one in hand, and none after it. */
import { describe, expect, it } from "vitest";
import type { Candidate } from "../../src/core/ideas/search.ts";
import { type IdeaWish, planOfIdea } from "../../src/core/ideas/wish.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { ideasJobs } from "../../src/worker/ideas-jobs.ts";

const wish: IdeaWish = {
  format: "glintwright-wish",
  version: 1,
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  sides: "front",
  tiers: [1, 2],
  facets: [1, 30],
  want: { skinShare: 1 },
  across: "facets",
  up: "skinShare",
};
const ring = {
  id: "a",
  name: "",
  side: "front",
  armAngleDeg: 30,
  count: 8,
  startDeg: 0,
  depth: { rule: "touch" },
} as const;
const ask = { edges: null, best: [] };

/** Eight things that tell when they are looked at, and a ticket that says stop once so many were. */
function stoppedAfter<T extends object>(many: number, make: () => T) {
  let seen = 0;
  const told = new Set<object>();
  const list = Array.from({ length: 8 }, () => {
    const own = make();
    return new Proxy(own, {
      get: (target, key, receiver) => {
        if (!told.has(own)) seen++;
        told.add(own);
        return Reflect.get(target, key, receiver);
      },
    });
  });
  const listen = async () => {
    if (seen >= many) throw new Error("stopped");
  };
  return { list, ticket: { report: listen, rest: listen, found: async () => {} }, seen: () => seen };
}

describe("a search that is stopped", () => {
  it.each([1, 3])("judges no candidate more once it is told, after %i", async (many) => {
    const { list, ticket, seen } = stoppedAfter(many, (): Candidate => ({ tiers: [ring] }));
    await expect(ideasJobs.judge({ wish, candidates: list, ask }, ticket)).rejects.toThrow("stopped");
    expect(seen()).toBe(many);
  });

  it.each([1, 2])("measures no plan more once it is told, after %i", async (many) => {
    const { list, ticket, seen } = stoppedAfter(many, (): Plan => planOfIdea(wish, [], ""));
    await expect(ideasJobs.measure(list, ticket)).rejects.toThrow("stopped");
    expect(seen()).toBe(many);
  });

  it("listens after each, however little time has passed since it last did", async () => {
    let rests = 0;
    const ticket = {
      rest: async () => void rests++,
      report: () => Promise.reject(new Error("a report may pause for longer than a candidate takes")),
      found: async () => {},
    };
    const verdicts = await ideasJobs.judge(
      { wish, candidates: [1, 2, 3].map(() => ({ tiers: [ring] })), ask },
      ticket,
    );
    expect([verdicts.length, rests]).toEqual([3, 3]);
  });
});
