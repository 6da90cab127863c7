/** Dragging in the profile and on the skin: by mouse, touch and keys the same as typing; snaps, Escape, undo, one selection. */
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import {
  along,
  depthOf,
  dragBy,
  finger,
  frame,
  inward,
  knob,
  middleOf,
  mouse,
  onDrawings,
  PLAN,
  type Point,
  page,
  planNow,
  steps,
  tierNow,
  typed,
} from "./drawings.ts";

onDrawings();

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
