/** Whether the work is kept, in words. */
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { useSaveStatus } from "../visit.ts";

export function KeptLine() {
  const words = useWords(shellWords).kept;
  const status = useSaveStatus();
  const isTrouble = status.state === "failed" || status.state === "in-memory";
  return (
    <p className="kept" role="status" data-trouble={isTrouble || undefined}>
      {words[status.state]}
    </p>
  );
}
