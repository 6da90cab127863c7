/** Dragging in the profile and on the skin: by mouse, touch and keys the same as typing; snaps, Escape, undo, one selection. */
import type { CDPSession, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Plan, Tier } from "../../src/core/plan/document.ts";
import type { DrawingBench } from "./drawing-page.tsx";
import { type OpenPage, openPage } from "./support.ts";

declare global {
  interface Window {
    bench: DrawingBench;
  }
}

let open: OpenPage;
let page: Page;

const ring = (id: string, armAngleDeg: number, startDeg: number, depth: Tier["depth"]): Tier => ({
  id,
  name: id,
  side: "front",
  armAngleDeg,
  count: 8,
  startDeg,
  depth,
});
const PLAN: Plan = {
  format: "glintwright-plan",
  version: 1,
  name: "drag",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [ring("low", 10, 0, { rule: "touch" }), ring("high", 45, 22.5, { rule: "depth", mm: 0.3 })],
};

beforeAll(async () => {
  open = await openPage("tests/browser/drawing-page.html", { width: 1440, height: 900 });
  page = open.page;
  await page.waitForSelector(".skin svg", { timeout: 200_000 });
  await page.waitForSelector(".profile svg");
}, 300_000);
afterAll(() => open?.close());
beforeEach(async () => {
  await page.evaluate((plan) => window.bench.studio.getState().open({ plan }), PLAN);
  await page.mouse.move(700, 880);
});

const planNow = (): Promise<Plan> => page.evaluate(() => window.bench.studio.getState().plan);
const tierNow = async (id: string): Promise<Tier> => {
  const tier = (await planNow()).tiers.find((t) => t.id === id);
  if (!tier) throw new Error(`no tier ${id}`);
  return tier;
};
const steps = (): Promise<number> => page.evaluate(() => window.bench.studio.getState().history.undo.length);
const depthOf = (id: string): Promise<number> =>
  page.evaluate((tierId) => {
    const plan = window.bench.studio.getState().plan;
    return window.bench.solved(plan).tiers.find((t) => t.tierId === tierId)?.depthMm ?? 0;
  }, id);

type Point = readonly [number, number];
const middleOf = async (selector: string): Promise<Point> => {
  const box = await page.locator(selector).first().boundingBox();
  if (!box) throw new Error(`nothing at ${selector}`);
  return [box.x + box.width / 2, box.y + box.height / 2];
};
const knob = (id: string) => middleOf(`.profile [data-tier="${id}"] .grip-knob`);
/** Centre and radius of the half-section on the page. */
const frame = async (): Promise<{ cx: number; cy: number; radius: number }> => {
  const box = await page.locator(".profile-equator").boundingBox();
  if (!box) throw new Error("the profile has no equator");
  return { cx: box.x, cy: box.y + box.height / 2, radius: box.width };
};
/** A place at the same distance from the centre, turned by some degrees toward the front pole. */
function along({ cx, cy }: { cx: number; cy: number }, [x, y]: Point, deg: number): Point {
  const angle = Math.atan2(cy - y, x - cx) + (deg * Math.PI) / 180;
  const away = Math.hypot(x - cx, y - cy);
  return [cx + away * Math.cos(angle), cy - away * Math.sin(angle)];
}
/** A place nearer to the centre by some pixels. */
function inward({ cx, cy }: { cx: number; cy: number }, [x, y]: Point, px: number): Point {
  const away = Math.hypot(x - cx, y - cy);
  const s = (away - px) / away;
  return [cx + (x - cx) * s, cy + (y - cy) * s];
}

interface Hand {
  down: (at: Point) => Promise<void>;
  move: (at: Point) => Promise<void>;
  up: () => Promise<void>;
}
const mouse: Hand = {
  down: async ([x, y]) => {
    await page.mouse.move(x, y);
    await page.mouse.down();
  },
  move: ([x, y]) => page.mouse.move(x, y),
  up: () => page.mouse.up(),
};
/** A finger through the browser's own input, so that pointer events come as they do on a tablet. */
async function finger(): Promise<Hand> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", at?: Point) =>
    session.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: at ? [{ x: at[0], y: at[1] }] : [],
    });
  return {
    down: async (at) => void (await send("touchStart", at)),
    move: async (at) => void (await send("touchMove", at)),
    up: async () => void (await send("touchEnd")),
  };
}
async function dragBy(hand: Hand, from: Point, path: readonly Point[], modifiers: readonly string[] = []) {
  await hand.down(from);
  for (const key of modifiers) await page.keyboard.down(key);
  for (const at of path) await hand.move(at);
  await hand.up();
  for (const key of modifiers) await page.keyboard.up(key);
}
const typed = (tierId: string, change: Partial<Tier>) =>
  page.evaluate(
    ([id, to, plan]) => {
      const { studio } = window.bench;
      studio.getState().open({ plan });
      studio.getState().dispatch({ type: "change-tier", tierId: id, change: to });
      return JSON.stringify(studio.getState().plan);
    },
    [tierId, change, PLAN] as const,
  );

