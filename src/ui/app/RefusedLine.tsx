/** Why the plan can't take an edit: words that most visits never need. */
import type { FileFault } from "../../core/plan/file-fault.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { historyWords } from "../messages/history.ts";
import { useLanguage, useWords } from "../messages/words.tsx";

export default function RefusedLine({ fault }: { fault: FileFault }) {
  const { noteRefused } = useWords(historyWords);
  return <p>{noteRefused(fileFaultInWords(fault, useLanguage()))}</p>;
}
