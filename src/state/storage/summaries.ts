/** The shelf: what each kept plan can tell without being opened, in the order in which they were kept last. */
import { PlanFileError, parsePlan } from "../../core/plan/file.ts";
import { momentOf } from "./moment.ts";
import { mayHoldMarks, pictureWays } from "./pictures-when-needed.ts";
import type { PlanRow, StoragePort } from "./port.ts";

/** One plan as the shelf shows it. */
export interface PlanSummary {
  readonly id: string;
  readonly name: string;
  readonly createdAt: number;
  readonly savedAt: number;
  readonly archivedAt: number | null;
  readonly deletedAt: number | null;
  readonly thumbnail: string | null;
  /** Null when what is kept can't be read as a plan any more; its text can still be saved to a file. */
  readonly about: { readonly diameterMm: number; readonly tiers: number; readonly facets: number } | null;
}

export type Shelf = "out" | "archived" | "deleted";

/** Longest thumbnail, characters of a data URL. */
const LONGEST_THUMBNAIL = 300_000;
const NAME_OF_UNREADABLE = "";

/** @param plainOf a text as far as it can be read without its pictures */
type PlainOf = (text: string) => string;

/** What a kept plan can tell without being opened. */
function readable(row: PlanRow, plainOf: PlainOf): Pick<PlanSummary, "name" | "about"> {
  try {
    const { plan } = parsePlan(plainOf(row.text));
    const facets = plan.tiers.reduce((sum, tier) => sum + tier.count, 0);
    const about = { diameterMm: plan.piece.diameterMm, tiers: plan.tiers.length, facets };
    return { name: plan.name, about };
  } catch (error) {
    if (!(error instanceof PlanFileError)) throw error;
    return { name: NAME_OF_UNREADABLE, about: null };
  }
}

/** Whether something kept is a small picture to be shown: in itself, and not too long. */
export const isThumbnail = (url: unknown): url is string =>
  typeof url === "string" && url.startsWith("data:image/") && url.length <= LONGEST_THUMBNAIL;

/** A row as it lies in the storage, every field made what it has to be: one bad record is one line on the shelf. */
export const soundRow = (row: PlanRow): PlanRow => {
  const text: unknown = row.text;
  return {
    ...row,
    text: typeof text === "string" ? text : (JSON.stringify(text) ?? ""),
    createdAt: momentOf(row.createdAt) ?? 0,
    savedAt: momentOf(row.savedAt) ?? 0,
    archivedAt: momentOf(row.archivedAt),
    deletedAt: momentOf(row.deletedAt),
  };
};

const isOn = (shelf: Shelf, row: PlanSummary): boolean => {
  if (row.deletedAt !== null) return shelf === "deleted";
  return (shelf === "archived") === (row.archivedAt !== null) && shelf !== "deleted";
};

/** @returns how the shelf is listed, and how a plan that is gone is forgotten */
export function createSummaries(port: StoragePort) {
  const summaries = new Map<string, { readonly row: PlanRow } & Pick<PlanSummary, "name" | "about">>();

  /** Name and numbers of a row, read again only when it changed. */
  function summaryOf(row: PlanRow, thumbnail: string | null, plainOf: PlainOf): PlanSummary {
    const before = summaries.get(row.id);
    const fresh = before?.row.text === row.text ? before : { row, ...readable(row, plainOf) };
    summaries.set(row.id, fresh);
    const { id, createdAt, savedAt, archivedAt, deletedAt } = row;
    return {
      id,
      createdAt,
      savedAt,
      archivedAt,
      deletedAt,
      thumbnail,
      name: fresh.name,
      about: fresh.about,
    };
  }

  async function list(shelf: Shelf = "out", search = ""): Promise<readonly PlanSummary[]> {
    const [rows, pictures] = await Promise.all([port.all("plans"), port.all("thumbnails")]);
    const urls = new Map(pictures.map(({ id, url }) => [id, isThumbnail(url) ? url : null]));
    const wanted = search.trim().toLocaleLowerCase();
    const sound = rows.map(soundRow);
    const plainOf: PlainOf = sound.some(({ text }) => mayHoldMarks(text))
      ? (await pictureWays()).withoutPictures
      : (text) => text;
    return sound
      .map((row) => summaryOf(row, urls.get(row.id) ?? null, plainOf))
      .filter((row) => isOn(shelf, row) && row.name.toLocaleLowerCase().includes(wanted))
      .sort((a, b) => b.savedAt - a.savedAt);
  }

  return { list, forget: (id: string) => summaries.delete(id) };
}
