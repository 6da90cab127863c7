/** Named versions of the plan on the bench: keep one, bring one back as one undoable step, compare it. */
import { useCallback, useEffect, useState } from "react";
import { Input } from "react-aria-components/Input";
import { Label } from "react-aria-components/Label";
import { TextField } from "react-aria-components/TextField";
import { PlanFileError } from "../../core/plan/file.ts";
import type { Session } from "../../state/session.ts";
import { faultOf } from "../../state/storage/faults.ts";
import type { Version } from "../../state/storage/versions.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { Button } from "../controls/Button.tsx";
import { libraryWords } from "../messages/library.ts";
import { storageWords } from "../messages/storage.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useOutlasting } from "../shared/use-outlasting.ts";
import { useStudioStore } from "../studio.ts";
import { useFormat } from "../use-format.ts";
import { useStudio } from "../use-studio.ts";
import { VersionDifferences } from "./VersionDifferences.tsx";

function useVersions(session: Session, planId: string | null) {
  const [versions, setVersions] = useState<readonly Version[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const { faults } = useWords(storageWords);
  const language = useLanguage();
  const fail = useCallback(
    (error: unknown) =>
      setTrouble(
        error instanceof PlanFileError
          ? fileFaultInWords(error.fault, language)
          : faults[faultOf(error).kind],
      ),
    [faults, language],
  );
  useEffect(() => {
    if (planId === null) return setVersions([]);
    const read = () => session.library.versions(planId).then(setVersions, fail);
    void read();
    const stop = session.library.watch(read);
    return () => {
      stop();
    };
  }, [session, planId, fail]);
  const well = useCallback(() => setTrouble(null), []);
  return { versions, trouble, fail, well };
}

const textOf = (data: unknown): string | null => (typeof data === "string" ? data : null);

interface PartProps {
  readonly session: Session;
  /** Gets what went wrong. */
  readonly fail: (error: unknown) => void;
}

/** A plan that is in no library yet has no versions: first it goes onto the shelf. */
function PutOnShelf({ session, fail }: PartProps) {
  const words = useWords(libraryWords).versions;
  const studio = useStudioStore();
  const put = () => {
    const { plan, unknown } = studio.getState();
    session.layPlan({ plan, unknown }, { keep: true }).catch(fail);
  };
  return (
    <>
      <p className="soft">{words.needsKeeping}</p>
      <Button look="outlined" onPress={put}>
        {words.putOnShelf}
      </Button>
    </>
  );
}

/** Keeps the plan on the bench as it is, under a name. */
function KeepVersion({
  session,
  planId,
  fail,
  onKept,
}: PartProps & { readonly planId: string; readonly onKept: () => void }) {
  const words = useWords(libraryWords).versions;
  const studio = useStudioStore();
  const [label, setLabel] = useOutlasting(`version-${planId}`, "", textOf);
  const add = async () => {
    if (!label.trim()) return;
    await session.library.addVersion(planId, label.trim(), studio.getState().plan);
    setLabel("");
    onKept();
  };
  return (
    <form
      className="version-form"
      onSubmit={(event) => {
        event.preventDefault();
        add().catch(fail);
      }}
    >
      <TextField value={label} onChange={setLabel} maxLength={120}>
        <Label className="field-label">{words.name}</Label>
        <Input className="text-input" />
      </TextField>
      <Button look="outlined" type="submit" isDisabled={!label.trim()}>
        {words.add}
      </Button>
    </form>
  );
}

/** One version, and what can be done with it. */
function VersionLine({
  session,
  version,
  others,
  fail,
  onErase,
}: PartProps & {
  readonly version: Version;
  readonly others: readonly Version[];
  readonly onErase: () => void;
}) {
  const words = useWords(libraryWords).versions;
  const { moment } = useFormat();
  const studio = useStudioStore();
  const [isCompared, setCompared] = useState(false);
  const bringBack = async () => {
    const plan = await session.library.version(version.id);
    if (plan) studio.getState().dispatch({ type: "replace-plan", plan });
  };
  return (
    <li className="version">
      <span>
        <b>{version.label}</b> <span className="small">{moment(version.at)}</span>
      </span>
      <span className="version-ways">
        <Button aria-label={words.bringBack(version.label)} onPress={() => bringBack().catch(fail)}>
          {words.bringBackShown}
        </Button>
        <Button
          aria-label={words.compare(version.label)}
          aria-expanded={isCompared}
          onPress={() => setCompared(!isCompared)}
        >
          {words.compareShown}
        </Button>
        <Button aria-label={words.remove(version.label)} onPress={onErase}>
          {words.removeShown}
        </Button>
      </span>
      {isCompared ? (
        <VersionDifferences session={session} version={version} others={others} fail={fail} />
      ) : null}
    </li>
  );
}

export function VersionsPart({ session }: { session: Session }) {
  const words = useWords(libraryWords).versions;
  const planId = useStudio((state) => state.planId);
  const { versions, trouble, fail, well } = useVersions(session, planId);
  const [erased, setErased] = useState<{ label: string; bringBack: () => Promise<void> } | null>(null);
  const erase = async ({ id, label }: Version) => {
    const bringBack = await session.library.removeVersion(id);
    setErased({ label, bringBack });
  };
  return (
    <section className="versions">
      <h2>{words.title}</h2>
      {planId === null ? (
        <PutOnShelf session={session} fail={fail} />
      ) : (
        <KeepVersion key={planId} session={session} planId={planId} fail={fail} onKept={well} />
      )}
      {trouble ? <p className="shelf-fault">{trouble}</p> : null}
      {planId !== null && versions.length === 0 ? <p className="soft">{words.intro}</p> : null}
      <div role="status" className="shelf-said">
        {erased ? (
          <>
            <span>{words.removed(erased.label)}</span>{" "}
            <Button onPress={() => erased.bringBack().then(() => setErased(null), fail)}>{words.undo}</Button>
          </>
        ) : null}
      </div>
      <ul>
        {versions.map((version) => (
          <VersionLine
            key={version.id}
            session={session}
            version={version}
            others={versions.filter((other) => other !== version)}
            fail={fail}
            onErase={() => void erase(version).catch(fail)}
          />
        ))}
      </ul>
    </section>
  );
}
