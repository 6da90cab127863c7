/** Which paper a sheet is for. */
import { useState } from "react";
import type { Paper } from "../../../sheet/sheet-style.ts";
import { Pick } from "../../controls/Pick.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";

/** Where people write on Letter: a first guess, changed with one press. */
const usualPaper = (): Paper => (/^en-(US|CA)|^es-MX/.test(navigator.language) ? "letter" : "a4");

export const usePaper = () => useState<Paper>(usualPaper);

export function PaperPick({ paper, onChange }: { paper: Paper; onChange: (paper: Paper) => void }) {
  const words = useWords(benchWords).paper;
  return (
    <Pick<Paper>
      label={words.size}
      value={paper}
      options={[
        { id: "a4", words: "A4" },
        { id: "letter", words: "Letter" },
      ]}
      onChange={onChange}
    />
  );
}
