/** What is on a shelf of the library, kept up to date with this window and others. */
import { useEffect, useState } from "react";
import { type FaultKind, faultOf } from "../../state/storage/faults.ts";
import type { PlanSummary, Shelf } from "../../state/storage/summaries.ts";
import { useSession } from "../visit.ts";

export interface ShelfView {
  /** Null while it is being read. */
  readonly plans: readonly PlanSummary[] | null;
  readonly fault: FaultKind | null;
}

export function useShelf(shelf: Shelf, search: string): ShelfView {
  const session = useSession();
  const [found, setFound] = useState<ShelfView>({ plans: null, fault: null });
  useEffect(() => {
    if (!session) return;
    let newest = 0;
    // an answer that a later question has overtaken is not shown
    const read = async () => {
      const mine = ++newest;
      const view = await session.library.list(shelf, search).then(
        (plans): ShelfView => ({ plans, fault: null }),
        (error): ShelfView => ({ plans: [], fault: faultOf(error).kind }),
      );
      if (mine === newest) setFound(view);
    };
    void read();
    const stop = session.library.watch(() => void read());
    return () => {
      newest = -1;
      stop();
    };
  }, [session, shelf, search]);
  return found;
}
