/** What stands beside the piece: nothing, the ball it is cut from, or another plan. */
import { useState } from "react";
import { PlanFileError } from "../../core/plan/file.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { readPlanFile } from "../app/files.ts";
import { Pick } from "../controls/Pick.tsx";
import { lookWords } from "../messages/look.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { FileButton } from "./FileButton.tsx";
import { setLook, useLook } from "./look-settings.ts";

export function CompareFields() {
  const words = useWords(lookWords).compare;
  const language = useLanguage();
  const against = useLook((settings) => settings.against);
  const layout = useLook((settings) => settings.layout);
  const other = useLook((settings) => settings.otherPlan);
  const [trouble, setTrouble] = useState<string | null>(null);
  const take = async (file: File) => {
    try {
      setLook({ otherPlan: (await readPlanFile(file)).plan, against: "plan" });
      setTrouble(null);
    } catch (error) {
      if (!(error instanceof PlanFileError)) throw error;
      setTrouble(words.bad(file.name, fileFaultInWords(error.fault, language)));
    }
  };
  return (
    <section className="look-part">
      <h2>{words.title}</h2>
      <Pick
        label={words.against}
        value={against}
        options={[
          { id: "nothing", words: words.nothing },
          { id: "uncut", words: words.uncutBall },
          ...(other ? [{ id: "plan" as const, words: other.name }] : []),
        ]}
        onChange={(next) => setLook({ against: next })}
      />
      {against === "nothing" ? null : (
        <Pick
          label={words.layout}
          value={layout}
          options={[
            { id: "line", words: words.byLine },
            { id: "side", words: words.sideBySide },
          ]}
          onChange={(next) => setLook({ layout: next })}
        />
      )}
      <FileButton
        accept=".json,application/json"
        words={words.choosePlan}
        onFile={(file) => void take(file)}
      />
      {trouble ? (
        <p className="look-trouble" role="alert">
          {trouble}
        </p>
      ) : null}
    </section>
  );
}
