/**
 * The whole library as one zip file: every plan is a plan file of its own inside, readable without this program.
 * Restoring merges: nothing in the library is ever overwritten, and what happened to each plan is told.
 */
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import * as z from "zod/mini";
import { parseBoundedJson } from "../../core/plan/bounded-json.ts";
import { PlanFileError, parsePlan } from "../../core/plan/file.ts";
import { type FileFault, pathText } from "../../core/plan/file-fault.ts";
import { LAST_MOMENT, type Library } from "./library.ts";
import type { PlanRow, RowChange, VersionRow } from "./port.ts";
import { versionId } from "./versions.ts";

const FORMAT = "glintwright-library";
const MANIFEST = "library.json";
/** What a backup may hold at most, so that a stranger's file can't fill the memory. */
const BOUNDS = { packedBytes: 100e6, bytes: 400e6, files: 30_000 };

const time = z.number().check(z.nonnegative(), z.maximum(LAST_MOMENT));
const text = (longest: number) => z.string().check(z.maxLength(longest));
const LONGEST_PATH = 300;
const manifestSchema = z.object({
  format: z.literal(FORMAT),
  version: z.literal(1),
  plans: z.array(
    z.object({
      id: z.string().check(z.regex(/^[A-Za-z0-9_-]{1,100}$/)),
      createdAt: time,
      savedAt: time,
      archivedAt: z.nullable(time),
      plan: text(LONGEST_PATH),
      history: z.optional(text(LONGEST_PATH)),
      thumbnail: z.optional(text(LONGEST_PATH)),
      versions: z.array(z.object({ label: text(500), at: time, plan: text(LONGEST_PATH) })),
    }),
  ),
});
type Manifest = z.output<typeof manifestSchema>;
type Entry = Manifest["plans"][number];
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

/** Everything in the library except what was deleted, as the bytes of a zip file. */
export async function backupOf({ port }: Library): Promise<Uint8Array<ArrayBuffer>> {
  const rows = (await port.all("plans")).filter((row) => row.deletedAt === null);
  const files: Zippable = {};
  const plans: Entry[] = [];
  for (const [i, row] of rows.entries()) {
    const stem = `${String(i + 1).padStart(4, "0")}-${fileName(nameIn(row.text))}`;
    const put = (folder: string, ending: string, content: string): string => {
      const path = `${folder}/${stem}${ending}`;
      files[path] = strToU8(content);
      return path;
    };
    const history = await port.get("histories", row.id);
    const thumbnail = await port.get("thumbnails", row.id);
    const versions = await port.all("versions", `${row.id}/`);
    plans.push({
      id: row.id,
      createdAt: row.createdAt,
      savedAt: row.savedAt,
      archivedAt: row.archivedAt,
      plan: put("plans", ".json", row.text),
      ...(history && { history: put("histories", ".json", history.text) }),
      ...(thumbnail && { thumbnail: put("pictures", ".txt", thumbnail.url) }),
      versions: versions.map(({ label, at, text }, k) => ({
        label,
        at,
        plan: put("versions", `-${k + 1}.json`, text),
      })),
    });
  }
  const manifest: Manifest = { format: FORMAT, version: 1, plans };
  files[MANIFEST] = strToU8(JSON.stringify(manifest, null, 1));
  return zipSync(files, { level: 6 });
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
  /** Why it could not be read. */
  readonly fault?: FileFault;
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

function manifestOf(files: Files): Manifest {
  if (!Object.hasOwn(files, MANIFEST)) throw new PlanFileError({ code: "backup-no-list", data: {} });
  const checked = manifestSchema.safeParse(parseBoundedJson(strFromU8(files[MANIFEST])));
  if (checked.success) return checked.data;
  const place = pathText(checked.error.issues[0].path) || MANIFEST;
  throw new PlanFileError({ code: "backup-list-broken", data: { place } });
}

const textIn = (files: Files, path: string | undefined): string | null =>
  path !== undefined && Object.hasOwn(files, path) ? strFromU8(files[path]) : null;

/** The rows that go with a restored plan: history, picture, versions. */
function companions(files: Files, entry: Entry, id: string): RowChange[] {
  const history = textIn(files, entry.history);
  const url = textIn(files, entry.thumbnail);
  const versions = entry.versions.flatMap(({ label, at, plan }, k): VersionRow[] => {
    const text = textIn(files, plan);
    return text === null ? [] : [{ id: versionId(id, at, String(k)), planId: id, label, at, text }];
  });
  return [
    ...(history === null ? [] : [{ table: "histories" as const, put: { id, text: history } }]),
    ...(url?.startsWith("data:image/") ? [{ table: "thumbnails" as const, put: { id, url } }] : []),
    ...versions.map((put) => ({ table: "versions" as const, put })),
  ];
}

async function restoreOne(library: Library, files: Files, entry: Entry): Promise<Restored> {
  const text = textIn(files, entry.plan);
  if (text === null) throw new PlanFileError({ code: "not-in-backup", data: {} });
  const { name } = parsePlan(text).plan;
  const existing: PlanRow | undefined = await library.port.get("plans", entry.id);
  if (existing?.text === text) {
    if (existing.deletedAt === null) return { name, id: entry.id, what: "already-there" };
    await library.restore(entry.id);
    return { name, id: entry.id, what: "added" };
  }
  const { createdAt, savedAt, archivedAt } = entry;
  const standing = { createdAt, savedAt, archivedAt, ...(existing ? {} : { id: entry.id }) };
  const id = await library.add(text, (given) => companions(files, entry, given), standing);
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
  for (const entry of manifestOf(files).plans) {
    try {
      outcome.push(await restoreOne(library, files, entry));
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      outcome.push({ name: entry.plan, id: null, what: "unreadable", fault: error.fault });
    }
  }
  return outcome;
}
