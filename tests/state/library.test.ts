import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import { FILE } from "../../src/core/plan/limits.ts";
import { NO_HISTORY } from "../../src/state/history.ts";
import { backupsOf, type Restored, restoreBackup } from "../../src/state/storage/backup.ts";
import { createLibrary } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import type { VersionRow } from "../../src/state/storage/port.ts";
import { faultyPort } from "./faulty-port.ts";
import { samplePlan } from "./sample-plan.ts";

/** A library whose clock ticks once a look and whose ids count. */
function libraryOn(port = memoryPort(), tab = "p") {
  let time = 1000;
  let ids = 0;
  return createLibrary({ port, now: () => time++, freshId: () => `${tab}${++ids}` });
}
/** The one file of a small library. */
async function backupOf(library: ReturnType<typeof libraryOn>): Promise<Uint8Array<ArrayBuffer>> {
  const { value, done } = await backupsOf(library).next();
  if (done) throw new Error("no backup");
  return value;
}
const named = (name: string) => ({ ...samplePlan(), name });

async function kept(library: ReturnType<typeof libraryOn>, name: string): Promise<string> {
  const keeping = await library.keep(null, named(name), NO_HISTORY);
  if (!keeping.kept) throw new Error("not kept");
  return keeping.planId;
}

describe("the library", () => {
  it("lists plans newest first and finds them by part of their name", async () => {
    const library = libraryOn();
    for (const name of ["Harbour", "Lighthouse", "Low harbour light"]) await kept(library, name);
    expect((await library.list()).map((plan) => plan.name)).toEqual([
      "Low harbour light",
      "Lighthouse",
      "Harbour",
    ]);
    expect((await library.list("out", " HARB ")).map((plan) => plan.name)).toEqual([
      "Low harbour light",
      "Harbour",
    ]);
    expect((await library.list())[0].about).toEqual({ diameterMm: 32, tiers: 3, facets: 30 });
  });

  it("gives back the plan and its history as they were kept", async () => {
    const library = libraryOn();
    const step = { label: { about: "name" as const }, patches: [], inverse: [] };
    const keeping = await library.keep(null, named("A"), { undo: [step], redo: [] });
    const opening = keeping.kept && (await library.open(keeping.planId));
    expect(opening).toMatchObject({
      ok: true,
      file: { plan: named("A") },
      history: { undo: [step], redo: [] },
    });
  });

  it("copies, archives, deletes and brings back", async () => {
    const library = libraryOn();
    const id = await kept(library, "A");
    await library.setThumbnail(id, "data:image/png;base64,AAAA");
    const copy = await library.duplicate(id, "A, second try");
    expect((await library.list()).map(({ name, thumbnail }) => [name, thumbnail])).toEqual([
      ["A, second try", "data:image/png;base64,AAAA"],
      ["A", "data:image/png;base64,AAAA"],
    ]);
    await library.archive(id);
    expect((await library.list()).map((plan) => plan.id)).toEqual([copy]);
    expect((await library.list("archived")).map((plan) => plan.id)).toEqual([id]);
    await library.remove(id);
    expect(await library.list("archived")).toEqual([]);
    expect((await library.list("deleted")).map((plan) => plan.id)).toEqual([id]);
    await library.restore(id);
    await library.unarchive(id);
    expect((await library.list()).map((plan) => plan.id)).toContain(id);
  });

  it("keeps named versions of a plan, newest first, apart from those of another", async () => {
    const library = libraryOn();
    const [a, b] = [await kept(library, "A"), await kept(library, "B")];
    for (const label of ["before the star", "as ordered"]) await library.addVersion(a, label, named(label));
    await library.addVersion(b, "other", named("other"));
    const versions = await library.versions(a);
    expect(versions.map((version) => version.label)).toEqual(["as ordered", "before the star"]);
    expect((await library.version(versions[1].id))?.name).toBe("before the star");
    const bringBack = await library.removeVersion(versions[0].id);
    expect(await library.versions(a)).toHaveLength(1);
    await bringBack();
    expect(await library.versions(a)).toEqual(versions);
  });

  it("never writes over what another tab wrote since", async () => {
    const port = memoryPort();
    const [one, two] = [libraryOn(port, "a"), libraryOn(port, "b")];
    const id = await kept(one, "A");
    await two.open(id);
    expect((await two.keep(id, named("by two"), NO_HISTORY)).kept).toBe(true);
    expect((await one.keep(id, named("by one"), NO_HISTORY)).kept).toBe(false);
    expect((await one.list()).map((plan) => plan.name)).toEqual(["by two"]);
  });

  it("doesn't take a plan that it only archived for one that it knows", async () => {
    const port = memoryPort();
    const [one, two] = [libraryOn(port, "a"), libraryOn(port, "b")];
    const id = await kept(one, "A");
    await two.archive(id);
    expect((await two.keep(id, named("unseen"), NO_HISTORY)).kept).toBe(false);
    expect((await one.keep(id, named("stale"), NO_HISTORY)).kept).toBe(false);
  });

  it("notices that what was read back is not what was written", async () => {
    const library = libraryOn(faultyPort(memoryPort(), { silentDamage: true }));
    await expect(library.keep(null, named("A"), NO_HISTORY)).rejects.toMatchObject({ kind: "damaged" });
  });

  it("shows a plan that can't be read any more, and gives its text out", async () => {
    const library = libraryOn();
    const id = await library.add("{ half a plan");
    expect((await library.list())[0]).toMatchObject({ id, name: "", about: null });
    expect(await library.open(id)).toEqual({
      ok: false,
      fault: { code: "json-broken", data: { line: 1, column: 3 } },
      text: "{ half a plan",
    });
    expect(await library.open("nowhere")).toMatchObject({ ok: false, text: null });
  });

  it("opens a plan whose history can't be read, without the history", async () => {
    const library = libraryOn();
    const id = await kept(library, "A");
    await library.port.write([{ table: "histories", put: { id, text: "{{{" } }]);
    expect(await library.open(id)).toMatchObject({ ok: true, history: NO_HISTORY });
  });

  it("takes pictures only, and only small ones", async () => {
    const library = libraryOn();
    const id = await kept(library, "A");
    expect(await library.setThumbnail(id, "javascript:alert(1)")).toBe(false);
    expect(await library.setThumbnail(id, `data:image/png;base64,${"A".repeat(400_000)}`)).toBe(false);
  });

  it("tells its watchers of every change until they stop", async () => {
    const library = libraryOn();
    let told = 0;
    const stop = library.watch(() => {
      told++;
    });
    const id = await kept(library, "A");
    await library.archive(id);
    stop();
    await library.unarchive(id);
    expect(told).toBe(2);
  });
});

