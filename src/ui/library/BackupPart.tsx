/** The whole library as one file, and back: merged, with a word on what became of each plan. */
import { useState } from "react";
import { FileTrigger } from "react-aria-components/FileTrigger";
import { PlanFileError } from "../../core/plan/file.ts";
import type { Session } from "../../state/session.ts";
import { backupsOf, type Restored, restoreBackup } from "../../state/storage/backup.ts";
import { faultOf } from "../../state/storage/faults.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { Button } from "../controls/Button.tsx";
import { libraryWords } from "../messages/library.ts";
import { storageWords } from "../messages/storage.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { offerFile } from "../shared/files.ts";

type Outcome =
  | { readonly state: "idle" | "working" }
  | { readonly state: "said"; readonly text: string }
  | { readonly state: "restored"; readonly plans: readonly Restored[] };

const saveText = ({ text = "" }: Restored): void =>
  offerFile("plan.txt", new Blob([text], { type: "text/plain" }));

export function BackupPart({ session }: { session: Session }) {
  const words = useWords(libraryWords);
  const language = useLanguage();
  const { faults } = useWords(storageWords);
  const [outcome, setOutcome] = useState<Outcome>({ state: "idle" });
  const attempt = async (failed: string, deed: () => Promise<Outcome>) => {
    setOutcome({ state: "working" });
    try {
      setOutcome(await deed());
    } catch (error) {
      const why =
        error instanceof PlanFileError
          ? fileFaultInWords(error.fault, language)
          : faults[faultOf(error).kind];
      setOutcome({ state: "said", text: `${failed}: ${why}` });
    }
  };
  const save = () =>
    attempt(words.backup.notSaved, async () => {
      const day = new Date().toISOString().slice(0, 10);
      const names: string[] = [];
      for await (const bytes of backupsOf(session.library)) {
        const part = names.length === 0 ? "" : `-${names.length + 1}`;
        const file = `glintwright-library-${day}${part}.zip`;
        offerFile(file, new Blob([bytes], { type: "application/zip" }));
        names.push(file);
      }
      return { state: "said", text: words.backup.saved(names.join(", ")) };
    });
  const restore = (file: File) =>
    attempt(words.backup.bad, async () => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      return { state: "restored", plans: await restoreBackup(session.library, bytes) };
    });
  return (
    <section>
      <h2>{words.backup.title}</h2>
      <p className="soft">{words.backup.intro}</p>
      <div className="backup-ways">
        <Button look="outlined" onPress={() => void save()}>
          {words.backup.save}
        </Button>
        <FileTrigger
          acceptedFileTypes={[".zip", "application/zip"]}
          onSelect={(files) => {
            const file = files?.[0];
            if (file) void restore(file);
          }}
        >
          <Button look="outlined">{words.backup.restore}</Button>
        </FileTrigger>
      </div>
      <div role="status">
        {outcome.state === "working" ? <p>{words.backup.working}</p> : null}
        {outcome.state === "said" ? <p>{outcome.text}</p> : null}
        {outcome.state === "restored" ? (
          <ul className="differences">
            {outcome.plans.length === 0 ? <li>{words.backup.empty}</li> : null}
            {outcome.plans.map((plan) => (
              <li key={`${plan.what} ${plan.id} ${plan.name} ${JSON.stringify(plan.fault)}`}>
                <b>{plan.name || words.unnamed}</b>: {words.backup.what[plan.what]}
                {plan.fault ? ` (${fileFaultInWords(plan.fault, language)}) ` : ""}
                {plan.text ? (
                  <Button
                    aria-label={words.saveTextOf(plan.name || words.unnamed)}
                    onPress={() => saveText(plan)}
                  >
                    {words.saveText}
                  </Button>
                ) : null}
              </li>
            ))}
          </ul>
        ) : null}
      </div>
    </section>
  );
}
