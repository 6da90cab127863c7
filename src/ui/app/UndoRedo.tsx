/** Undo and redo, saying what they will do. */
import { Button } from "../controls/Button.tsx";
import { historyWords, labelInWords } from "../messages/history.ts";
import { shellWords } from "../messages/shell.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useStudio } from "../use-studio.ts";

export function UndoRedo() {
  const words = useWords(shellWords);
  const labels = useWords(historyWords);
  const language = useLanguage();
  const { undo: past, redo: future } = useStudio((state) => state.history);
  const undo = useStudio((state) => state.undo);
  const redo = useStudio((state) => state.redo);
  const last = past.at(-1);
  const next = future.at(-1);
  const lastWords = last ? labelInWords(last.label, labels, language) : "";
  return (
    <>
      <Button
        className="undo"
        isDisabled={!last}
        onPress={undo}
        aria-label={last ? words.undoOf(lastWords) : words.nothingToUndo}
      >
        {words.undo}
        {last ? <span className="undo-what">: {lastWords}</span> : null}
      </Button>
      <Button
        isDisabled={!next}
        onPress={redo}
        aria-label={next ? words.redoOf(labelInWords(next.label, labels, language)) : words.nothingToRedo}
      >
        {words.redo}
      </Button>
    </>
  );
}