describe("two tabs with one library", () => {
  it("keep both versions that they make at the same moment", async () => {
    const port = memoryPort();
    const [one, two] = ["a", "b"].map((tab) => createLibrary({ port, now: () => 5, freshId: () => tab }));
    await Promise.all([one.addVersion("p", "by one", named("1")), two.addVersion("p", "by two", named("2"))]);
    expect((await one.versions("p")).map((version) => version.label).sort()).toEqual(["by one", "by two"]);
  });

  it("hear of each other's changes", async () => {
    const port = memoryPort();
    const [here, there] = [new BroadcastChannel("shelf"), new BroadcastChannel("shelf")];
    const one = createLibrary({ port, otherTabs: here, freshId: () => "a" });
    const two = createLibrary({ port, otherTabs: there });
    const heard = new Promise<string[]>((resolve) => {
      two.watch(async () => resolve((await two.list()).map((plan) => plan.name)));
    });
    await one.keep(null, named("From one"), NO_HISTORY);
    expect(await heard).toEqual(["From one"]);
    here.close();
    there.close();
  });
});

describe("a backup", () => {
  it("restores everything into an empty library, with histories, pictures and versions", async () => {
    const library = libraryOn();
    const step = { label: { about: "name" as const }, patches: [], inverse: [] };
    const keeping = await library.keep(null, named("Größe / 7"), { undo: [step], redo: [] });
    const id = keeping.kept ? keeping.planId : "";
    await library.setThumbnail(id, "data:image/png;base64,AAAA");
    await library.addVersion(id, "first", named("first"));
    await library.archive(id);
    const gone = await kept(library, "deleted");
    await library.remove(gone);

    const other = libraryOn(memoryPort(), "q");
    const outcome = await restoreBackup(other, await backupOf(library));
    expect(outcome).toEqual([{ name: "Größe / 7", id, what: "added" }]);
    expect((await other.list("archived"))[0]).toMatchObject({ id, thumbnail: "data:image/png;base64,AAAA" });
    expect(await other.open(id)).toMatchObject({ ok: true, history: { undo: [step], redo: [] } });
    const versions = await other.versions(id);
    expect((await other.version(versions[0].id))?.name).toBe("first");
  });

  it("never overwrites: what differs is put beside, what is the same stays, what was deleted comes back", async () => {
    const library = libraryOn();
    const ids = [await kept(library, "same"), await kept(library, "changed"), await kept(library, "deleted")];
    const bytes = await backupOf(library);
    await library.keep(ids[1], named("changed since"), NO_HISTORY);
    await library.remove(ids[2]);
    const outcome = await restoreBackup(library, bytes);
    expect(outcome.map(({ name, what }) => [name, what])).toEqual([
      ["same", "already-there"],
      ["changed", "added-beside"],
      ["deleted", "added"],
    ]);
    expect((await library.list()).map((plan) => plan.name).sort()).toEqual([
      "changed",
      "changed since",
      "deleted",
      "same",
    ]);
    expect((await restoreBackup(library, bytes)).map(({ what }) => what)[0]).toBe("already-there");
  });

  it("carries a damaged plan along and tells which one can't be read", async () => {
    const library = libraryOn();
    await kept(library, "good");
    await library.add("{ half a plan");
    const outcome = await restoreBackup(libraryOn(memoryPort(), "q"), await backupOf(library));
    expect(outcome.map(({ what }) => what)).toEqual(["added", "unreadable"]);
    expect(outcome[1].fault?.code).toBe("json-broken");
  });

  it("is refused in words when the file is none or is cut off", async () => {
    const library = libraryOn();
    await kept(library, "A");
    const bytes = await backupOf(library);
    for (const broken of [
      new Uint8Array(),
      new TextEncoder().encode("hello"),
      bytes.slice(0, bytes.length - 40),
    ])
      await expect(restoreBackup(library, broken)).rejects.toMatchObject({ name: "PlanFileError" });
    expect((await library.list()).length).toBe(1);
  });

  it("is refused before it is unpacked when it is too large, holds too many files or says it unfolds to too much", async () => {
    const library = libraryOn();
    await kept(library, "A");
    const large = await backupOf(library);
    // uncompressed size in a central directory header: 24 bytes after its signature (APPNOTE.TXT 6.3, 4.3.12)
    const header = Buffer.from(large).indexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
    new DataView(large.buffer).setUint32(header + 24, 401e6, true);
    const none = new Uint8Array();
    const many = Object.fromEntries(Array.from({ length: 30_001 }, (_, i) => [String(i), none]));
    for (const bytes of [large, zipSync(many, { level: 0 }), new Uint8Array(100e6 + 1)])
      await expect(restoreBackup(library, new Uint8Array(bytes))).rejects.toMatchObject({
        fault: { code: "backup-too-large" },
      });
  });

  it("of more than one file can hold is several, and all plans come back from them", async () => {
    const library = libraryOn();
    const names = Array.from({ length: 7 }, (_, i) => `Plan ${i}`);
    for (const name of names) {
      const id = await kept(library, name);
      await library.addVersion(id, "first", named("first"));
    }
    for (const room of [
      { bytes: 1e6, files: 9, list: 1e6 },
      { bytes: 5000, files: 1e6, list: 1e6 },
      { bytes: 1e6, files: 1e6, list: 900 },
      { bytes: 1, files: 1, list: 1 },
    ]) {
      const other = libraryOn(memoryPort(), "q");
      const outcome: Restored[] = [];
      let parts = 0;
      for await (const bytes of backupsOf(library, room)) {
        parts++;
        outcome.push(...(await restoreBackup(other, bytes)));
      }
      expect(parts).toBeGreaterThan(1);
      expect(outcome.map(({ what }) => what)).toEqual(names.map(() => "added"));
      expect((await other.list()).map(({ name }) => name).sort()).toEqual(names);
    }
  });

  it("of one plan with more versions than a file can hold is several, and each version comes back once", async () => {
    const library = libraryOn();
    const id = await kept(library, "Long in the making");
    const labels = Array.from({ length: 9 }, (_, i) => `state ${i}`);
    for (const label of labels) await library.addVersion(id, label, named(label));
    const one = named("Long in the making");
    for (const room of [
      { bytes: 4 * JSON.stringify(one, null, 2).length, files: 1e6, list: 1e6 },
      { bytes: 1e6, files: 9, list: 1e6 },
      { bytes: 1e6, files: 1e6, list: 6000 },
      { bytes: 1, files: 1, list: 1 },
    ]) {
      const parts: Uint8Array<ArrayBuffer>[] = [];
      for await (const bytes of backupsOf(library, room)) parts.push(bytes);
      expect(parts.length).toBeGreaterThan(2);
      const empty = libraryOn(memoryPort(), "q");
      // where its id is another plan's, all of it goes beside that
      const taken = libraryOn(memoryPort());
      expect(await kept(taken, "another")).toBe(id);
      for (const other of [empty, taken]) {
        for (const part of [...parts, ...parts]) await restoreBackup(other, part);
        const [plan, ...rest] = await other.list("out", one.name);
        expect(rest).toEqual([]);
        const versions = await other.versions(plan.id);
        expect(versions.map(({ label }) => label).toReversed()).toEqual(labels);
        for (const version of versions) expect(await other.version(version.id)).toEqual(named(version.label));
      }
    }
  });

  it("of nothing is one file that brings nothing back", async () => {
    expect(await restoreBackup(libraryOn(), await backupOf(libraryOn()))).toEqual([]);
  });

  it("holds every plan as a file that reads by itself", async () => {
    const library = libraryOn();
    await kept(library, "Harbour lamp");
    const { unzipSync, strFromU8 } = await import("fflate");
    const files = unzipSync(await backupOf(library));
    expect(parsePlan(strFromU8(files["plans/0001-Harbour-lamp.json"])).plan).toEqual(named("Harbour lamp"));
  });
});

