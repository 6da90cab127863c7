/** From an uncut marble to tiers that meet, by dragging alone and by keys alone. */
import { describe, expect, it } from "vitest";
import {
  dragBy,
  finger,
  frame,
  inward,
  middleOf,
  mouse,
  onDrawings,
  PLAN,
  page,
  planNow,
  steps,
} from "./drawings.ts";

onDrawings();

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
