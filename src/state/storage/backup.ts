/**
 * The whole library as a zip file, or as several where one could not be read back: every plan is a plan file of its own inside,
 * readable without this program; its undo steps and versions name their pictures, which lie beside them once each. Restoring merges: nothing in the library is ever overwritten, and what happened to each plan is
 * told; one that can't be read costs no other.
 */
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import * as z from "zod/mini";
import { parseBoundedJson } from "../../core/plan/bounded-json.ts";
import { PlanFileError, parsePlan } from "../../core/plan/file.ts";
import { type FileFault, pathText } from "../../core/plan/file-fault.ts";
import { pictureFile, pictureUrl } from "../../core/plan/pictures.ts";
import { freshId } from "../fresh-id.ts";
import { NO_HISTORY } from "../history.ts";
import { historyOf, type Library } from "./library.ts";
import { LAST_MOMENT, momentOf } from "./moment.ts";
import { hashesIn } from "./picture-marks.ts";
import type { PlanRow, RowChange, VersionRow } from "./port.ts";
import { isThumbnail, soundRow } from "./summaries.ts";
import { LONGEST_LABEL, soundVersion, versionId } from "./versions.ts";

const FORMAT = "glintwright-library";
const MANIFEST = "library.json";
/** What a backup may hold at most, so that a stranger's file can't fill the memory. */
const BOUNDS = { packedBytes: 100e6, bytes: 400e6, files: 30_000 };
/** What one file is given before the next one is begun: far enough within the bounds for a plan with all its versions. */
const PART: Room = { bytes: 80e6, files: 10_000, list: 1e6 };

const time = z.number().check(z.nonnegative(), z.maximum(LAST_MOMENT));
const text = (longest: number) => z.string().check(z.maxLength(longest));
const LONGEST_PATH = 300;
const entrySchema = z.object({
  id: z.string().check(z.regex(/^[A-Za-z0-9_-]{1,100}$/)),
  createdAt: time,
  savedAt: time,
  archivedAt: z.nullable(time),
  plan: text(LONGEST_PATH),
  history: z.optional(text(LONGEST_PATH)),
  thumbnail: z.optional(text(LONGEST_PATH)),
  versions: z.array(z.object({ label: text(LONGEST_LABEL), at: time, plan: text(LONGEST_PATH) })),
});
/** Its plans are looked at one by one. */
const manifestSchema = z.object({
  format: z.literal(FORMAT),
  version: z.literal(1),
  plans: z.array(z.unknown()),
});
type Entry = z.output<typeof entrySchema>;
type Files = Readonly<Record<string, Uint8Array>>;

/** A name that every file system takes. */
const fileName = (name: string): string =>
  name
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40) || "plan";

function nameIn(planText: string): string {
  try {
    return parsePlan(planText).plan.name;
  } catch (error) {
    if (error instanceof PlanFileError) return "unreadable"; // kept in the backup as it is
    throw error;
  }
}

/** What a file has room for: bytes of all that is in it, how many files, characters of the list of plans. */
interface Room {
  readonly bytes: number;
  readonly files: number;
  readonly list: number;
}

/** One plan with all that belongs to it, as files, and what the list says of it. */
interface Packed {
  readonly entry: Entry;
  readonly files: Readonly<Record<string, Uint8Array>>;
}

/** Where a picture lies in a backup: as the file that it is, so that anything can open it. */
const IMAGES = "images";
const imagePath = (hash: string, ending: string): string => `${IMAGES}/${hash}.${ending}`;

/** The pictures that texts name, as files. */
async function imagesOf(
  { pictures }: Library,
  texts: readonly string[],
): Promise<Record<string, Uint8Array>> {
  const wanted = [...new Set(texts.flatMap(hashesIn))];
  if (wanted.length === 0) return {};
  const found = await (await pictures.all()).read(wanted);
  return Object.fromEntries(
    [...found].map(([hash, url]) => {
      const file = pictureFile(url);
      const isWhole = file !== null && pictureUrl(file) === url;
      return isWhole ? [imagePath(hash, file.kind), file.bytes] : [imagePath(hash, "txt"), strToU8(url)];
    }),
  );
}

