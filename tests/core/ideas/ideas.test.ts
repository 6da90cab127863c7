import { describe, expect, it } from "vitest";
import { findIdeas } from "../../../src/cli/ideas-threads.ts";
import { answerOf, leftToMeasure, measureAll } from "../../../src/core/ideas/answer.ts";
import { createJudge } from "../../../src/core/ideas/judge.ts";
import { type Batch, Search } from "../../../src/core/ideas/search.ts";
import { type IdeaWish, planOfIdea } from "../../../src/core/ideas/wish.ts";
import { parseWish, wishFromData } from "../../../src/core/ideas/wish-file.ts";
import { measurePlan } from "../../../src/core/measure/measures.ts";
import type { Tier } from "../../../src/core/plan/document.ts";
import { faultsOf } from "./judged-ideas.ts";
import { wishOf } from "./wishes.ts";

/** A whole search in this thread. @param order which of the waiting batches is judged next */
function searched(wish: IdeaWish, tries: number, order: (waiting: number) => number = () => 0) {
  const search = new Search(wish, { tries, seed: 7 });
  const judge = createJudge(wish);
  const waiting: Batch[] = [];
  while (!search.isDone) {
    waiting.push(...search.pending.splice(0));
    const [batch] = waiting.splice(order(waiting.length), 1);
    search.take(
      batch.index,
      batch.candidates.map(({ tiers }) => judge(tiers, batch.ask)),
    );
  }
  return answerOf(wish, search, measureAll(leftToMeasure(wish, search)), 0);
}

describe("ideas", () => {
  const seeds = Array.from({ length: 8 }, (_, k) => k + 1);
  let ideasSeen = 0;
  it.each(seeds)("of wish %i meet by brute force, keep its limits and stand in their cells", (seed) => {
    const wish = wishOf(seed);
    const answer = searched(wish, 48);
    expect(answer.tried).toBe(48);
    expect(answer.meeting).toBeGreaterThanOrEqual(answer.measured);
    ideasSeen += answer.ideas.length;
    expect(faultsOf(wish, answer)).toEqual([]);
  });

  it("are found for most wishes", () => {
    expect(ideasSeen).toBeGreaterThan(15);
  });

  it("are the same whichever batch is judged first", () => {
    const wish = wishOf(3);
    const inOrder = searched(wish, 150);
    expect(searched(wish, 150, (waiting) => waiting - 1)).toEqual(inOrder);
    expect(inOrder.ideas.length).toBeGreaterThan(2);
  });

  it("are the same for one thread and for two", async () => {
    const wish = wishOf(5);
    const [one, two] = [
      await findIdeas(wish, { tries: 40, seed: 2 }, 1),
      await findIdeas(wish, { tries: 40, seed: 2 }, 2),
    ];
    expect({ ...two, seconds: 0 }).toEqual({ ...one, seconds: 0 });
  });
});

describe("the wall", () => {
  const wish: IdeaWish = {
    format: "glintwright-wish",
    version: 1,
    piece: { diameterMm: 30, glass: "borosilicate" },
    rig: { wheelStops: 96 },
    sides: "front",
    tiers: [1, 3],
    facets: [3, 30],
    want: { back: 1 },
    across: "back",
    up: "facets",
  };

  it("is divided between the 5th and the 95th percentile of what the first 200 that meet are measured at", () => {
    const search = new Search(wish, { tries: 500, seed: 7 });
    const judge = createJudge(wish);
    const met: { tiers: readonly Tier[]; back: number }[] = [];
    while (met.length < 200)
      for (const { index, candidates, ask } of search.pending.splice(0)) {
        const verdicts = candidates.map(({ tiers }) => judge(tiers, ask));
        candidates.forEach(({ tiers }, i) => {
          if (verdicts[i].meets) met.push({ tiers, back: verdicts[i].across ?? Number.NaN });
        });
        search.take(index, verdicts);
      }
    const first = met.slice(0, 200);
    for (const { tiers, back } of first.filter((_, i) => i % 20 === 0))
      expect(back).toBe(measurePlan(planOfIdea(wish, tiers, "")).back);
    const sorted = first.map(({ back }) => back).sort((a, b) => a - b);
    // of 200 these lie at places 9.95 and 189.05, counted from 0
    const low = sorted[9] + 0.95 * (sorted[10] - sorted[9]);
    const high = sorted[189] + 0.05 * (sorted[190] - sorted[189]);
    const { across } = search.wall;
    for (const k of [1, 2, 3, 4]) expect(across[k]).toBeCloseTo(low + ((high - low) * k) / 5, 12);
  });
});

