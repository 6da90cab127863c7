/** The library on a real browser's IndexedDB and Web Locks, two tabs at once, and each way in which storage fails. */
import type { Page } from "playwright-core";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { noise } from "./noise.ts";
import { sharedThing } from "./shared.ts";
import { openPage } from "./support.ts";

const home = sharedThing(
  () => openPage("tests/browser/storage-page.html"),
  ({ close }) => close(),
);
let address: string;
let tabs: Page[] = [];

/** A tab of one browser profile that is fresh for every test; `before` runs in the page before anything else. */
async function tab(beside?: Page, before?: () => void): Promise<Page> {
  const browser = home().page.context().browser();
  const context = beside?.context() ?? (await browser?.newContext());
  if (!context) throw new Error("the browser is gone");
  const page = await context.newPage();
  if (before) await page.addInitScript(before);
  await page.goto(address, { waitUntil: "load" });
  tabs.push(page);
  return page;
}
const start = (page: Page) => page.evaluate(() => window.storageBench.start());
const rename = (page: Page, name: string, notes?: string) =>
  page.evaluate(([to, also]) => window.storageBench.rename(to as string, also), [name, notes] as const);
const names = (page: Page) => page.evaluate(() => window.storageBench.names());
const nameOn = (page: Page) => page.evaluate(() => window.storageBench.name());

beforeEach(() => {
  address = home().page.url();
  tabs = [];
});
afterEach(async () => {
  for (const context of new Set(tabs.map((page) => page.context()))) await context.close();
});

describe("the library in a real browser", () => {
  it("keeps a plan through a reload, undo steps included", async () => {
    const page = await tab();
    expect(await start(page)).toBeNull();
    await rename(page, "One");
    expect(await rename(page, "Two")).toMatchObject({ state: "kept" });
    await page.reload();
    await start(page);
    expect(await nameOn(page)).toBe("Two");
    await page.evaluate(() => window.storageBench.undo());
    expect(await nameOn(page)).toBe("One");
  });

  it("lets two tabs work on one plan without either losing a word", async () => {
    const one = await tab();
    await start(one);
    await rename(one, "Shared");
    const two = await tab(one);
    await start(two);
    expect(await nameOn(two)).toBe("Shared");
    expect(await rename(two, "by two")).toMatchObject({ state: "kept-as-copy" });
    expect(await rename(one, "by one")).toMatchObject({ state: "kept" });
    expect(await names(one)).toEqual(["by one", "by two"]);
  });

  it("hands a plan over when the tab that had it is closed", async () => {
    const one = await tab();
    await start(one);
    await rename(one, "Shared");
    const two = await tab(one);
    await start(two);
    await one.close();
    expect(await rename(two, "by two")).toMatchObject({ state: "kept" });
    expect(await names(two)).toEqual(["by two"]);
  });

  it("keeps the work when another tab throws the whole storage away", async () => {
    const one = await tab();
    await start(one);
    await rename(one, "Before");
    const two = await tab(one);
    await two.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.deleteDatabase("glintwright");
          request.onsuccess = () => resolve();
          request.onerror = () => reject(request.error);
        }),
    );
    expect(await rename(one, "After")).toMatchObject({ state: "kept-as-copy" });
    expect(await names(one)).toEqual(["After"]);
  });
});

