/** What a person held, threw away and wished for, and what hangs, is there again after the page was loaded anew. */
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { FEATURES, type Mark } from "../../../src/core/ideas/taste.ts";
import type { IdeaWish } from "../../../src/core/ideas/wish.ts";
import type { Plan, Tier } from "../../../src/core/plan/document.ts";
import type { Studio } from "../../../src/ui/studio.ts";

const tier = (count: number): Tier => ({
  id: "a",
  name: "Ring 1",
  side: "front",
  armAngleDeg: 40,
  count,
  startDeg: 0,
  depth: { rule: "touch" },
});
const idea = (count: number, diameterMm = 30): Plan => ({
  format: "glintwright-plan",
  version: 1,
  name: `Idea ${count}`,
  piece: { diameterMm, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [tier(count)],
});

/** The part of a browser's localStorage that is used; `room` is how many characters it takes. */
function shelf(room = Number.POSITIVE_INFINITY) {
  const lines = new Map<string, string>();
  return {
    lines,
    getItem: (key: string) => lines.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (text.length > room) throw new DOMException("full", "QuotaExceededError");
      lines.set(key, text);
    },
    removeItem: (key: string) => lines.delete(key),
  };
}

/** A page that was just loaded, with the stores of its studio; another on the same page has its own. */
async function load() {
  vi.resetModules();
  const [held, wall, draft, lines, taste, { createStudio }] = await Promise.all([
    import("../../../src/ui/ideas/held-store.ts"),
    import("../../../src/ui/ideas/wall-store.ts"),
    import("../../../src/ui/ideas/draft.ts"),
    import("../../../src/ui/ideas/wall-shelf.ts"),
    import("../../../src/ui/ideas/taste-store.ts"),
    import("../../../src/ui/studio.ts"),
  ]);
  const storesOf = (studio: Studio) => ({
    holding: held.holdingOf(studio),
    hold: (plan: Plan) => held.hold(studio, plan),
    letGo: (plan: Plan) => held.letGo(studio, plan),
    throwAway: (plan: Plan) => held.throwAway(studio, plan),
    bringBack: () => held.bringBack(studio),
    wall: wall.wallOf(studio),
    draft: draft.draftOf(studio),
    marks: taste.marksOf(studio),
    learn: (mark: Mark) => taste.learn(studio, mark),
    forget: () => taste.forget(studio),
    unkept: lines.unkept,
  });
  const other = () => storesOf(createStudio({ plan: idea(8) }));
  return { ...other(), other };
}

