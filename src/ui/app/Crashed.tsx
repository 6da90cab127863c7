/** What stands where a part of the page broke. */
import { Button } from "../controls/Button.tsx";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { savePlanFile } from "../shared/files.ts";
import { useStudioStore } from "../studio.ts";

export function Crashed({ again }: { again: () => void }) {
  const studio = useStudioStore();
  const words = useWords(shellWords);
  return (
    <section className="broken" role="alert">
      <h2>{words.crashed}</h2>
      <p>{words.crashedWhat}</p>
      <p>
        <Button look="outlined" onPress={again}>
          {words.crashedAgain}
        </Button>{" "}
        <Button onPress={() => savePlanFile(studio)}>{words.crashedSave}</Button>
      </p>
    </section>
  );
}