/** The picture with this hash in a backup, as a data URL; its hash is taken on trust. */
function imageIn(files: Files, hash: string): string | undefined {
  for (const kind of ["png", "jpeg"] as const) {
    const path = imagePath(hash, kind);
    if (Object.hasOwn(files, path)) return pictureUrl({ kind, bytes: files[path] });
  }
  return textIn(files, imagePath(hash, "txt")) ?? undefined;
}

/** What a plan's file, steps and drawing and its list entry take at the least, of files and of characters. */
const ENTRY = { files: 3, list: 2000 };
/** What the list says of one version, characters at most. */
const VERSION_LIST = 2 * LONGEST_LABEL + LONGEST_PATH;

/**
 * A plan with all that belongs to it, whole but for its versions: those that would leave a file no room come in further pieces, each
 * with the plan again, so that each file can be read by itself. One version at a time is in memory, beside what is packed.
 */
async function* piecesOf(library: Library, kept: PlanRow, place: number, room: Room): AsyncGenerator<Packed> {
  const { port, pictures } = library;
  const row = soundRow(kept);
  const text = await pictures.unpackText(row.text);
  const stem = `${String(place).padStart(4, "0")}-${fileName(nameIn(text))}`;
  const into = (
    files: Record<string, Uint8Array>,
    folder: string,
    ending: string,
    content: string,
  ): string => {
    const path = `${folder}/${stem}${ending}`;
    files[path] = strToU8(content);
    return path;
  };
  const begun = (): { files: Record<string, Uint8Array>; entry: Entry } => {
    const files: Record<string, Uint8Array> = {};
    const { id, createdAt, savedAt, archivedAt } = row;
    const plan = into(files, "plans", ".json", text);
    return { files, entry: { id, createdAt, savedAt, archivedAt, plan, versions: [] } };
  };
  let piece = begun();
  // undo steps and versions keep their marks
  const history = historyOf((await port.get("histories", row.id))?.text);
  if (history !== NO_HISTORY) {
    const steps = JSON.stringify(history);
    piece.entry.history = into(piece.files, "histories", ".json", steps);
    Object.assign(piece.files, await imagesOf(library, [steps]));
  }
  const url = (await port.get("thumbnails", row.id))?.url;
  if (isThumbnail(url)) piece.entry.thumbnail = into(piece.files, "pictures", ".txt", url);
  let bytes = bytesIn(piece.files);
  const ids = (await port.ids("versions")).filter((id) => id.startsWith(`${row.id}/`)).sort();
  for (const [k, id] of ids.entries()) {
    const version = await port.get("versions", id);
    if (!version) continue;
    const { label, at, text: then } = soundVersion(version);
    const own: Record<string, Uint8Array> = await imagesOf(library, [then]);
    const plan = into(own, "versions", `-${k + 1}.json`, then);
    const { entry } = piece;
    const count = entry.versions.length + 1;
    const fits =
      bytes + bytesIn(own) <= room.bytes &&
      ENTRY.files + 2 * count <= room.files &&
      ENTRY.list + count * VERSION_LIST <= room.list;
    if (!fits && count > 1) {
      yield piece;
      piece = begun();
      bytes = bytesIn(piece.files);
    }
    // a picture of several versions takes room once
    const fresh = Object.entries(own).filter(([path]) => !Object.hasOwn(piece.files, path));
    for (const [path, content] of fresh) {
      piece.files[path] = content;
      bytes += content.length;
    }
    piece.entry.versions.push({ label, at, plan });
  }
  yield piece;
}

const bytesIn = (files: Readonly<Record<string, Uint8Array>>): number =>
  Object.values(files).reduce((sum, { length }) => sum + length, 0);

