/** Whether the work is kept, in words; when it is not, why, and the way to a file. */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { FaultKind } from "../../state/storage/faults.ts";
import type { StorageHealth } from "../../state/storage/health.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { savePlanFile } from "../shared/files.ts";
import { type Notice, screenOf, tell } from "../shared/screen.ts";
import { useStudioStore } from "../studio.ts";
import { useSaveStatus, useSession, whyUnkept } from "../visit.ts";

const WELL: StorageHealth = { fault: null, persistent: null };
const notYet = createStore<StorageHealth>(() => WELL);

/** Says at the foot of the page what went wrong, until it is closed or is well again. */
function useFaultSaid(fault: FaultKind | null, isUnkept: boolean): void {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  useEffect(() => {
    if (fault === null) return;
    let notice: Notice | null = null;
    let isOver = false;
    void whyUnkept(studio, fault).then(([why, help]) => {
      if (isOver) return;
      notice = {
        tone: "stop",
        text: isUnkept ? words.notKept : words.notRead,
        details: [why, isUnkept ? help : undefined].filter((line) => line !== undefined),
        way: { words: words.menu.save, run: () => savePlanFile(studio) },
      };
      tell(studio, notice);
    });
    return () => {
      isOver = true;
      if (notice !== null && screenOf(studio).getState().notice === notice) tell(studio, null);
    };
  }, [studio, fault, isUnkept, words]);
}

interface Trouble {
  readonly fault: FaultKind | null;
  readonly isUnkept: boolean;
}

/** What stands against keeping the work. While it is being tried again, what stood against it last: nothing flickers. */
function useTrouble(): Trouble {
  const status = useSaveStatus();
  const session = useSession();
  const { fault } = useStore(session?.health ?? notYet);
  const isMemory = session !== null && !session.library.port.durable;
  const now: Trouble =
    "fault" in status ? { fault: status.fault, isUnkept: true } : { fault, isUnkept: isMemory };
  const [steady, setSteady] = useState(now);
  const isBetween = status.state === "waiting" || status.state === "keeping";
  const isNews = now.fault !== steady.fault || now.isUnkept !== steady.isUnkept;
  if (!isBetween && isNews) setSteady(now);
  return steady;
}

export function KeptLine() {
  const words = useWords(shellWords).kept;
  const status = useSaveStatus();
  const { fault, isUnkept } = useTrouble();
  useFaultSaid(fault, isUnkept);
  return (
    <p className="kept" role="status" data-trouble={"fault" in status || undefined}>
      {words[status.state]}
    </p>
  );
}
