/** Your plans: the shelf with search, versions of the plan on the bench, backup. */
import { useState } from "react";
import { Input } from "react-aria-components/Input";
import { Label } from "react-aria-components/Label";
import { SearchField } from "react-aria-components/SearchField";
import { useStore } from "zustand";
import { PlanFileError } from "../../core/plan/file.ts";
import type { Session } from "../../state/session.ts";
import { KEPT_AFTER_REMOVAL_DAYS } from "../../state/storage/clear-out.ts";
import { faultOf } from "../../state/storage/faults.ts";
import type { PlanSummary, Shelf } from "../../state/storage/summaries.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { Button } from "../controls/Button.tsx";
import { Pick } from "../controls/Pick.tsx";
import { libraryWords } from "../messages/library.ts";
import { storageWords } from "../messages/storage.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { offerFile } from "../shared/files.ts";
import type { SheetBodyProps } from "../shared/slots.tsx";
import { useStudio } from "../use-studio.ts";
import { useSession } from "../visit.ts";
import { BackupPart } from "./BackupPart.tsx";
import { PlanCard, type PlanDeeds } from "./PlanCard.tsx";
import { useShelf } from "./use-shelf.ts";
import { VersionsPart } from "./VersionsPart.tsx";
import "../settings/settings.css";
import "./library.css";

const SHELVES: readonly Shelf[] = ["out", "archived", "deleted"];

/** Why nothing lasts, or that a backup is wise; said once above the shelf. */
function Health({ session }: { session: Session }) {
  const words = useWords(libraryWords);
  const { faults } = useWords(storageWords);
  const { fault, persistent } = useStore(session.health);
  if (fault) return <p className="shelf-fault">{faults[fault]}</p>;
  return persistent === false ? <p className="small">{words.notPersistent}</p> : null;
}

/** What the last deed came to; a plan thrown out can be taken back from here. */
type Said = { readonly text: string; readonly undo?: () => void } | null;

function useDeeds(session: Session, onClose: () => void, say: (said: Said) => void) {
  const words = useWords(libraryWords);
  const { faults } = useWords(storageWords);
  const language = useLanguage();
  const go = useStudio((state) => state.go);
  const { library } = session;
  /** Runs a deed on storage; what goes wrong is said and changes nothing. */
  const attempt = (deed: () => Promise<Said>) => {
    deed().then(say, (error: unknown) => {
      if (error instanceof PlanFileError) say({ text: fileFaultInWords(error.fault, language) });
      else say({ text: `${words.failed} ${faults[faultOf(error).kind]}` });
    });
  };
  const done = async (ok: Promise<boolean>): Promise<Said> => ((await ok) ? null : { text: words.busy });
  return (plan: PlanSummary): PlanDeeds => {
    const name = plan.name || words.unnamed;
    return {
      open: () =>
        attempt(async () => {
          const opened = await session.openPlan(plan.id);
          if (!opened.ok) {
            const why =
              opened.why === "bench-unkept" ? words.benchUnkept : fileFaultInWords(opened.fault, language);
            return { text: why };
          }
          go("plan");
          onClose();
          return null;
        }),
      duplicate: () =>
        attempt(async () =>
          (await library.duplicate(plan.id, words.copyName(name))) ? null : { text: words.failed },
        ),
      archive: () => attempt(() => done(library.archive(plan.id))),
      unarchive: () => attempt(() => done(library.unarchive(plan.id))),
      restore: () => attempt(() => done(library.restore(plan.id))),
      remove: () =>
        attempt(async () => {
          if (!(await library.remove(plan.id))) return { text: words.busy };
          return { text: words.removed(name), undo: () => attempt(() => done(library.restore(plan.id))) };
        }),
      erase: () => attempt(async () => library.erase(plan.id).then(() => null)),
      saveText: () =>
        attempt(async () => {
          const opened = await library.open(plan.id);
          const text = opened.ok ? null : opened.text;
          if (text !== null) offerFile("plan.txt", new Blob([text], { type: "text/plain" }));
          return null;
        }),
    };
  };
}

function ShelfPart({ session, onClose }: { session: Session; onClose: () => void }) {
  const words = useWords(libraryWords);
  const { faults } = useWords(storageWords);
  const [shelf, setShelf] = useState<Shelf>("out");
  const [search, setSearch] = useState("");
  const [said, say] = useState<Said>(null);
  const { plans, fault } = useShelf(shelf, search);
  const deedsOf = useDeeds(session, onClose, say);
  const empty = search.trim() ? words.none.found(search.trim()) : words.none[shelf];
  return (
    <section>
      <Health session={session} />
      <div className="shelf-tools">
        <SearchField className="shelf-search" value={search} onChange={setSearch}>
          <Label className="field-label">{words.search}</Label>
          <Input className="text-input" />
        </SearchField>
        <Pick
          label={words.shelf}
          value={shelf}
          options={SHELVES.map((id) => ({ id, words: words.shelves[id] }))}
          onChange={setShelf}
        />
      </div>
      <div role="status" className="shelf-said">
        {said ? (
          <>
            <span>{said.text}</span> {said.undo ? <Button onPress={said.undo}>{words.undo}</Button> : null}
          </>
        ) : null}
      </div>
      {shelf === "deleted" ? <p className="soft">{words.goneAfter(KEPT_AFTER_REMOVAL_DAYS)}</p> : null}
      {fault ? <p className="shelf-fault">{faults[fault]}</p> : null}
      {plans === null ? (
        <p className="soft">{words.loading}</p>
      ) : plans.length === 0 && !fault ? (
        <p className="soft shelf-empty">{empty}</p>
      ) : (
        <ul className="examples">
          {plans.map((plan) => (
            <PlanCard key={plan.id} plan={plan} deeds={deedsOf(plan)} />
          ))}
        </ul>
      )}
    </section>
  );
}

export default function LibrarySheet({ onClose }: SheetBodyProps) {
  const words = useWords(libraryWords);
  const session = useSession();
  if (!session) return <p className="soft">{words.loading}</p>;
  return (
    <>
      <p className="soft">{words.intro}</p>
      <ShelfPart session={session} onClose={onClose} />
      <VersionsPart session={session} />
      <BackupPart session={session} />
    </>
  );
}
