/** What can be done with the wall of ideas, each deed pressed, and what a page that is loaded anew finds again. */
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { frontCountsOf } from "../../src/core/ideas/genes.ts";
import type { Plan } from "../../src/core/plan/document.ts";
import { ideasWords } from "../../src/ui/messages/ideas.ts";
import { dropFile, openFromMenu } from "./built-app.ts";
import { guideTo } from "./everywhere.ts";
import { HUNG, hangWall, keptPlans, ON_BENCH, stopOnceHung } from "./hung-wall.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const words = ideasWords.en;
const app = sharedApp();
const visit = sharedVisit(app, { without3d: true });

/** The wall as it hung on an earlier visit. */
async function atWall(held = 0): Promise<Page> {
  const { page } = visit;
  await hangWall(page, held);
  await guideTo(page).goTo("ideas");
  await page.locator(".idea-wall .idea").first().waitFor();
  return page;
}
const one = (page: Page) => page.getByRole("region", { name: words.one.title });
const heldPart = (page: Page) => page.getByRole("region", { name: words.held });
const deed = (page: Page, name: string) => one(page).getByRole("button", { name, exact: true });
const onWall = (page: Page, name: string) =>
  page.locator(".idea-wall").getByRole("button", { name, exact: true });
const pressed = async (page: Page, name: string): Promise<void> => {
  await onWall(page, name).click();
  await one(page).getByRole("heading", { name }).waitFor();
};

/** What a search that was begun has hung, once it has and was stopped. */
async function found(page: Page): Promise<readonly Plan[]> {
  await stopOnceHung(page);
  return (await keptPlans(page, "wall")).filter((plan) => plan !== null);
}

it("what hangs and is held is there right after a reload, and a tenth of a second after it was held", async () => {
  const page = await atWall();
  const [first, second] = HUNG;
  const names = () => heldPart(page).getByRole("listitem").allTextContents();
  for (const [plan, laterMs, expected] of [
    [first, 0, [first.name]],
    [second, 100, [first.name, second.name]],
  ] as const) {
    await pressed(page, plan.name);
    // the press and the reload are one task of the page, or a tenth of a second of its own clock apart
    await Promise.all([
      page.waitForEvent("load"),
      deed(page, words.deeds.hold).evaluate((button: HTMLElement, ms) => {
        button.click();
        if (ms === 0) location.reload();
        else setTimeout(() => location.reload(), ms);
      }, laterMs),
    ]);
    await heldPart(page).waitFor();
    expect(await names()).toEqual(expected);
    expect(await page.locator(".idea-wall .idea").count()).toBe(HUNG.length);
  }
  // another window of the same browser sees what is held here, and what it lets go is gone here too
  const other = await app.beside(page);
  await guideTo(other.page).goTo("ideas");
  await heldPart(other.page).getByRole("button", { name: first.name }).click();
  await deed(other.page, words.deeds.letGo).click();
  await expect.poll(names).toEqual([second.name]);
  await other.close();
});

it("the wish is as it was said, and a search that was under way stands stopped", async () => {
  const page = await atWall();
  const hours = page.getByRole("spinbutton", { name: words.wish.hours, exact: true });
  await hours.fill("7");
  await hours.press("Enter");
  await guideTo(page).press(words.further);
  await page
    .getByRole("status")
    .filter({ hasText: /^[1-9]\d* patterns tried, [1-9]/ })
    .waitFor();
  await page.reload();
  await page
    .getByRole("status")
    .filter({ hasText: /^Stopped after [1-9]/ })
    .waitFor();
  expect(await page.locator(".idea-wall .idea").count()).toBeGreaterThan(0);
  expect(await hours.inputValue()).toBe("7");
});

it("nothing is counted any more once it says that it has stopped", async () => {
  const page = await atWall();
  await guideTo(page).press(words.further);
  const counts = () => page.locator(".idea-row [role=status]").first().textContent();
  const before = (await found(page)).map(({ name }) => name);
  const said = await counts();
  expect(said).toMatch(/^Stopped after [1-9]/);
  // what is asked of the same workers now is answered after all that they still had in hand
  await pressed(page, before[0]);
  await one(page).locator(".idea-said").waitFor();
  expect(await counts()).toBe(said);
  expect((await keptPlans(page, "wall")).map((plan) => plan?.name)).toEqual(before);
});

/** Rings of a plan by side and count; poles are too common to tell plans by. */
const ringsOf = ({ tiers }: Plan): readonly string[] =>
  tiers.filter(({ count }) => count > 1).map(({ side, count }) => `${side} ${count}`);
const sharesRing = (plans: readonly Plan[], own: Plan): boolean =>
  plans.some((plan) => ringsOf(plan).some((ring) => ringsOf(own).includes(ring)));