describe("a drag in the profile", () => {
  it.each(["mouse", "touch"])(
    "along the arc gives the plan that typing the angle gives, by %s",
    async (by) => {
      const hand = by === "mouse" ? mouse : await finger();
      const [f, at] = [await frame(), await knob("high")];
      await dragBy(hand, at, [along(f, at, -3), along(f, at, -7.1)], by === "mouse" ? ["Alt"] : []);
      const { armAngleDeg, depth } = await tierNow("high");
      expect(armAngleDeg).toBeLessThan(40);
      expect(armAngleDeg).toBeGreaterThan(35);
      const dragged = JSON.stringify(await planNow());
      expect(await steps()).toBe(1);
      expect(dragged).toBe(await typed("high", { armAngleDeg, depth }));
    },
  );

  it("inward gives the plan that typing the depth gives", async () => {
    const [f, at] = [await frame(), await knob("high")];
    const px = (0.9 / 15) * f.radius;
    await dragBy(mouse, at, [inward(f, at, px / 2), inward(f, at, px)], ["Alt"]);
    const { depth } = await tierNow("high");
    expect(depth.rule).toBe("depth");
    expect(Math.abs((await depthOf("high")) - 1.2)).toBeLessThan(0.11);
    const dragged = JSON.stringify(await planNow());
    expect(dragged).toBe(await typed("high", { depth }));
  });

  it("rests where facets just touch, says so, and the exact report then says touch", async () => {
    const [f, at] = [await frame(), await knob("high")];
    const touchMm = await page.evaluate((plan) => {
      const tiers = plan.tiers.map((t) =>
        t.id === "high" ? { ...t, depth: { rule: "touch" as const } } : t,
      );
      return window.bench.solved({ ...plan, tiers }).tiers[1].depthMm;
    }, PLAN);
    const px = ((touchMm - 0.3) / 15) * f.radius;
    await mouse.down(at);
    await mouse.move(inward(f, at, px + 14));
    await mouse.move(inward(f, at, px + 2));
    expect(await page.locator(".readout-snap").first().textContent()).toBe("just touch");
    await mouse.up();
    expect((await tierNow("high")).depth).toEqual({ rule: "touch" });
    const states = await page.evaluate(() => {
      const { pairs } = window.bench.report(window.bench.studio.getState().plan);
      const own = pairs.filter((p) => p.a.startsWith("high/") && p.b.startsWith("high/"));
      return own.map((p) => p.state);
    });
    expect(new Set(states)).toEqual(new Set(["touch"]));
    expect(states).toHaveLength(8);
  });

  it("moves a tenth of the way with Shift", async () => {
    const [f, at] = [await frame(), await knob("high")];
    await dragBy(mouse, at, [along(f, at, -5), along(f, at, -20)], ["Shift", "Alt"]);
    const { armAngleDeg } = await tierNow("high");
    expect(45 - armAngleDeg).toBeGreaterThan(1);
    expect(45 - armAngleDeg).toBeLessThan(3);
  });

  it("is taken back bit for bit by Escape, as if it had not been", async () => {
    const before = await page.evaluate(() => {
      const { plan } = window.bench.studio.getState();
      Object.assign(window, { planBefore: plan });
      return JSON.stringify(plan);
    });
    const [f, at] = [await frame(), await knob("high")];
    await mouse.down(at);
    await mouse.move(along(f, at, -10));
    await mouse.move(along(f, at, -20));
    expect(JSON.stringify(await planNow())).not.toBe(before);
    await page.keyboard.press("Escape");
    const isSame = await page.evaluate(
      () => window.bench.studio.getState().plan === (window as unknown as { planBefore: Plan }).planBefore,
    );
    await mouse.move(along(f, at, -30));
    await mouse.up();
    expect(isSame).toBe(true);
    expect(JSON.stringify(await planNow())).toBe(before);
    expect(await steps()).toBe(0);
  });

  it("keeps later tiers by their rules, and tells which rule is lost", async () => {
    const plan: Plan = {
      ...PLAN,
      tiers: [PLAN.tiers[0], { ...PLAN.tiers[1], depth: { rule: "corners", of: "low" } }],
    };
    await page.evaluate((p) => window.bench.studio.getState().open({ plan: p }), plan);
    const [f, at] = [await frame(), await knob("low")];
    await mouse.down(at);
    await mouse.move(inward(f, at, -3));
    await mouse.move(inward(f, at, -20));
    const lost = await page.locator(".readout-lost").first().textContent();
    expect(lost).toMatch(/^high can't keep its rule here\. It can't come to the corners of low: .+/);
    expect((await tierNow("high")).depth).toEqual({ rule: "corners", of: "low" });
    await mouse.up();
  });
});

