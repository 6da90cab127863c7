/**
 * The seam between the library and whatever keeps it: five tables of plain rows and all-or-nothing writes. IndexedDB is
 * one implementation, memory another; tests put a third one between that breaks on purpose.
 */

export interface PlanRow {
  readonly id: string;
  /** Grows by one with every write; a writer names the one that it knows, so that no tab overwrites another. */
  readonly revision: number;
  /** The plan's file, as `serializePlan` writes it; pictures are marks in it, as in all texts here. */
  readonly text: string;
  /** Milliseconds since 1970. */
  readonly createdAt: number;
  readonly savedAt: number;
  readonly archivedAt: number | null;
  readonly deletedAt: number | null;
}
interface HistoryRow {
  readonly id: string;
  /** The undo history as JSON. */
  readonly text: string;
}
interface ThumbnailRow {
  readonly id: string;
  /** `data:image/...` */
  readonly url: string;
}
export interface VersionRow {
  /** `planId/time-mark`, so that a plan's versions lie together. */
  readonly id: string;
  readonly planId: string;
  readonly label: string;
  readonly at: number;
  readonly text: string;
}
interface PictureRow {
  /** SHA-256 of `url`, hexadecimal. */
  readonly id: string;
  /** `data:image/...`, shown in the glass of any number of plans. */
  readonly url: string;
}
export interface Rows {
  readonly plans: PlanRow;
  readonly histories: HistoryRow;
  readonly thumbnails: ThumbnailRow;
  readonly versions: VersionRow;
  readonly pictures: PictureRow;
}
export type Table = keyof Rows;
export const TABLES: readonly Table[] = ["plans", "histories", "thumbnails", "versions", "pictures"];

/** A row to put, or the id of one to take away. */
export type RowChange = {
  readonly [T in Table]:
    | { readonly table: T; readonly put: Rows[T] }
    | { readonly table: T; readonly erase: string };
}[Table];

/** Write only if the plan's kept revision is this one; 0 = only if there is none. */
export interface Condition {
  readonly planId: string;
  readonly revision: number;
}

/** Every method rejects with a StorageFault. */
export interface StoragePort {
  /** False when everything is gone with the page. */
  readonly durable: boolean;
  get<T extends Table>(table: T, id: string): Promise<Rows[T] | undefined>;
  /** All rows, or those whose id begins with `prefix`, in order of id. */
  all<T extends Table>(table: T, prefix?: string): Promise<readonly Rows[T][]>;
  /** Ids of all rows. */
  ids(table: Table): Promise<readonly string[]>;
  /** All or nothing; answers false, nothing written, when the condition doesn't hold. */
  write(changes: readonly RowChange[], only?: Condition): Promise<boolean>;
  close(): void;
}
