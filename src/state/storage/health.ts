/** How it stands with the storage as a whole. */
import type { FaultKind } from "./faults.ts";

export interface StorageHealth {
  /** Why nothing is kept beyond this page, or why the last reading failed; null when all is well. */
  readonly fault: FaultKind | null;
  /** Whether the browser promised not to clear the storage by itself; null while unknown. */
  readonly persistent: boolean | null;
}
