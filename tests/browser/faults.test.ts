/**
 * The app where things go wrong, each fault injected into a real browser: storage that is refused, blocked, full, broken or
 * torn, two windows on one plan, a page that breaks or dies, a new version. The work stays, and a person is told.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import {
  BUILT,
  closeSheet,
  fileOf,
  nameField,
  openFromMenu,
  renamePlan,
  serveBuiltApp,
} from "./built-app.ts";
import type { ProfileOptions } from "./profiles.ts";
import { sharedApp, sharedVisit } from "./shared.ts";

const app = sharedApp();

const QUICK: ProfileOptions = { without3d: true };
const kept = (page: Page) => page.getByText("Kept on this device", { exact: true }).first().waitFor();
const trouble = (page: Page) => page.getByRole("alert").filter({ hasText: "not kept on this device" });
const sheet = (page: Page) => page.getByRole("dialog");
const names = async (page: Page): Promise<string[]> => {
  await openFromMenu(page, "Your plans");
  await sheet(page).locator(".shelf-plan, .shelf-empty").first().waitFor();
  const found = await sheet(page).locator(".shelf-plan b").allTextContents();
  await closeSheet(page);
  return found.sort();
};

/** The work goes on in memory: told why, and the last change is in the file that the notice offers. */
async function expectWorkInMemory(page: Page, why: RegExp): Promise<void> {
  await renamePlan(page, "On the bench");
  await page.getByText("Not kept beyond this page: save to a file").waitFor();
  expect(await trouble(page).textContent()).toMatch(why);
  const { bytes } = await fileOf(page, () =>
    trouble(page).getByRole("button", { name: "Save plan to a file" }).click(),
  );
  expect(parsePlan(bytes.toString("utf8")).plan.name).toBe("On the bench");
  await openFromMenu(page, "Your plans");
  expect(await sheet(page).locator(".shelf-fault").first().textContent()).toMatch(why);
  await closeSheet(page);
}

describe("storage", () => {
  const visit = sharedVisit(app, QUICK);

  it.each([
    {
      what: "that the browser has not",
      why: /no storage to offer/,
      before: () => Object.defineProperty(window, "indexedDB", { value: undefined }),
    },
    {
      what: "that a private window refuses, even to look at",
      why: /private window/,
      before: () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("refused", "SecurityError");
        };
        Object.defineProperty(window, "localStorage", {
          get: () => {
            throw new DOMException("refused", "SecurityError");
          },
        });
      },
    },
    {
      what: "that another window holds",
      why: /Another window holds the storage/,
      before: () => {
        const open = IDBFactory.prototype.open;
        // a request whose answer never comes, as when an older page does not let go
        IDBFactory.prototype.open = function (...given) {
          const request = open.apply(this, given);
          request.addEventListener("success", (event) => event.stopImmediatePropagation());
          return request;
        };
      },
    },
    {
      what: "that a newer page has changed",
      why: /newer version of this page/,
      before: () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("99 is more than asked for", "VersionError");
        };
      },
    },
    {
      what: "that is broken",
      why: /can't be read/,
      before: () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException("internal error", "UnknownError");
        };
      },
    },
  ])("$what: is told before any work is done, and the work goes to a file", async ({ why, before }) => {
    const { page, errors, close } = await app.beside(visit.page, before);
    await trouble(page).waitFor();
    await expectWorkInMemory(page, why);
    expect(errors).toEqual([]);
    await close();
  });

  it("that is full: is told once, offers the file, and is well again when there is room", async () => {
    const { page, errors } = visit;
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...given) {
        if ("diskIsFull" in window) throw new DOMException("full", "QuotaExceededError");
        return put.apply(this, given);
      };
      Object.assign(window, { diskIsFull: true });
    });
    await renamePlan(page, "Too much");
    await page.getByText("Not kept: save to a file").waitFor();
    expect(await trouble(page).textContent()).toMatch(/share of it, is full.*still on the bench/);
    const { bytes } = await fileOf(page, () => page.keyboard.press("Control+s"));
    expect(parsePlan(bytes.toString("utf8")).plan.name).toBe("Too much");
    expect(await names(page)).toEqual([]);
    await page.evaluate(() => Reflect.deleteProperty(window, "diskIsFull"));
    await renamePlan(page, "Room again");
    await kept(page);
    await trouble(page).waitFor({ state: "detached" });
    expect(await names(page)).toEqual(["Room again"]);
    expect(errors).toEqual([]);
  });

  it("in which the last plan is torn: begins with an example, says so, and gives the torn text out", async () => {
    // a visit of its own: what the windows above could not keep is put back by the next visit beside them
    const { page, errors, close } = await app.visit(QUICK);
    const example = await nameField(page).inputValue();
    await renamePlan(page, "Torn");
    await kept(page);
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const opening = indexedDB.open("glintwright");
          opening.onsuccess = () => {
            const table = opening.result.transaction("plans", "readwrite").objectStore("plans");
            const reading = table.getAll();
            reading.onsuccess = () => {
              table.put({ ...reading.result[0], text: "{ torn" }).onsuccess = () => done();
            };
          };
        }),
    );
    await page.reload();
    await page.getByRole("alert").filter({ hasText: "can't be read" }).waitFor();
    expect(await nameField(page).inputValue()).toBe(example);
    await openFromMenu(page, "Your plans");
    await sheet(page).getByText("This one can't be read any more", { exact: false }).waitFor();
    await sheet(page).getByRole("button", { name: "More for Unnamed plan" }).click();
    const { bytes } = await fileOf(page, () =>
      page.getByRole("menuitem", { name: "Save its text to a file" }).click(),
    );
    expect(bytes.toString("utf8")).toBe("{ torn");
    expect(errors).toEqual([]);
    await close();
  });
});