describe("a drag on the skin", () => {
  const facet = (id: string) => middleOf(`.skin [data-facet="${id}"]`);

  it.each(["mouse", "touch"])("sideways goes from stop to stop like a typed start, by %s", async (by) => {
    const hand = by === "mouse" ? mouse : await finger();
    const [x, y] = await facet("high/3");
    const sheet = await page.locator(".skin-sheet").boundingBox();
    const stop = (sheet?.width ?? 0) / 96;
    await dragBy(
      hand,
      [x, y],
      [
        [x + stop, y],
        [x + 5.2 * stop, y],
      ],
    );
    const { startDeg } = await tierNow("high");
    expect(startDeg).toBe(22.5 + 5 * 3.75);
    const dragged = JSON.stringify(await planNow());
    expect(await steps()).toBe(1);
    expect(dragged).toBe(await typed("high", { startDeg }));
  });

  it("upward makes the arm steeper, like a typed angle", async () => {
    const [x, y] = await facet("high/3");
    await dragBy(
      mouse,
      [x, y],
      [
        [x, y - 8],
        [x, y - 20],
      ],
      ["Alt"],
    );
    const { armAngleDeg } = await tierNow("high");
    expect(armAngleDeg).toBeGreaterThan(45);
    expect(JSON.stringify(await planNow())).toBe(await typed("high", { armAngleDeg }));
  });

  it("beside all facets turns the strip and leaves the plan alone", async () => {
    const before = JSON.stringify(await planNow());
    const sheet = await page.locator(".skin-sheet").boundingBox();
    if (!sheet) throw new Error("no strip");
    const mark = async () => (await page.locator(".skin-ink line").first().boundingBox())?.x ?? 0;
    const was = await mark();
    const at: Point = [sheet.x + sheet.width / 2 + 40, sheet.y + sheet.height * 0.9];
    await dragBy(mouse, at, [
      [at[0] + 30, at[1]],
      [at[0] + 80, at[1]],
    ]);
    await expect.poll(mark).toBeCloseTo(was + 80, 0);
    expect(JSON.stringify(await planNow())).toBe(before);
  });
});

