/** Pictures are kept once each, by their hash, apart from plans: in the library, undo steps, versions, journal and backups. */
import { encode } from "fast-png";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Plan } from "../../src/core/plan/document.ts";
import { parsePlan, serializePlan } from "../../src/core/plan/file.ts";
import { pictureUrl } from "../../src/core/plan/pictures.ts";
import { NO_HISTORY } from "../../src/state/history.ts";
import { type Surroundings, startSession } from "../../src/state/session.ts";
import { backupsOf, restoreBackup } from "../../src/state/storage/backup.ts";
import { clearOutPictures } from "../../src/state/storage/clear-out.ts";
import { StorageFault } from "../../src/state/storage/faults.ts";
import { createLibrary, type Library } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import { sha256 } from "../../src/state/storage/pictures.ts";
import type { StoragePort } from "../../src/state/storage/port.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { sharedLocks } from "./faulty-port.ts";
import { samplePlan } from "./sample-plan.ts";
import { shelfOn } from "./visits.ts";

/** A picture that no other seed gives. */
function picture(seed: number): string {
  const data = Uint8Array.from({ length: 32 * 32 * 3 }, (_, i) => (i * i * (2 * seed + 1) + seed * 37) % 251);
  return pictureUrl({ kind: "png", bytes: encode({ width: 32, height: 32, channels: 3, depth: 8, data }) });
}
const [ONE, TWO] = [picture(1), picture(2)];

const showing = (name: string, pictures: Record<string, string>): Plan => ({
  ...samplePlan(),
  name,
  piece: {
    ...samplePlan().piece,
    inside: Object.keys(pictures).map((id) => ({
      kind: "picture",
      shape: "disc",
      diameterMm: 8,
      atMm: [0, 0, 0],
      picture: id,
    })),
  },
  pictures,
});
const step = (from: Record<string, string>, to: Record<string, string>) => ({
  label: { about: "piece" as const },
  patches: [{ op: "replace" as const, path: ["pictures"], value: to }],
  inverse: [{ op: "replace" as const, path: ["pictures"], value: from }],
});
async function kept(library: Library, plan: Plan, history = NO_HISTORY): Promise<string> {
  const keeping = await library.keep(null, plan, history);
  if (!keeping.kept) throw new Error("not kept");
  return keeping.planId;
}
async function opened(library: Library, id: string) {
  const opening = await library.open(id);
  if (!opening.ok) throw new Error(`not opened: ${opening.fault.code}`);
  return opening;
}
/** All that lies in the storage but the pictures' own table, as text. */
async function allTexts(port: StoragePort): Promise<string> {
  const rows = await Promise.all(
    (["plans", "histories", "versions"] as const).map((table) => port.all(table)),
  );
  return JSON.stringify(rows);
}

describe("the name of a picture", () => {
  it.each(["the browser's", "ours on plain http"])(
    "is its SHA-256 (FIPS 180-4, the example of one block), %s",
    async (whose) => {
      const subtle = whose === "the browser's" ? crypto.subtle : undefined;
      const ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
      expect(await (subtle ? sha256("abc", subtle) : sha256("abc", null))).toBe(ABC);
    },
  );
});

