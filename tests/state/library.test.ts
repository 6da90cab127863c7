/** What the library keeps, for one tab and two. */
import { describe, expect, it } from "vitest";
import { parsePlan } from "../../src/core/plan/file.ts";
import { FILE } from "../../src/core/plan/limits.ts";
import { NO_HISTORY } from "../../src/state/history.ts";
import { createLibrary } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import { faultyPort } from "./faulty-port.ts";
import { kept, libraryOn, named } from "./small-library.ts";

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
