/** Before any work is begun on a plan that can't be ground as it stands: what is the matter, and whether to go on all the same. */

import { Button } from "../controls/Button.tsx";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { showCause, useVerdict } from "../shared/verdict-said.ts";
import { useStudioStore } from "../studio.ts";
import { closeLap } from "./lap-open.ts";

export function LapAsks({ onGoOn }: { onGoOn: () => void }) {
  const studio = useStudioStore();
  const words = useWords(lapWords).asks;
  const { verdict, said } = useVerdict();
  const lookFirst = () => {
    closeLap();
    showCause(studio, verdict);
  };
  return (
    <div className="lap-step">
      <div className="lap-step-words">
        <h1 className="lap-title">{said}</h1>
        <p className="lap-line">{words.what}</p>
        <div className="lap-answers">
          <button type="button" className="lap-press" onClick={lookFirst}>
            {words.look}
          </button>
          <Button onPress={onGoOn}>{words.goOn}</Button>
        </div>
      </div>
    </div>
  );
}