describe("a picture in the library", () => {
  it("lies there once, however many plans, versions and steps show it, and each comes back whole", async () => {
    const port = memoryPort();
    const library = createLibrary({ port });
    const plan = showing("A", { mine: ONE });
    const history = { undo: [step({ mine: TWO }, { mine: ONE })], redo: [] };
    const a = await kept(library, plan, history);
    const b = await kept(library, showing("B", { other: ONE, mine: TWO }));
    const version = await library.addVersion(a, "first", plan);
    expect(await port.ids("pictures")).toHaveLength(2);
    expect(await allTexts(port)).not.toContain("base64");

    // read by another page
    const later = createLibrary({ port });
    expect((await opened(later, a)).file.plan).toEqual(plan);
    expect((await opened(later, a)).history).toEqual(history);
    expect((await opened(later, b)).file.plan.pictures).toEqual({ other: ONE, mine: TWO });
    expect(await later.version(version.id)).toEqual(plan);
    expect(await later.idOf(serializePlan(plan))).toBe(a);
    expect((await later.list()).map(({ name, about }) => [name, about?.tiers]).sort()).toEqual([
      ["A", 3],
      ["B", 3],
    ]);
    const copy = await later.duplicate(a, "C");
    expect((await opened(later, copy ?? "")).file.plan).toEqual({ ...plan, name: "C" });
  });

  it("that is gone, or is another than its name says, leaves the plan with an id and no picture", async () => {
    const port = memoryPort();
    const a = await kept(createLibrary({ port }), showing("A", { mine: ONE, other: TWO }));
    const [first, second] = await port.all("pictures");
    await port.write([
      { table: "pictures", erase: first.id },
      { table: "pictures", put: { ...second, url: picture(3) } },
    ]);
    const { plan } = (await opened(createLibrary({ port }), a)).file;
    expect(plan.pictures).toEqual({});
    expect(plan.piece.inside).toHaveLength(2);
  });

  it("is told from a text that only looks like its name", async () => {
    const port = memoryPort();
    const library = createLibrary({ port });
    await kept(library, showing("A", { mine: ONE }));
    const [{ id: hash }] = await port.all("pictures");
    for (const name of [
      `glintwright-picture:${hash}`,
      `glintwright-picture::${hash}`,
      "glintwright-picture:",
    ]) {
      const id = await kept(library, showing(name, { mine: ONE }));
      expect((await opened(createLibrary({ port }), id)).file.plan.name).toBe(name);
    }
  });

  it("that stands in a plan's text itself, as it did once, is read from there", async () => {
    const port = memoryPort();
    const plan = showing("A", { mine: ONE });
    const dates = { createdAt: 1, savedAt: 1, archivedAt: null, deletedAt: null };
    await port.write([
      { table: "plans", put: { id: "old", revision: 1, text: serializePlan(plan), ...dates } },
    ]);
    expect((await opened(createLibrary({ port }), "old")).file.plan).toEqual(plan);
  });

  it("goes when nothing has named it on two visits in a row, and stays where another window has written it ahead", async () => {
    const port = memoryPort();
    const library = createLibrary({ port });
    const a = await kept(library, showing("A", { mine: ONE }));
    await kept(library, showing("B", { mine: TWO }));
    const [{ id: hash }] = (await port.all("pictures")).filter(({ url }) => url === ONE);
    await library.erase(a);
    const notes = new Map<string, string>();
    const shelf = {
      getItem: (key: string) => notes.get(key) ?? null,
      setItem: (key: string, value: string) => void notes.set(key, value),
      key: (i: number) => [...notes.keys()][i] ?? null,
      get length() {
        return notes.size;
      },
    };
    await clearOutPictures(library, shelf);
    expect(await port.ids("pictures")).toHaveLength(2);
    const line = { text: JSON.stringify({ pictures: { mine: `glintwright-picture:${hash}` } }) };
    notes.set("glintwright-journal-x", JSON.stringify(line));
    await clearOutPictures(library, shelf);
    expect(await port.ids("pictures")).toHaveLength(2);
    notes.delete("glintwright-journal-x");
    await clearOutPictures(library, shelf);
    await clearOutPictures(library, shelf);
    expect((await port.all("pictures")).map(({ url }) => url)).toEqual([TWO]);
    // and is kept again for whoever shows it again
    const again = await kept(library, showing("A", { mine: ONE }));
    expect((await opened(createLibrary({ port }), again)).file.plan.pictures).toEqual({ mine: ONE });
  });
});