describe("storage that fails in a real browser", () => {
  it("is missing: works in memory and says so", async () => {
    const page = await tab(undefined, () => Object.defineProperty(window, "indexedDB", { value: undefined }));
    expect(await start(page)).toBe("missing");
    expect(await rename(page, "Memory")).toEqual({ state: "in-memory", fault: "missing" });
    expect(await names(page)).toEqual(["Memory"]);
  });

  it("is refused: works in memory and says so", async () => {
    const page = await tab(undefined, () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("refused", "SecurityError");
      };
      Object.defineProperty(window, "localStorage", {
        get: () => {
          throw new DOMException("refused", "SecurityError");
        },
      });
    });
    expect(await start(page)).toBe("denied");
    expect(await rename(page, "Memory")).toEqual({ state: "in-memory", fault: "denied" });
  });

  it("is held by a tab that doesn't let go: works in memory and says so", async () => {
    const other = await tab();
    await other.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const held = indexedDB.open("glintwright", 1);
          held.onsuccess = () => {
            indexedDB.deleteDatabase("glintwright");
            resolve();
          };
        }),
    );
    const page = await tab(other);
    expect(await start(page)).toBe("blocked");
    expect(await rename(page, "Memory")).toEqual({ state: "in-memory", fault: "blocked" });
  });

  it("is full: says so, keeps the work on the bench, and keeps it when there is room again", async () => {
    const page = await tab();
    await start(page);
    const devtools = await page.context().newCDPSession(page);
    const origin = new URL(address).origin;
    await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1000 });
    expect(await rename(page, "Large", "x".repeat(19_000))).toMatchObject({ state: "failed", fault: "full" });
    expect(await nameOn(page)).toBe("Large");
    await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1e9 });
    expect(await rename(page, "Large, again")).toMatchObject({ state: "kept" });
    expect(await names(page)).toEqual(["Large, again"]);
  });

  describe("is full", () => {
    /** The room that the browser gives this page from now on, bytes. What it has said there is it believes for a while. */
    async function giveRoom(page: Page, quotaSize: number): Promise<void> {
      const devtools = await page.context().newCDPSession(page);
      await devtools.send("Storage.overrideQuotaForOrigin", { origin: new URL(address).origin, quotaSize });
    }
    const PLENTY = 1e9;
    const status = (page: Page) => page.evaluate(() => window.storageBench.status());
    const versions = (page: Page) => page.evaluate(() => window.storageBench.versions());
    const keepVersion = (page: Page, label: string) =>
      page.evaluate((said) => window.storageBench.keepVersion(said), label);

    it("while a version is kept, or the plan: says so, what was kept stays, and it is kept by itself once there is room", async () => {
      const page = await tab();
      await giveRoom(page, 150_000);
      await start(page);
      expect(await rename(page, "Before", noise(15_000))).toMatchObject({ state: "kept" });
      let kept = 0;
      let fault = null;
      while (fault === null && kept < 20) {
        fault = await keepVersion(page, `version ${kept}`);
        if (fault === null) kept++;
      }
      expect(fault).toBe("full");
      expect(await versions(page)).toHaveLength(kept);
      expect(await rename(page, "After", noise(19_000))).toMatchObject({
        state: "failed",
        fault: "full",
      });
      expect(await names(page)).toEqual(["Before"]);
      // written ahead all the same: gone now, nothing is lost
      expect(await page.evaluate(() => window.storageBench.wouldLose())).toBe(false);
      await giveRoom(page, PLENTY);
      await expect.poll(() => status(page)).toBe("kept");
      expect(await names(page)).toEqual(["After"]);
      expect(await keepVersion(page, "the last")).toBeNull();
      expect(await versions(page)).toHaveLength(kept + 1);
    });

    it("while a picture is kept: leaving asks until there is room, then plan and picture are there by themselves", async () => {
      const page = await tab();
      await giveRoom(page, 300_000);
      await start(page);
      expect(await rename(page, "Bare")).toMatchObject({ state: "kept" });
      const putPicture = page.evaluate(() => window.storageBench.putPicture(2, 500));
      expect(await putPicture).toMatchObject({ state: "failed", fault: "full" });
      expect(await page.evaluate(() => window.storageBench.wouldLose())).toBe(true);
      expect(await page.evaluate(() => window.storageBench.hasPicture(2, 500))).toBe(true);
      await giveRoom(page, PLENTY);
      await expect.poll(() => status(page)).toBe("kept");
      expect(await page.evaluate(() => window.storageBench.wouldLose())).toBe(false);
      await page.reload();
      await start(page);
      expect(await page.evaluate(() => window.storageBench.hasPicture(2, 500))).toBe(true);
    });

    it("of pictures that no plan has any more: they go at once where no other window is at work", async () => {
      const page = await tab();
      // what was just written may count twice until the browser has tidied up behind itself: the first fits even so, both never do
      await giveRoom(page, 1_450_000);
      await start(page);
      expect(await page.evaluate(() => window.storageBench.putPicture(3, 350))).toMatchObject({
        state: "kept",
      });
      await page.evaluate(() => window.storageBench.beginAnew());
      const second = page.evaluate(() => window.storageBench.putPicture(4, 500));
      expect(await second).toMatchObject({ state: "failed", fault: "full" });
      const pictures = () => page.evaluate(() => window.storageBench.pictures());
      const [first, ...others] = await pictures();
      expect(others).toEqual([]);
      await page.evaluate(() => window.storageBench.eraseOthers());
      // the new one may be kept by now, since saving tries again by itself
      await expect.poll(pictures).not.toContain(first);
      // the browser counts what was erased as room only once it has tidied up behind itself, which may take it minutes
      await giveRoom(page, PLENTY);
      // asked for at once: by itself it tries again after up to a minute
      await expect.poll(() => rename(page, "Room")).toMatchObject({ state: "kept" });
      expect(await pictures()).toHaveLength(1);
      await page.reload();
      await start(page);
      expect(await page.evaluate(() => window.storageBench.hasPicture(4, 500))).toBe(true);
    });
  });

  it("was changed by a newer page: works in memory, says so, and leaves it as it is", async () => {
    const page = await tab();
    await page.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open("glintwright", 99);
          opening.onupgradeneeded = () => opening.result.createObjectStore("of tomorrow", { keyPath: "id" });
          opening.onsuccess = () => {
            opening.result.close();
            resolve();
          };
        }),
    );
    expect(await start(page)).toBe("newer");
    expect(await rename(page, "Memory")).toEqual({ state: "in-memory", fault: "newer" });
    expect(
      await page.evaluate(async () => (await indexedDB.databases()).map(({ version }) => version)),
    ).toEqual([99]);
  });

  it("is whole and only the small shelf refused: keeps plans, and finds the last one again", async () => {
    const page = await tab(undefined, () =>
      Object.defineProperty(window, "localStorage", {
        get: () => {
          throw new DOMException("refused", "SecurityError");
        },
      }),
    );
    expect(await start(page)).toBeNull();
    expect(await rename(page, "Large shelf only")).toMatchObject({ state: "kept" });
    await page.reload();
    expect(await start(page)).toBeNull();
    expect(await nameOn(page)).toBe("Large shelf only");
  });

  it("fails in the middle of a write: says so, and nothing of the write is left", async () => {
    const page = await tab();
    await start(page);
    await rename(page, "Good");
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      let broken = true;
      IDBObjectStore.prototype.put = function (...given) {
        if (broken && this.name === "histories") {
          broken = false;
          throw new DOMException("bad disk", "UnknownError");
        }
        return put.apply(this, given);
      };
    });
    expect(await rename(page, "Half")).toMatchObject({ state: "failed", fault: "damaged" });
    expect(await names(page)).toEqual(["Good"]);
    expect(await rename(page, "Whole")).toMatchObject({ state: "kept" });
    expect(await names(page)).toEqual(["Whole"]);
  });

  it("has a plan that can't be read: begins with the example, and gives the text out", async () => {
    const page = await tab();
    await start(page);
    await rename(page, "Doomed");
    const id = await page.evaluate(() => window.storageBench.planId());
    await page.evaluate(
      (planId) =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open("glintwright");
          opening.onsuccess = () => {
            const table = opening.result.transaction("plans", "readwrite").objectStore("plans");
            const reading = table.get(planId);
            reading.onsuccess = () => {
              table.put({ ...reading.result, text: "{ torn" }).onsuccess = () => {
                opening.result.close();
                resolve();
              };
            };
          };
        }),
      id,
    );
    await page.reload();
    await start(page);
    expect(await nameOn(page)).toBe("Example");
    expect(await page.evaluate((planId) => window.storageBench.open(planId), id)).toMatchObject({
      ok: false,
      why: "unreadable",
      text: "{ torn",
    });
  });
});