describe("marks on the skin", () => {
  const waist: Tier = { ...ring("waist", 2, 0, { rule: "edge", mm: 5 }), count: 12 };
  const shoulder: Tier = { ...ring("shoulder", 24, 15, { rule: "corners", of: "waist" }), count: 12 };
  const MISSING: Plan = {
    ...PLAN,
    piece: { diameterMm: 38, glass: "borosilicate" },
    tiers: [waist, shoulder],
  };
  const saidOf = () => page.locator(".mark-said").textContent();

  it("give a corner that nearly comes to a point a tail, and say by how much when pressed", async () => {
    await page.evaluate((plan) => window.bench.studio.getState().open({ plan }), MISSING);
    expect(await page.locator(".skin-tail").count()).toBeGreaterThanOrEqual(12);
    await page.mouse.click(...(await middleOf('.skin [data-mark^="miss"] >> nth=3')));
    expect(await saidOf()).toMatch(/nearly come to a point: they miss it by 0\.\d+\smm$/);
  });

  it("say of a gap how wide it is, and choose a facet of it in all pictures", async () => {
    await page.mouse.click(...(await middleOf('.skin [data-mark^="gap high"]')));
    expect(await saidOf()).toMatch(/^high \d and high \d stand \d+\.\d+\smm apart$/);
    expect(await page.locator('.profile [data-tier="high"][data-selected]').count()).toBe(1);
  });

  it("are gone through by keys", async () => {
    await page.locator('.skin [data-tier="low"]').focus();
    const said = new Set<string>();
    for (let i = 0; i < 3; i++) {
      await page.keyboard.press("Enter");
      said.add((await saidOf()) ?? "");
    }
    expect(said.size).toBe(3);
    for (const words of said) expect(words).toMatch(/apart|touch|point/);
  });

  it("show a facet that is ground past the centre", async () => {
    const deep: Tier = { ...ring("deep", 0, 0, { rule: "depth", mm: 18 }), count: 1 };
    await page.evaluate((plan) => window.bench.studio.getState().open({ plan }), { ...PLAN, tiers: [deep] });
    // The cap of h = -3 mm in a radius of 15 mm is (1 + 3/15) / 2 of the round surface.
    const share = await page.evaluate(() => {
      const facet = document.querySelector<SVGPathElement>('.skin [data-facet="deep/1"]')!;
      const sheet = document.querySelector<SVGRectElement>(".skin-sheet")!.getBBox();
      const points = [...(facet.getAttribute("d") ?? "").matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map((m) => [
        +m[1],
        +m[2],
      ]);
      const twice = points.reduce((sum, [x, y], i) => {
        const [u, v] = points[(i + 1) % points.length];
        return sum + x * v - u * y;
      }, 0);
      return Math.abs(twice / 2) / (sheet.width * sheet.height);
    });
    expect(share).toBeCloseTo(0.6, 2);
  });

  it("turn with the strip by keys, and come back with Home", async () => {
    const mark = async () => (await page.locator(".skin-ink line").first().boundingBox())?.x ?? 0;
    await page.locator(".skin-turner").focus();
    await page.keyboard.press("Home");
    const was = await mark();
    await page.keyboard.press("ArrowRight");
    expect(await mark()).not.toBeCloseTo(was, 0);
    await page.keyboard.press("Home");
    expect(await mark()).toBeCloseTo(was, 1);
  });
});

describe("keys", () => {
  it("step the angle and the depth, one undo step for a key held down", async () => {
    await page.locator('.profile [data-tier="high"]').focus();
    await page.keyboard.down("ArrowUp");
    await page.keyboard.down("ArrowUp");
    await page.keyboard.down("ArrowUp");
    await page.keyboard.up("ArrowUp");
    expect((await tierNow("high")).armAngleDeg).toBe(46.5);
    expect(await steps()).toBe(1);
    await page.keyboard.press("ArrowLeft");
    expect((await tierNow("high")).depth).toEqual({ rule: "depth", mm: 0.35 });
    expect(await steps()).toBe(2);
  });

  it("go stop by stop on the skin", async () => {
    await page.locator('.skin [data-tier="high"]').focus();
    await page.keyboard.press("ArrowRight");
    expect((await tierNow("high")).startDeg).toBe(26.25);
  });

  it("go on to the next depth that meets", async () => {
    await page.locator('.profile [data-tier="high"]').focus();
    await page.keyboard.press("PageUp");
    expect((await tierNow("high")).depth.rule).not.toBe("depth");
    expect(await steps()).toBe(1);
  });
});

describe("one selection", () => {
  it("chosen in the profile shows on the skin, and hovered on the skin shows in the profile", async () => {
    const at = await knob("high");
    await page.mouse.click(...at);
    expect(await page.locator(".skin-selected-outer").count()).toBeGreaterThanOrEqual(8);
    await page.mouse.move(...(await middleOf('.skin [data-facet="low/3"]')));
    expect(await page.locator('.profile [data-tier="low"][data-hovered]').count()).toBe(1);
  });

  it("a facet chosen on the skin lies flat on its card", async () => {
    await page.mouse.click(...(await middleOf('.skin [data-facet="low/3"]')));
    expect(await page.locator(".card-title").textContent()).toBe("low, facet 3 of 8");
    expect(await page.locator('.profile [data-tier="low"][data-selected]').count()).toBe(1);
  });
});

describe("undo", () => {
  it("goes back and forth through 200 dragged steps", async () => {
    const seen = await page.evaluate(() => {
      const { studio } = window.bench;
      const plans: string[] = [JSON.stringify(studio.getState().plan)];
      for (let i = 1; i <= 200; i++) {
        studio.getState().beginDrag({ about: "tier", tier: 2, field: "armAngleDeg" });
        for (const part of [0.3, 1]) {
          studio.getState().dragTo({
            type: "change-tier",
            tierId: "high",
            change: { armAngleDeg: 40 + ((i + part) % 20) },
          });
        }
        studio.getState().endDrag();
        plans.push(JSON.stringify(studio.getState().plan));
      }
      const back = plans.map(() => {
        const plan = JSON.stringify(studio.getState().plan);
        studio.getState().undo();
        return plan;
      });
      const forth = plans.map(() => {
        const plan = JSON.stringify(studio.getState().plan);
        studio.getState().redo();
        return plan;
      });
      return { plans, back, forth };
    });
    expect(seen.plans).toHaveLength(201);
    expect(seen.back).toEqual([...seen.plans].reverse());
    expect(seen.forth).toEqual(seen.plans);
  });
});

/** What the exact report says of a pattern of three tiers, each going to the one before. */
const meeting = () =>
  page.evaluate(() => {
    const { plan } = window.bench.studio.getState();
    const { findings, corners, pairs } = window.bench.report(plan);
    const tierOf = (id: string) => id.slice(0, id.lastIndexOf("/"));
    const ids = plan.tiers.map((t) => t.id);
    return {
      rules: plan.tiers.map((t) => t.depth.rule),
      toLookAt: findings.filter((f) => f.severity !== "info").map((f) => f.code),
      skinBetween: findings.filter((f) => f.code === "skin-between").length,
      ringStates: ids.map((id) => [
        ...new Set(pairs.filter((p) => tierOf(p.a) === id && tierOf(p.b) === id).map((p) => p.state)),
      ]),
      /** Corners that a tier shares with the one before it. */
      shared: ids.slice(1).map(
        (id, i) =>
          corners.filter((c) => {
            const tiers = c.facets.map(tierOf);
            return tiers.includes(id) && tiers.includes(ids[i]);
          }).length,
      ),
    };
  });
const MEETS = {
  rules: ["touch", "corners", "corners"],
  toLookAt: [],
  skinBetween: 0,
  ringStates: [["touch"], ["edge"], []],
  shared: [24, 12],
};
const openEmpty = () =>
  page.evaluate((plan) => window.bench.studio.getState().open({ plan: { ...plan, tiers: [] } }), PLAN);

describe("by dragging alone", () => {
  const fresh = () => middleOf(".profile .fresh .grip-knob");

  it.each(["mouse", "touch"])("an uncut marble becomes three tiers that meet, by %s", async (by) => {
    const hand = by === "mouse" ? mouse : await finger();
    await openEmpty();
    for (const wanted of [
      /^just touch$/,
      /^comes to the corners of Tier 1$/,
      /^comes to the corners of Tier 2$/,
    ]) {
      const [f, at] = [await frame(), await fresh()];
      await hand.down(at);
      // A person pulls inward until the words beside the pointer say what is wanted.
      let said = "";
      for (let px = 5; px < 200 && !wanted.test(said); px += 3) {
        await hand.move(inward(f, at, px));
        const snap = page.locator(".profile .readout-snap");
        said = (await snap.count()) > 0 ? ((await snap.textContent()) ?? "") : "";
      }
      expect(said).toMatch(wanted);
      await hand.up();
    }
    expect(await meeting()).toEqual(MEETS);
    expect(await steps()).toBe(3);
    for (let i = 0; i < 3; i++) await page.evaluate(() => window.bench.studio.getState().undo());
    expect((await planNow()).tiers).toEqual([]);
  });

  it("leaves no trace of a tier that is pulled in and given up, or pushed back out", async () => {
    await openEmpty();
    const before = JSON.stringify(await planNow());
    const [f, at] = [await frame(), await fresh()];
    await mouse.down(at);
    await mouse.move(inward(f, at, 20));
    expect((await planNow()).tiers).toHaveLength(1);
    await page.keyboard.press("Escape");
    expect(JSON.stringify(await planNow())).toBe(before);
    await mouse.up();
    await dragBy(mouse, at, [inward(f, at, 20), inward(f, at, -30)], ["Alt"]);
    expect(JSON.stringify(await planNow())).toBe(before);
    expect(await steps()).toBe(0);
  });

  it("adds the proposed tier by a press", async () => {
    await openEmpty();
    await page.mouse.click(...(await fresh()));
    expect((await planNow()).tiers.map((t) => t.depth)).toEqual([{ rule: "touch" }]);
    expect(await steps()).toBe(1);
  });
});

describe("by keys alone", () => {
  it("an uncut marble becomes three tiers that meet", async () => {
    await openEmpty();
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    const labelNow = () => page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? "");
    const tabTo = async (wanted: RegExp) => {
      for (let i = 0; i < 60 && !wanted.test(await labelNow()); i++) await page.keyboard.press("Tab");
      expect(await labelNow()).toMatch(wanted);
    };
    for (let k = 1; k <= 3; k++) {
      await tabTo(/^New tier$/);
      await page.keyboard.press("Enter");
      await expect.poll(labelNow).toBe(`Tier ${k}: arm angle and depth`);
      // Away from where it was proposed and on to what it meets: the hand is on the tier it made.
      if (k === 2) {
        await page.keyboard.press("ArrowRight");
        expect((await planNow()).tiers[1].depth.rule).toBe("depth");
        for (let i = 0; i < 6 && (await planNow()).tiers[1].depth.rule !== "corners"; i++)
          await page.keyboard.press("PageUp");
      }
    }
    expect(await meeting()).toEqual(MEETS);
  });
});