describe("what was not written by this program", () => {
  it("is one line that says so, with its text; the shelf stays, and no date is beyond dates", async () => {
    const port = memoryPort();
    const library = libraryOn(port);
    await kept(library, "Good");
    const [good] = await port.all("plans");
    const { text: _text, ...noText } = good;
    await port.write([
      { table: "plans", put: { ...good, id: "late", savedAt: 1e300, createdAt: -1 } },
      { table: "plans", put: { ...noText, id: "empty" } as typeof good },
    ]);
    const rows = await library.list();
    expect(rows.map(({ id, about }) => [id, about !== null])).toContainEqual(["empty", false]);
    expect(rows).toHaveLength(3);
    for (const { savedAt, createdAt } of rows)
      for (const at of [savedAt, createdAt]) expect(() => new Date(at).toISOString()).not.toThrow();
    expect(await library.open("empty")).toMatchObject({ ok: false, text: "" });
  });

  it.each([
    [{ savedAt: 1e300 }, "plans[1].savedAt"],
    [{ id: "a/../b" }, "plans[1].id"],
    [{ versions: [{ label: 3, at: 1, plan: "x" }] }, "plans[1].versions[0].label"],
    [{ plan: 7 }, "plans[1].plan"],
  ])(
    "in a backup (%o) costs that plan alone, whose text can be saved; the others come back",
    async (wrong, place) => {
      const library = libraryOn();
      for (const name of ["A", "B", "C"]) await kept(library, name);
      const { unzipSync, strFromU8, strToU8 } = await import("fflate");
      const files = unzipSync(await backupOf(library));
      const list = JSON.parse(strFromU8(files["library.json"]));
      list.plans[1] = { ...list.plans[1], ...wrong };
      const bytes = new Uint8Array(zipSync({ ...files, "library.json": strToU8(JSON.stringify(list)) }));
      const other = libraryOn(memoryPort(), "q");
      const outcome = await restoreBackup(other, bytes);
      expect(outcome.map(({ what }) => what)).toEqual(["added", "unreadable", "added"]);
      expect(outcome[1].fault).toEqual({ code: "backup-list-broken", data: { place } });
      if ("plan" in wrong) expect(JSON.parse(outcome[1].text ?? "")).toMatchObject(wrong);
      else expect(parsePlan(outcome[1].text ?? "").plan.name).toBe("B");
      expect((await other.list()).map(({ name }) => name).sort()).toEqual(["A", "C"]);
    },
  );

  it("in a backup that is no entry at all costs that line alone", async () => {
    const { strToU8 } = await import("fflate");
    const list = { format: "glintwright-library", version: 1, plans: [null, 3, "x", []] };
    const bytes = new Uint8Array(zipSync({ "library.json": strToU8(JSON.stringify(list)) }));
    const outcome = await restoreBackup(libraryOn(), bytes);
    expect(outcome.map(({ what, text }) => [what, text])).toEqual(
      ["null", "3", '"x"', "[]"].map((text) => ["unreadable", text]),
    );
  });

  const harmless = { label: { about: "name" }, patches: [], inverse: [] };
  it.each([
    ["a label that is none", { ...harmless, label: { about: "piece", field: {} } }],
    ["a tier without a number", { ...harmless, label: { about: "tier" } }],
    [
      "a step into what all objects share",
      { ...harmless, patches: [{ op: "add", path: ["__proto__", "x"] }] },
    ],
    ["an operation that is none", { ...harmless, inverse: [{ op: "call", path: ["name"] }] }],
    ["a path that is none", { ...harmless, inverse: [{ op: "add", path: "name" }] }],
  ])("is no history where it holds %s: the plan opens without it", async (_what, step) => {
    const port = memoryPort();
    const library = libraryOn(port);
    const id = await kept(library, "A");
    for (const [some, steps] of [
      [step, 0],
      [harmless, 1],
    ] as const) {
      const text = JSON.stringify({ undo: [some], redo: [] });
      await port.write([{ table: "histories", put: { id, text } }]);
      const opening = await library.open(id);
      expect(opening.ok && opening.history.undo).toHaveLength(steps);
      const other = libraryOn(memoryPort(), "q");
      await restoreBackup(other, await backupOf(library));
      const restored = await other.open(id);
      expect(restored.ok && restored.history.undo).toHaveLength(steps);
    }
  });

  it("is no picture and no version's name where it isn't one", async () => {
    const port = memoryPort();
    const library = libraryOn(port);
    const id = await kept(library, "A");
    for (const url of ["https://example.org/x.png", 7, `data:image/png;base64,${"A".repeat(400_000)}`]) {
      await port.write([{ table: "thumbnails", put: { id, url: url as string } }]);
      expect((await library.list())[0].thumbnail).toBeNull();
    }
    const row = { id: `${id}/1`, planId: id, label: 5, at: 1e300, text: { a: 1 } };
    await port.write([{ table: "versions", put: row as unknown as VersionRow }]);
    expect(await library.versions(id)).toEqual([{ id: `${id}/1`, label: "", at: 0 }]);
    await expect(library.version(`${id}/1`)).rejects.toMatchObject({ name: "PlanFileError" });
    const other = libraryOn(memoryPort(), "q");
    expect((await restoreBackup(other, await backupOf(library)))[0].what).toBe("added");
    expect(await other.versions(id)).toHaveLength(1);
  });
});

describe("a plan that grows when it is written", () => {
  /** A list that takes this share of the longest file when nothing is spent on spaces, and nearly twice as much with them. */
  const withList = (share: number) => ({
    ...named("Long"),
    beyond: Array.from(
      { length: Math.floor((share * FILE.characters) / "12345678,".length) },
      () => 12345678,
    ),
  });

  it("is kept so that it opens again", async () => {
    const library = libraryOn();
    const long = parsePlan(JSON.stringify(withList(0.9))).plan;
    const keeping = await library.keep(null, long, NO_HISTORY);
    expect(await library.open(keeping.kept ? keeping.planId : "")).toMatchObject({ ok: true });
  });

  it("is not written when it could not be opened again", async () => {
    const library = libraryOn();
    await expect(library.keep(null, withList(1.1), NO_HISTORY)).rejects.toMatchObject({
      kind: "unreadable",
    });
    expect(await library.list()).toEqual([]);
  });
});