it("more like this stays near it, and the front's counts stay where only these are to", async () => {
  const page = await atWall();
  // a ring on either side: by chance no first batch has both
  const own = HUNG.find(
    (plan) => new Set(ringsOf(plan).map((ring) => ring.split(" ")[0])).size === 2,
  ) as Plan;
  await pressed(page, own.name);
  await deed(page, words.deeds.more).click();
  expect((await found(page)).map(ringsOf)).toContainEqual(ringsOf(own));
  await atWall();
  await pressed(page, own.name);
  await deed(page, words.deeds.front).click();
  const kept = await found(page);
  for (const { tiers } of kept) expect(frontCountsOf(tiers)).toEqual(frontCountsOf(own.tiers));
});

it("between the last two held has both of them and what lies between", async () => {
  const page = await atWall(3);
  const [, a, b] = HUNG;
  await heldPart(page).getByRole("button", { name: words.deeds.between }).click();
  // these two have no ring in common: what hangs has some of each
  expect(sharesRing([a], b)).toBe(false);
  const between = await found(page);
  expect([sharesRing(between, a), sharesRing(between, b)]).toEqual([true, true]);
});

it("an idea lies beside the plan, on the shelf, before a customer, and on the bench, from where undo takes it", async () => {
  const page = await atWall();
  const guide = guideTo(page);
  const [idea] = HUNG;
  await pressed(page, idea.name);
  await deed(page, words.deeds.shelf).click();
  await one(page).getByText(words.deeds.shelved).waitFor();
  await deed(page, words.deeds.customer).click();
  await page.getByRole("dialog").waitFor();
  await guide.closeSheet();
  await deed(page, words.deeds.beside).click();
  await page.getByText(idea.name, { exact: false }).first().waitFor();
  await openFromMenu(page, "Your plans");
  await page.getByRole("dialog").locator(".shelf-plan").filter({ hasText: idea.name }).first().waitFor();
  await guide.closeSheet();
  await guide.goTo("ideas");
  await pressed(page, idea.name);
  await deed(page, words.deeds.take).click();
  await page.getByText(words.deeds.taken).waitFor();
  await expect.poll(() => page.locator(".tier").count()).toBe(idea.tiers.length);
  await page.locator(".head").getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(() => page.locator(".tier").count()).toBe(ON_BENCH.tiers.length);
});

it("where light can't be traced drawings stand in, and that is said", async () => {
  const page = await atWall(1);
  await page.getByText(words.undrawn).waitFor();
  // nothing leans that can't be traced
  await pressed(page, HUNG[0].name);
  await one(page).getByText(words.leanUntraced).waitFor();
  expect(await page.getByRole("slider").count()).toBe(0);
  const images = page.locator(".idea-wall .idea img, .idea-held .idea img");
  const kinds = () =>
    images.evaluateAll((all) =>
      all.map((image) => atob((image as HTMLImageElement).src.split(",")[1] ?? "")),
    );
  await expect.poll(async () => (await kinds()).every((svg) => svg.includes("<polygon"))).toBe(true);
  expect(new Set((await kinds()).slice(0, HUNG.length)).size).toBe(HUNG.length);
});

it("what is thrown away is gone after a reload too, and comes back when asked for", async () => {
  const page = await atWall(1);
  const [idea] = HUNG;
  await pressed(page, idea.name);
  await deed(page, words.deeds.away).click();
  await page.reload();
  await page.getByRole("button", { name: words.bringBack(1) }).waitFor();
  expect(await onWall(page, idea.name).count()).toBe(0);
  expect(await heldPart(page).count()).toBe(0);
  await page.getByRole("button", { name: words.bringBack(1) }).click();
  await onWall(page, idea.name).waitFor();
});

it("what one likes orders the wall and hides nothing, stays on this device, and is forgotten at a press", async () => {
  const page = await atWall();
  const plans = HUNG;
  expect(plans.length).toBeGreaterThan(5);
  const key = "glintwright-taste";
  // what earlier tests have held and thrown away was learned or not, as quickly as they were over
  await page.evaluate((of) => localStorage.removeItem(of), key);
  const marks = () => page.evaluate((of) => JSON.parse(localStorage.getItem(of) ?? "[]").length, key);
  for (const [i, plan] of plans.slice(0, 6).entries()) {
    await pressed(page, plan.name);
    await deed(page, i < 3 ? words.deeds.hold : words.deeds.away).click();
    await expect.poll(marks).toBe(i + 1);
  }
  await page.getByRole("button", { name: words.bringBack(3) }).click();
  const names = (of: string) =>
    page.locator(`${of} .idea`).evaluateAll((all) => all.map((button) => button.getAttribute("aria-label")));
  const ordered = await names(".idea-strip");
  expect([...ordered].sort()).toEqual([...(await names(".idea-wall"))].sort());
  expect(visit.foreign).toEqual([]);
  await page.reload();
  await expect.poll(() => names(".idea-strip")).toEqual(ordered);
  await guideTo(page).press(words.taste.forget);
  expect(await page.locator(".idea-strip").count()).toBe(0);
  expect(await page.evaluate((of) => localStorage.getItem(of), key)).toBeNull();
  expect((await names(".idea-wall")).length).toBe(plans.length);
});