describe("a wish that nothing meets", () => {
  const wish: IdeaWish = {
    ...wishOf(1),
    sides: "front",
    tiers: [1, 3],
    facets: [8, 40],
    rig: { wheelStops: 96 },
  };
  const bare: IdeaWish = { ...wish, keep: [], limits: {} };
  const first = (own: Partial<IdeaWish>) => {
    const { ideas, inTheWay } = searched({ ...bare, ...own }, 24);
    expect(ideas).toEqual([]);
    return inTheWay[0];
  };
  it("names the limit in the way", () => {
    expect(first({ limits: { minutes: [0, 20] } })).toEqual({ limit: "minutes", share: 1 });
    expect(first({ limits: { minutes: [0, 900], inside: [0.99, 1] } })).toEqual({
      limit: "inside",
      share: 1,
    });
    expect(first({ facets: [500, 600] })).toEqual({ limit: "facets", share: 1 });
    expect(first({ rig: { wheelStops: 97 } })).toEqual({ limit: "facets", share: 1 });
    expect(first({ limits: { facets: [50, 60] } })).toEqual({ limit: "facets", share: 1 });
    expect(first({ limits: { tiers: [4, 9] } })).toEqual({ limit: "tiers", share: 1 });
  });

  it("says that kept tiers can't be met where one of them can't be cut", () => {
    const depth = { rule: "edge", mm: 200 } as const;
    const keep: Tier[] = [
      { id: "k", name: "k", side: "front", armAngleDeg: 30, count: 8, startDeg: 0, depth },
    ];
    expect(first({ keep })).toEqual({ limit: "meets", share: 1 });
  });
});

describe("a wish as a file", () => {
  const data = (own: object) => JSON.parse(JSON.stringify({ ...wishOf(1), ...own }));
  it.each([
    [{ format: "glintwright-plan" }, "format"],
    [{ version: 2 }, "version"],
    [{ sides: "back" }, "sides"],
    [{ tiers: [0, 3] }, "tiers[0]"],
    [{ tiers: [4, 3] }, "tiers"],
    [{ facets: [1] }, "facets"],
    [{ limits: { minutes: [0, "x"] } }, "limits.minutes[1]"],
    [{ limits: { hours: [0, 1] } }, "limits.hours"],
    [{ want: { back: 2 } }, "want.back"],
    [{ want: { sparkel: 1 } }, "want.sparkel"],
    [{ across: "meets" }, "across"],
    [{ piece: { diameterMm: 1, glass: "borosilicate" } }, "piece.diameterMm"],
    [
      {
        keep: [
          {
            ...wishOf(1).keep?.[0],
            id: "a",
            name: "",
            side: "front",
            armAngleDeg: 9,
            count: 8,
            startDeg: 0,
            depth: { rule: "close", to: "z" },
          },
        ],
      },
      "keep[0].depth.to",
    ],
  ])("%j is refused with the path %s", (own, path) => {
    expect(() => wishFromData(data(own))).toThrow(`${path}: `);
  });

  it("is read, and what is not known is named", () => {
    const { wish, unknown } = parseWish(JSON.stringify(data({ mood: "calm" })));
    expect(unknown).toEqual(["mood"]);
    expect(wish.across).toBe(wishOf(1).across);
  });
});