it("two windows on one plan: the second goes on with a copy, and neither loses a word", async () => {
  const { page: one, close } = await app.visit(QUICK);
  await renamePlan(one, "Shared");
  await kept(one);
  const { page: two } = await app.beside(one);
  await expect.poll(() => nameField(two).inputValue()).toBe("Shared");
  await renamePlan(two, "by two");
  await two.getByText("Kept as a copy: another window has this plan open").waitFor();
  await renamePlan(one, "by one");
  await kept(one);
  await expect.poll(() => names(one)).toEqual(["by one", "by two"]);
  expect(await nameField(two).inputValue()).toBe("by two");
  await close();
});

describe("a crash", () => {
  const visit = sharedVisit(app, QUICK, { expected: /injected/ });

  it("in one part leaves the rest, keeps the plan, saves it, and shows it again", async () => {
    const { page } = visit;
    await renamePlan(page, "Before the crash");
    await kept(page);
    await page.evaluate(() => {
      const format = Object.getOwnPropertyDescriptor(Intl.NumberFormat.prototype, "format")!;
      Object.defineProperty(Intl.NumberFormat.prototype, "format", {
        get() {
          if ("isBroken" in window) throw new Error("injected");
          return format.get!.call(this);
        },
      });
      Object.assign(window, { isBroken: true });
    });
    await openFromMenu(page, "Piece and wheel");
    const broken = sheet(page).getByRole("alert");
    expect(await broken.textContent()).toMatch(/stopped working.*Your plan is safe/);
    const { bytes } = await fileOf(page, () =>
      broken.getByRole("button", { name: "Save plan to a file" }).click(),
    );
    expect(parsePlan(bytes.toString("utf8")).plan.name).toBe("Before the crash");
    await page.evaluate(() => Reflect.deleteProperty(window, "isBroken"));
    await broken.getByRole("button", { name: "Show it again" }).click();
    await sheet(page).getByRole("spinbutton", { name: "Diameter", exact: true }).waitFor();
    await closeSheet(page);
    expect(await nameField(page).inputValue()).toBe("Before the crash");
  });

  it("of the frame itself keeps the plan and offers it again", async () => {
    const { page } = visit;
    await renamePlan(page, "Whole page");
    await kept(page);
    await page.evaluate(() => {
      const at = Array.prototype.at;
      // what the buttons of undo look at
      Array.prototype.at = function (this: unknown[], i: number) {
        const found = at.call(this, i);
        if ("isFrameBroken" in window && typeof found === "object" && found !== null && "inverse" in found)
          throw new Error("injected");
        return found;
      };
      Object.assign(window, { isFrameBroken: true });
    });
    await page.getByRole("spinbutton", { name: "Arm angle" }).first().focus();
    await page.keyboard.press("ArrowUp");
    await page.getByText("This part of the page stopped working.").waitFor();
    await page.evaluate(() => Reflect.deleteProperty(window, "isFrameBroken"));
    await page.getByRole("button", { name: "Show it again" }).click();
    await page.locator(".recipe").waitFor();
    expect(await nameField(page).inputValue()).toBe("Whole page");
    expect(await page.locator(".undo").getAttribute("aria-label")).toMatch(/^Undo: angle of tier 1/);
  });

  it("of the whole window loses nothing that was kept: the next one begins with it, undo included", async () => {
    const { page } = visit;
    await renamePlan(page, "First");
    await renamePlan(page, "Second");
    await kept(page);
    const dead = page.waitForEvent("crash");
    const devtools = await page.context().newCDPSession(page);
    // the answer never comes: the page that would give it is gone
    devtools.send("Page.crash").catch(() => undefined);
    await dead;
    const { page: next } = await app.beside(page);
    await expect.poll(() => nameField(next).inputValue()).toBe("Second");
    await next.getByRole("button", { name: "Undo: name of the plan" }).click();
    expect(await nameField(next).inputValue()).toBe("First");
    await next.getByRole("button", { name: "Redo: name of the plan" }).click();
    expect(await nameField(next).inputValue()).toBe("Second");
  });
});

it("offers a new version, never takes it by itself, and brings the plan over when it is taken", async () => {
  const folder = mkdtempSync(join(tmpdir(), "glintwright-"));
  cpSync(BUILT, folder, { recursive: true });
  const own = await serveBuiltApp(folder);
  try {
    const { page } = await own.visit({ ...QUICK, serviceWorkers: "allow" });
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await renamePlan(page, "In the middle of work");
    await kept(page);
    await page.evaluate(() => Object.assign(window, { isThisPage: true }));
    const worker = join(folder, "sw.js");
    writeFileSync(worker, `${readFileSync(worker, "utf8")}\n// the next version\n`);
    await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
    const offer = page.getByRole("status").filter({ hasText: "A new version is ready." });
    await offer.waitFor();
    await renamePlan(page, "Still at work");
    await kept(page);
    expect(await page.evaluate(() => "isThisPage" in window)).toBe(true);
    await offer.getByRole("button", { name: "Use it now" }).click();
    await page.waitForFunction(() => !("isThisPage" in window));
    await page.waitForSelector(".recipe");
    await expect.poll(() => nameField(page).inputValue()).toBe("Still at work");
    expect(
      await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting ?? null),
    ).toBeNull();
  } finally {
    await own.close();
    rmSync(folder, { recursive: true });
  }
});