it("what else this could be keeps the tiers that are pinned, and those that are cut whatever is wished", async () => {
  const { page } = visit;
  await hangWall(page);
  await openFromMenu(page, guideTo(page).shell.menu.ideas);
  const keep = page.getByRole("spinbutton", { name: words.wish.keepLabel, exact: true });
  await keep.fill("2");
  await keep.press("Enter");
  await guideTo(page).press(words.further);
  const patterns = (plans: readonly Plan[]) =>
    plans.map(({ tiers }) => tiers.slice(0, 2).map(({ id, armAngleDeg, count }) => [id, armAngleDeg, count]));
  const pinned = await found(page);
  for (const first of patterns(pinned)) expect(first).toEqual(patterns([ON_BENCH])[0]);
  // the first of them is cut: it can't be let go any more
  const cut = {
    ...ON_BENCH,
    tiers: ON_BENCH.tiers.map((t, i) => (i === 0 ? { ...t, asCut: { widthMm: 9 } } : t)),
  };
  await hangWall(page, 0, { ...cut, name: "Cut" });
  await guideTo(page).goTo("ideas");
  await expect.poll(() => keep.inputValue()).toBe("1");
});

it("from what nothing mends to patterns near it that meet, one of them as the plan, and back", async () => {
  const { page } = visit;
  const [ring] = ON_BENCH.tiers;
  // a facet alone has no neighbour to touch
  const alone = { ...ring, id: "b", name: "Alone", armAngleDeg: 90, count: 1 };
  await hangWall(page, 0, { ...ON_BENCH, name: "Alone", tiers: [ring, alone] });
  await guideTo(page).goTo("plan");
  await page.getByRole("button", { name: words.nearest, exact: true }).first().click();
  const near = await found(page);
  for (const { tiers } of near) expect(tiers.every(({ side }) => side === "front")).toBe(true);
  // the wish asked for both sides: that it gives way is told where it is said, and still is after a reload
  const gave = page.getByText(words.wish.gave.all(words.wish.sides.front));
  await gave.waitFor();
  await page.reload();
  await gave.waitFor();
  await page.locator(".idea-wall .idea").first().click();
  await deed(page, words.deeds.take).click();
  await page.getByText(words.deeds.taken).waitFor();
  await expect.poll(() => page.locator('.finding[data-severity="stop"]').count()).toBe(0);
  await page.locator(".head").getByRole("button", { name: /^Undo/ }).click();
  await page.getByRole("button", { name: words.nearest, exact: true }).first().waitFor();
});

it("a wish that contradicts itself is told what stands in the way", async () => {
  const page = await atWall();
  const set = async (name: string, value: string) => {
    const field = page.getByRole("spinbutton", { name, exact: true });
    await field.fill(value);
    await field.press("Enter");
  };
  await set(words.wish.facets, "4");
  await set(words.wish.leastTiers, "5");
  await guideTo(page).press(words.further);
  await page
    .getByRole("alert")
    .filter({ hasText: words.nothing(words.way.never(words.way.facets)) })
    .waitFor();
  expect(await page.locator(".idea-wall .idea").count()).toBe(0);
});

it("a wish comes from a file as it stands, names what is in its way, and is there after a reload", async () => {
  const page = await atWall();
  const file = {
    format: "glintwright-wish",
    version: 1,
    piece: { diameterMm: 25, glass: "soda-lime" },
    rig: { wheelStops: 64 },
    sides: "front",
    tiers: [1, 2],
    facets: [5, 30],
    limits: { skinShare: [0.2, 1] },
    want: { minutes: -1 },
    across: "tiers",
    up: "skinShare",
  };
  const { given, on, wheel, sides } = words.wish;
  const drop = (name: string, wish: object) => dropFile(page, name, JSON.stringify(wish));
  await drop("quick.json", file);
  const told = page.getByRole("region", { name: given.title("quick.json") });
  await told
    .getByText(given.work(on("25.0\u00a0mm"), wheel("64"), "1 to 2", "5 to 30", sides.front))
    .waitFor();
  await told.getByText(given.limits(`${words.axis.skinShare}: 20 – 100\u00a0%`)).waitFor();
  await guideTo(page).press(words.further);
  for (const { piece, rig, tiers } of await found(page)) {
    expect([piece.diameterMm, piece.glass, rig.wheelStops]).toEqual([25, "soda-lime", 64]);
    expect(tiers.every(({ side }) => side === "front")).toBe(true);
  }
  await page.reload();
  await told.waitFor();
  // one that is none says why, and the one before stays
  await drop("bad.json", { ...file, tiers: [2, 1] });
  await page.getByText("bad.json can't be opened").waitFor();
  await told.waitFor();
  await drop("never.json", { ...file, tiers: [2, 2], facets: [1, 2] });
  await page.getByRole("region", { name: given.title("never.json") }).waitFor();
  await guideTo(page).press(words.further);
  await page
    .getByRole("alert")
    .filter({ hasText: words.nothing(words.way.never(words.way.facets)) })
    .waitFor();
  await guideTo(page).press(given.own);
  await page.getByRole("spinbutton", { name: words.wish.hours, exact: true }).waitFor();
});
