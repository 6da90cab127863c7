/** What is on a shelf of the library, kept up to date with this window and others. */
import { useCallback, useEffect, useState } from "react";
import { type FaultKind, faultOf } from "../../state/storage/faults.ts";
import type { PlanSummary, Shelf } from "../../state/storage/library.ts";
import { useSession } from "../visit.ts";

export interface ShelfView {
  /** Null while it is being read. */
  readonly plans: readonly PlanSummary[] | null;
  readonly fault: FaultKind | null;
}

export function useShelf(shelf: Shelf, search: string): ShelfView {
  const session = useSession();
  const [found, setFound] = useState<ShelfView>({ plans: null, fault: null });
  const read = useCallback(async () => {
    if (!session) return;
    try {
      setFound({ plans: await session.library.list(shelf, search), fault: null });
    } catch (error) {
      setFound({ plans: [], fault: faultOf(error).kind });
    }
  }, [session, shelf, search]);
  useEffect(() => {
    void read();
    const stop = session?.library.watch(() => void read());
    return () => {
      stop?.();
    };
  }, [session, read]);
  return found;
}