/** A file being filled. */
class Part {
  private readonly files: Zippable = {};
  private readonly plans: Entry[] = [];
  private left: Room;
  constructor(room: Room) {
    this.left = room;
  }
  /** @returns false when there is no room for it; the first one always has */
  take({ entry, files }: Packed): boolean {
    // a picture of several plans takes room once
    const fresh = Object.entries(files).filter(([path]) => !Object.hasOwn(this.files, path));
    const contents = fresh.map(([, bytes]) => bytes);
    const left = {
      bytes: this.left.bytes - contents.reduce((sum, { length }) => sum + length, 0),
      files: this.left.files - contents.length,
      list: this.left.list - JSON.stringify(entry, null, 1).length,
    };
    if (this.plans.length > 0 && Object.values(left).some((rest) => rest < 0)) return false;
    this.left = left;
    this.plans.push(entry);
    Object.assign(this.files, files);
    return true;
  }
  zipped(): Uint8Array<ArrayBuffer> {
    const manifest = { format: FORMAT, version: 1, plans: this.plans };
    return zipSync({ ...this.files, [MANIFEST]: strToU8(JSON.stringify(manifest, null, 1)) }, { level: 6 });
  }
}

/**
 * Everything in the library except what was deleted, as zip files: one, unless there is more than can be read back from one.
 * @param room what one of them may hold
 */
export async function* backupsOf(library: Library, room = PART): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  const rows = (await library.port.all("plans")).filter((row) => momentOf(row.deletedAt) === null);
  let part = new Part(room);
  for (const [i, row] of rows.entries()) {
    let isFurther = false;
    for await (const piece of piecesOf(library, row, i + 1, room)) {
      const isTaken = !isFurther && part.take(piece);
      isFurther = true;
      if (isTaken) continue;
      yield part.zipped();
      part = new Part(room);
      part.take(piece);
    }
  }
  yield part.zipped();
}

/** What became of one plan of a backup. */
export interface Restored {
  readonly name: string;
  /** Its id in the library now; null when it could not be read. */
  readonly id: string | null;
  readonly what:
    | "added"
    /** The library has exactly this plan. */
    | "already-there"
    /** The library has it with other contents: both are kept. */
    | "added-beside"
    | "unreadable";
  /** Why it could not be read, and the text that there is of it. */
  readonly fault?: FileFault;
  readonly text?: string;
}

/** Files of a zip within bounds. @throws PlanFileError */
function unpacked(bytes: Uint8Array): Files {
  if (bytes.length > BOUNDS.packedBytes) throw new PlanFileError({ code: "backup-too-large", data: {} });
  let files = 0;
  let total = 0;
  try {
    return unzipSync(bytes, {
      filter: ({ originalSize }) => {
        files++;
        total += originalSize;
        if (files > BOUNDS.files || total > BOUNDS.bytes)
          throw new PlanFileError({ code: "backup-too-large", data: {} });
        return true;
      },
    });
  } catch (error) {
    if (error instanceof PlanFileError) throw error;
    throw new PlanFileError({ code: "backup-no-zip", data: {} });
  }
}

/** What the list says of each plan, not looked at yet. @throws PlanFileError */
function listIn(files: Files): readonly unknown[] {
  if (!Object.hasOwn(files, MANIFEST)) throw new PlanFileError({ code: "backup-no-list", data: {} });
  const checked = manifestSchema.safeParse(parseBoundedJson(strFromU8(files[MANIFEST])));
  if (checked.success) return checked.data.plans;
  throw brokenAt(checked.error, []);
}

const brokenAt = ({ issues }: z.core.$ZodError, before: readonly PropertyKey[]): PlanFileError => {
  const place = pathText([...before, ...issues[0].path]) || MANIFEST;
  return new PlanFileError({ code: "backup-list-broken", data: { place } });
};

/** One plan of the list. @throws PlanFileError that names the field */
function entryOf(data: unknown, place: number): Entry {
  const checked = entrySchema.safeParse(data);
  if (checked.success) return checked.data;
  throw brokenAt(checked.error, ["plans", place]);
}

/** What there is of a plan that can't be brought back: its file, or what the list says of it. */
function remains(files: Files, data: unknown): Pick<Restored, "name" | "text"> {
  const { plan } = (data ?? {}) as { readonly plan?: unknown };
  const path = typeof plan === "string" ? plan : undefined;
  const name = path?.slice(0, LONGEST_PATH) ?? "";
  return { name, text: textIn(files, path) ?? JSON.stringify(data, null, 1) };
}