let kept = shelf();
beforeEach(() => {
  kept = shelf();
  vi.stubGlobal("localStorage", kept);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe("after a reload", () => {
  it("what is held and what was thrown away is there, in its order, whatever piece it is of", async () => {
    const first = await load();
    first.hold(idea(8));
    first.hold(idea(12, 40));
    first.hold(idea(6));
    first.throwAway(idea(6));
    first.hold(idea(8));
    const second = await load();
    expect(second.holding.getState()).toEqual({
      held: [idea(8), idea(12, 40)],
      thrown: [expect.any(String)],
    });
    second.letGo({ ...idea(8), name: "by another name" });
    second.bringBack();
    expect((await load()).holding.getState()).toEqual({ held: [idea(12, 40)], thrown: [] });
  });

  it("what hangs is there, and a search that was under way has stopped", async () => {
    const edges = { across: [0, 1, 2, 3, 4, 5], up: [0, 1, 2, 3, 4] };
    const spread = { across: "minutes", up: "back", edges } as const;
    const hung = [{ cell: [1, 2], plan: idea(8), measures: null } as const];
    const first = await load();
    const gaveWay = { sides: "front", mostTiers: [5, 7] } as const;
    first.wall.setState({
      state: "trying",
      hung,
      spread,
      tried: 48,
      meeting: 9,
      gaveWay,
      seed: 2,
      before: 100,
    });
    first.wall.setState({ state: "stopped" });
    const second = await load();
    expect(second.wall.getState()).toEqual({
      state: "stopped",
      hung,
      spread,
      tried: 48,
      meeting: 9,
      gaveWay,
      inTheWay: [],
      seed: 2,
      before: 100,
    });
  });

  it("the wish is there", async () => {
    const first = await load();
    first.draft.setState({ mostHours: 3, want: "sparkle", also: "inside", up: "images" });
    const { mostHours, want, also, up, sides } = (await load()).draft.getState();
    expect([mostHours, want, also, up, sides]).toEqual([3, "sparkle", "inside", "images", "both"]);
  });

  it("a wish that a file brought is there whole, and one that can't be read any more is not", async () => {
    const wish: IdeaWish = {
      format: "glintwright-wish",
      version: 1,
      piece: { diameterMm: 25, glass: "soda-lime" },
      rig: { wheelStops: 64 },
      sides: "front",
      tiers: [1, 2],
      facets: [5, 30],
      want: { minutes: -1 },
      across: "tiers",
      up: "skinShare",
    };
    const first = await load();
    first.draft.setState({ mostHours: 3, given: { name: "quick.json", wish } });
    expect((await load()).draft.getState().given).toEqual({ name: "quick.json", wish });
    for (const bad of [{ ...wish, tiers: [2, 1] }, { ...wish, up: "beauty" }, null]) {
      kept.lines.set(
        "glintwright-ideas-wish",
        JSON.stringify({ mostHours: 3, given: { name: "x", wish: bad } }),
      );
      expect((await load()).draft.getState()).toMatchObject({ mostHours: 3, given: null });
    }
  });
});

describe("lines that can't be read", () => {
  const bad = ["", "{", "7", "[]", '"x"', '{"cells":[],"plans":7}'];
  it.each(bad)("%s are as if nothing had been kept", async (text) => {
    const untouched = await load();
    for (const name of ["wish", "wall", "held"]) kept.lines.set(`glintwright-ideas-${name}`, text);
    const page = await load();
    expect(page.holding.getState()).toEqual({ held: [], thrown: [] });
    expect(page.wall.getState()).toEqual(untouched.wall.getState());
    expect(page.draft.getState()).toEqual(untouched.draft.getState());
  });

  it("cost one idea or one word of the wish, not all", async () => {
    const first = await load();
    first.hold(idea(8));
    first.hold(idea(12));
    const line = JSON.parse(kept.getItem("glintwright-ideas-held") ?? "");
    line.plans[0].tiers[0].count = -1;
    kept.setItem("glintwright-ideas-held", JSON.stringify(line));
    const wish = { mostHours: 0, mostTiers: 7, want: "gold", also: "back", across: "images", up: "images" };
    kept.setItem("glintwright-ideas-wish", JSON.stringify(wish));
    const page = await load();
    expect(page.holding.getState().held).toEqual([idea(12)]);
    const { mostHours, mostTiers, want, also, across, up } = page.draft.getState();
    expect([mostHours, mostTiers, want, also, across, up]).toEqual([
      8,
      7,
      "back",
      "nothing",
      "images",
      "minutes",
    ]);
  });
});

describe("a browser that keeps nothing", () => {
  it.each([
    ["without room", () => shelf(20)],
    ["without a shelf", () => undefined],
  ])("%s still holds, and says that it isn't kept", async (_how, make) => {
    vi.stubGlobal("localStorage", make());
    const page = await load();
    page.hold(idea(8));
    expect(page.holding.getState().held).toEqual([idea(8)]);
    expect(page.unkept.getState().lines.has("held")).toBe(true);
  });
  it("says so no more once there is room", async () => {
    const small = shelf(20);
    vi.stubGlobal("localStorage", small);
    const page = await load();
    page.hold(idea(8));
    small.setItem = kept.setItem;
    page.hold(idea(12));
    expect(page.unkept.getState().lines.has("held")).toBe(false);
  });
});

describe("two studios on one page", () => {
  it("have a wall and a wish each, and begin with what was kept", async () => {
    (await load()).draft.setState({ mostHours: 3 });
    const one = await load();
    const two = one.other();
    one.wall.setState({ state: "stopped", tried: 48 });
    one.draft.setState({ want: "sparkle" });
    expect(two.wall.getState()).toMatchObject({ state: "new", tried: 0 });
    expect(two.draft.getState()).toMatchObject({ mostHours: 3, want: "back" });
  });

  it("hold the same: what one holds or throws away is so in the other at once, and neither writes over it", async () => {
    const one = await load();
    const two = one.other();
    one.hold(idea(8));
    two.hold(idea(12));
    two.throwAway(idea(6));
    for (const { holding } of [one, two, await load()])
      expect(holding.getState()).toEqual({ held: [idea(8), idea(12)], thrown: [expect.any(String)] });
  });

  it("learn on what the other has learned, and forget what it has forgotten", async () => {
    const mark = (isLiked: boolean): Mark => ({ features: Array(FEATURES).fill(0), isLiked });
    const one = await load();
    const two = one.other();
    one.learn(mark(true));
    two.learn(mark(false));
    expect((await load()).marks.getState().list).toEqual([mark(true), mark(false)]);
    one.forget();
    two.learn(mark(true));
    expect((await load()).marks.getState().list).toEqual([mark(true)]);
  });
});