describe("a picture on the bench", () => {
  const browser = (port: StoragePort) => {
    const shelf = new Map<string, string>();
    const around: Surroundings = {
      openPort: async () => port,
      locks: sharedLocks(),
      otherTabs: null,
      shelf: shelfOn(shelf),
      persist: async () => true,
      now: () => 1,
    };
    return {
      shelf,
      visit: () => startSession(createPlanStore({ plan: samplePlan(), depthOf: () => 0 }), around),
    };
  };
  const lines = (shelf: Map<string, string>) =>
    [...shelf].filter(([key]) => key.startsWith("glintwright-journal-")).map(([, line]) => line);

  it("is kept at once; what is written ahead names it and never holds it, and the next visit finds both", async () => {
    const port = { ...memoryPort(), durable: true };
    const { shelf, visit } = browser(port);
    const tab = await visit();
    const pictures = { mine: picture(7) };
    const { inside } = showing("", pictures).piece;
    tab.store.getState().dispatch({ type: "set-field", path: ["pictures"], value: pictures });
    // its name isn't known yet: gone now, it would be lost, and leaving asks
    expect(tab.wouldLose()).toBe(true);
    await expect.poll(() => tab.wouldLose()).toBe(false);
    tab.store.getState().dispatch({ type: "set-piece", change: { inside } });
    expect(tab.wouldLose()).toBe(false);
    expect(lines(shelf)).toHaveLength(1);
    expect(lines(shelf)[0]).not.toContain("base64");
    // the window is gone before autosave's rest is over
    tab.stop();
    const next = await visit();
    expect(next.store.getState().plan.pictures).toEqual(pictures);
    expect(next.store.getState().plan.piece.inside).toEqual(inside);
    expect(next.store.getState().undo() && next.store.getState().undo()).toBe(true);
    expect(next.store.getState().plan.pictures).toBeUndefined();
    next.stop();
  });

  it("that was kept ahead of the plan is never lost, not for a moment, nor is one of a file that was opened", async () => {
    const port = { ...memoryPort(), durable: true };
    const { shelf, visit } = browser(port);
    const tab = await visit();
    const pictures = { mine: picture(21) };
    await tab.keepAhead({ pictures });
    tab.store.getState().dispatch({ type: "set-field", path: ["pictures"], value: pictures });
    expect(tab.wouldLose()).toBe(false);
    expect(lines(shelf)).toHaveLength(1);
    await tab.layPlan({ plan: showing("From a file", { other: picture(22) }), unknown: [] });
    tab.store.getState().dispatch({ type: "set-name", name: "Changed" });
    expect(tab.wouldLose()).toBe(false);
    tab.stop();
    const next = await visit();
    expect(next.store.getState().plan.name).toBe("Changed");
    expect(next.store.getState().plan.pictures).toEqual({ other: picture(22) });
    next.stop();
  });

  it("that no plan has any more makes room at once where there is none, unless another window is at work", async () => {
    const memory = { ...memoryPort(), durable: true };
    // room for one picture
    const port: StoragePort = {
      ...memory,
      write: async (changes, only) => {
        const isNew = changes.some((change) => change.table === "pictures" && "put" in change);
        if (isNew && (await memory.ids("pictures")).length > 0) throw new StorageFault("full", "no room");
        return memory.write(changes, only);
      },
    };
    const { visit } = browser(port);
    const tab = await visit();
    const put = (seed: number) => {
      const plan = showing(`with ${seed}`, { mine: picture(seed) });
      tab.store.getState().dispatch({ type: "replace-plan", plan });
      return tab.autosave.flush();
    };
    expect(await put(31)).toMatchObject({ state: "kept" });
    const version = await tab.library.addVersion(
      tab.store.getState().planId ?? "",
      "first",
      tab.store.getState().plan,
    );
    await tab.layPlan({ plan: samplePlan(), unknown: [] });
    expect(await put(32)).toMatchObject({ state: "failed", fault: "full" });
    const [first] = (await tab.library.list()).map(({ id }) => id);
    const bringBack = await tab.library.removeVersion(version.id);
    const other = await visit();
    await tab.library.erase(first);
    expect(await tab.autosave.flush()).toMatchObject({ state: "failed", fault: "full" });
    other.stop();
    await expect.poll(() => tab.autosave.flush()).toMatchObject({ state: "kept" });
    expect((await memory.all("pictures")).map(({ url }) => url)).toEqual([picture(32)]);
    // what can be taken back comes back with its picture, once there is room for it
    await memory.write((await memory.ids("pictures")).map((erase) => ({ table: "pictures", erase })));
    await bringBack();
    expect((await tab.library.version(version.id))?.pictures).toEqual({ mine: picture(31) });
    tab.stop();
  });

  it("that can't be kept ahead stops nothing: leaving asks then", async () => {
    const port = { ...memoryPort(), durable: true };
    const full: StoragePort = {
      ...port,
      write: async (changes, only) => {
        if (changes.some(({ table }) => table === "pictures")) throw new StorageFault("full", "no room");
        return port.write(changes, only);
      },
    };
    const tab = await browser(full).visit();
    const pictures = { mine: picture(23) };
    await tab.keepAhead({ pictures });
    tab.store.getState().dispatch({ type: "set-field", path: ["pictures"], value: pictures });
    expect(tab.wouldLose()).toBe(true);
    expect(await tab.autosave.flush()).toMatchObject({ state: "failed", fault: "full" });
    tab.stop();
  });

  it("that the storage takes its time with counts as lost until it is there, also when it is written ahead", async () => {
    let letGo = (): void => undefined;
    const gate = new Promise<void>((open) => {
      letGo = open;
    });
    const port = { ...memoryPort(), durable: true };
    let isBegun = false;
    const slow: StoragePort = {
      ...port,
      write: async (changes, only) => {
        if (changes.some(({ table }) => table === "pictures")) {
          isBegun = true;
          await gate;
        }
        return port.write(changes, only);
      },
    };
    const { shelf, visit } = browser(slow);
    const tab = await visit();
    tab.store.getState().dispatch({ type: "set-field", path: ["pictures"], value: { mine: picture(8) } });
    await expect.poll(() => isBegun).toBe(true);
    tab.store.getState().dispatch({ type: "set-name", name: "written ahead" });
    expect(lines(shelf)[0]).toContain("written ahead");
    expect(tab.wouldLose()).toBe(true);
    letGo();
    await expect.poll(() => tab.wouldLose()).toBe(false);
    tab.stop();
  });
});

