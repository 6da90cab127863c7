/** What can go wrong with a browser's storage, each with a name that the screens have words for. */

export type FaultKind =
  /** This browser has no storage to offer. */
  | "missing"
  /** The browser refuses: private window, or storage switched off for this page. */
  | "denied"
  /** Another tab with an older version of the page holds the storage. */
  | "blocked"
  /** A newer version of the page has changed the storage; this one can't read it. */
  | "newer"
  /** What would be written could not be opened again. */
  | "unreadable"
  /** The disk, or the share of it that this page may use, is full. */
  | "full"
  /** What is kept can't be read, or what was read back isn't what was written. */
  | "damaged"
  /** The connection broke while the page was open. */
  | "lost"
  /** The visit could not begin, for a reason that this page doesn't know. */
  | "unforeseen";

export class StorageFault extends Error {
  override readonly name = "StorageFault";
  readonly kind: FaultKind;
  constructor(kind: FaultKind, message: string, cause?: unknown) {
    super(message, { cause });
    this.kind = kind;
  }
}

/** Names of DOMExceptions (Indexed Database API, Storage Standard) and what they mean here. */
const KINDS: Readonly<Record<string, FaultKind>> = {
  QuotaExceededError: "full",
  SecurityError: "denied",
  NotAllowedError: "denied",
  VersionError: "newer",
  UnknownError: "damaged",
  DataError: "damaged",
  NotReadableError: "damaged",
  DataCloneError: "damaged",
  ConstraintError: "damaged",
  NotFoundError: "damaged",
  InvalidStateError: "lost",
  TransactionInactiveError: "lost",
  AbortError: "lost",
};

/** Any error as a storage fault. An aborted transaction carries the reason as its cause where the browser tells it. */
export function faultOf(error: unknown): StorageFault {
  if (error instanceof StorageFault) return error;
  const { name = "", message = String(error) } = (error ?? {}) as Partial<Error>;
  return new StorageFault(KINDS[name] ?? "lost", message, error);
}