describe("mends", () => {
  it("clear their finding with one press, as one step", async () => {
    const plan: Plan = { ...PLAN, tiers: [{ ...PLAN.tiers[0], count: 14 }] };
    await page.evaluate((p) => window.bench.studio.getState().open({ plan: p }), plan);
    const button = page.locator('[data-code="uneven"] button').first();
    await button.waitFor({ timeout: 60_000 });
    expect(await button.textContent()).toBe("Give low 12 facets: the wheel divides it evenly");
    await button.click();
    const codes = await page.evaluate(() =>
      window.bench.report(window.bench.studio.getState().plan).findings.map((f) => f.code),
    );
    expect(codes).not.toContain("uneven");
    expect(await steps()).toBe(1);
  });
});

describe("counts and angles that work", () => {
  it("are listed with pictures, and choosing one applies it", async () => {
    await page.evaluate(() => window.bench.studio.getState().select({ tierId: "high" }));
    await page.getByRole("button", { name: "Counts and angles that work" }).click();
    const offer = page.locator(".offer").first();
    await offer.waitFor({ timeout: 60_000 });
    expect(await offer.locator(".offer-own").getAttribute("d")).toMatch(/^M/);
    const before = JSON.stringify(await planNow());
    await offer.click();
    expect(JSON.stringify(await planNow())).not.toBe(before);
    const stops = await page.evaluate(() => {
      const { findings } = window.bench.report(window.bench.studio.getState().plan);
      return findings.filter((f) => f.severity === "stop").length;
    });
    expect(stops).toBe(0);
  });
});

describe("the diary", () => {
  it("shows the piece after each facet, with the width that the facet has then", async () => {
    await page.getByRole("button", { name: "Diary of the work" }).click();
    await page.getByRole("slider", { name: "Moments of the work" }).focus();
    for (let i = 0; i < 13; i++) await page.keyboard.press("ArrowLeft");
    // Three facets of the first tier are cut.
    expect(await page.locator(".diary-said").textContent()).toMatch(/^low 3: .* wide now/);
    expect(
      await page
        .locator(".skin [data-facet]")
        .evaluateAll((all) => new Set(all.map((e) => e.getAttribute("data-facet"))).size),
    ).toBe(3);
    await page.keyboard.press("Home");
    expect(await page.locator(".skin [data-facet]").count()).toBe(0);
    await page.locator(".diary-moment").nth(1).click();
    expect(await page.locator(".diary-said").textContent()).toMatch(/^low 2: .* wide now/);
    await page.getByRole("button", { name: "Leave the diary" }).click();
    expect(await page.locator(".skin [data-facet]").count()).toBeGreaterThanOrEqual(16);
  });
});
