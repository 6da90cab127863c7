/** A backup and what it gives back, by us or by others. */
import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import { NO_HISTORY } from "../../src/state/history.ts";
import { backupsOf, type Restored, restoreBackup } from "../../src/state/storage/backup.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import type { VersionRow } from "../../src/state/storage/port.ts";
import { backupOf, kept, libraryOn, named } from "./small-library.ts";

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