describe("a picture in a backup", () => {
  async function backedUp(library: Library): Promise<Uint8Array<ArrayBuffer>> {
    const { value, done } = await backupsOf(library).next();
    if (done) throw new Error("no backup");
    return value;
  }

  it("lies there as a file for steps and versions, once; the plan's own file is whole; all of it comes back", async () => {
    const library = createLibrary({ port: memoryPort() });
    const plan = showing("A", { mine: ONE });
    const history = { undo: [step({ mine: TWO }, { mine: ONE })], redo: [] };
    const id = await kept(library, plan, history);
    for (const label of ["first", "second"]) await library.addVersion(id, label, plan);
    const bytes = await backedUp(library);
    const files = unzipSync(bytes);
    expect(Object.keys(files).filter((path) => path.startsWith("images/"))).toHaveLength(2);
    const [planPath] = Object.keys(files).filter((path) => path.startsWith("plans/"));
    expect(parsePlan(strFromU8(files[planPath])).plan).toEqual(plan);
    const others = Object.keys(files).filter((path) => /^(versions|histories)/.test(path));
    for (const path of others) expect(strFromU8(files[path])).not.toContain("base64");

    const port = memoryPort();
    const other = createLibrary({ port });
    expect(await restoreBackup(other, bytes)).toMatchObject([{ what: "added", id }]);
    expect((await opened(other, id)).history).toEqual(history);
    const versions = await other.versions(id);
    expect(await Promise.all(versions.map((one) => other.version(one.id)))).toEqual([plan, plan]);
    expect(await allTexts(port)).not.toContain("base64");
    expect(await restoreBackup(other, bytes)).toMatchObject([{ what: "already-there" }]);
  });

  it("can't take another picture's name", async () => {
    const library = createLibrary({ port: memoryPort() });
    const id = await kept(library, showing("A", { mine: ONE }));
    await library.addVersion(id, "first", showing("A", { mine: ONE }));
    const files = unzipSync(await backedUp(library));
    const [image] = Object.keys(files).filter((path) => path.startsWith("images/"));
    const lied = zipSync({
      ...files,
      [image]: unzipSync(await backedUp(await libraryShowing(TWO)))[await imageOf(TWO)],
    });

    const port = memoryPort();
    const victim = createLibrary({ port });
    const own = await kept(victim, showing("mine", { mine: ONE }));
    await restoreBackup(victim, lied as Uint8Array<ArrayBuffer>);
    expect((await opened(createLibrary({ port }), own)).file.plan.pictures).toEqual({ mine: ONE });
    const [version] = await victim.versions(id);
    expect((await victim.version(version.id))?.pictures).toEqual({ mine: TWO });
  });
  async function libraryShowing(url: string): Promise<Library> {
    const library = createLibrary({ port: memoryPort() });
    const id = await kept(library, showing("X", { x: url }));
    await library.addVersion(id, "x", showing("X", { x: url }));
    return library;
  }
  const imageOf = async (url: string) => `images/${await sha256(url)}.png`;

  it("that is in no file leaves a version without it", async () => {
    const library = createLibrary({ port: memoryPort() });
    const id = await kept(library, showing("A", { mine: ONE }));
    await library.addVersion(id, "first", showing("A", { mine: ONE }));
    const files = unzipSync(await backedUp(library));
    const rest = Object.fromEntries(Object.entries(files).filter(([path]) => !path.startsWith("images/")));
    const other = createLibrary({ port: memoryPort() });
    await restoreBackup(other, zipSync({ ...rest, "note.txt": strToU8("") }) as Uint8Array<ArrayBuffer>);
    const [version] = await other.versions(id);
    expect((await other.version(version.id))?.pictures).toEqual({});
  });
});