const textIn = (files: Files, path: string | undefined): string | null =>
  path !== undefined && Object.hasOwn(files, path) ? strFromU8(files[path]) : null;

/** A text of a backup for the storage: its pictures are kept, under hashes of our own reckoning. */
async function repacked(
  { pictures }: Library,
  files: Files,
  path: string | undefined,
): Promise<string | null> {
  const text = textIn(files, path);
  return text === null ? null : (await pictures.all()).repackText(text, (hash) => imageIn(files, hash));
}

type LooseVersion = Omit<VersionRow, "id" | "planId">;

async function versionsIn(library: Library, files: Files, entry: Entry): Promise<readonly LooseVersion[]> {
  const versions: LooseVersion[] = [];
  for (const { label, at, plan } of entry.versions) {
    const text = await repacked(library, files, plan);
    if (text !== null) versions.push({ label, at, text });
  }
  return versions;
}

/** Gives a plan that is there already the versions that it doesn't have: of a plan with many, they come in several files. */
async function addMissingVersions(library: Library, id: string, files: Files, entry: Entry): Promise<void> {
  const { port } = library;
  for (const version of await versionsIn(library, files, entry)) {
    const ofThatMoment = await port.all("versions", versionId(id, version.at, ""));
    if (ofThatMoment.some(({ label, text }) => label === version.label && text === version.text)) continue;
    const put = { id: versionId(id, version.at, freshId()), planId: id, ...version };
    await port.write([{ table: "versions", put }]);
  }
}

/** The rows that go with a restored plan: history, picture, versions. */
async function companionsOf(
  library: Library,
  files: Files,
  entry: Entry,
): Promise<(id: string) => RowChange[]> {
  const history = historyOf(await repacked(library, files, entry.history));
  const url = textIn(files, entry.thumbnail);
  const versions = await versionsIn(library, files, entry);
  return (id) => [
    ...(history === NO_HISTORY
      ? []
      : [{ table: "histories" as const, put: { id, text: JSON.stringify(history) } }]),
    ...(isThumbnail(url) ? [{ table: "thumbnails" as const, put: { id, url } }] : []),
    ...versions.map((version, k) => ({
      table: "versions" as const,
      put: { id: versionId(id, version.at, String(k)), planId: id, ...version },
    })),
  ];
}

async function restoreOne(library: Library, files: Files, entry: Entry): Promise<Restored> {
  const text = textIn(files, entry.plan);
  if (text === null) throw new PlanFileError({ code: "not-in-backup", data: {} });
  const { name } = parsePlan(text).plan;
  const existing: PlanRow | undefined = await library.port.get("plans", entry.id);
  if (existing && (await library.pictures.unpackText(existing.text)) === text) {
    await addMissingVersions(library, entry.id, files, entry);
    if (existing.deletedAt === null) return { name, id: entry.id, what: "already-there" };
    await library.restore(entry.id);
    return { name, id: entry.id, what: "added" };
  }
  // another file of this backup has put it beside what was there
  const beside = existing ? await library.idOf(text) : null;
  if (beside !== null) {
    await addMissingVersions(library, beside, files, entry);
    return { name, id: beside, what: "already-there" };
  }
  const { createdAt, savedAt, archivedAt } = entry;
  const standing = { createdAt, savedAt, archivedAt, ...(existing ? {} : { id: entry.id }) };
  const id = await library.add(text, await companionsOf(library, files, entry), standing);
  return { name, id, what: existing ? "added-beside" : "added" };
}

/**
 * Merges a backup into the library.
 * @returns what became of every plan in it, in its order
 * @throws PlanFileError when the file is no backup; StorageFault when the library can't be written
 */
export async function restoreBackup(library: Library, bytes: Uint8Array): Promise<readonly Restored[]> {
  const files = unpacked(bytes);
  const outcome: Restored[] = [];
  for (const [place, data] of listIn(files).entries()) {
    try {
      outcome.push(await restoreOne(library, files, entryOf(data, place)));
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      outcome.push({ ...remains(files, data), id: null, what: "unreadable", fault: error.fault });
    }
  }
  return outcome;
}
