/** What differs between a version and what is on the bench now, or another version. */
import { useEffect, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import type { Session } from "../../state/session.ts";
import type { Version } from "../../state/storage/versions.ts";
import { Choice } from "../controls/Choice.tsx";
import { historyWords } from "../messages/history.ts";
import { libraryWords } from "../messages/library.ts";
import { planWords } from "../messages/plan.ts";
import { ruleWords } from "../messages/rules.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { useStudio } from "../use-studio.ts";
import { differenceLines } from "./differences.ts";

/** So many differences are listed; the rest is counted. */
const MOST_LISTED = 12;
/** Stands for what is on the bench, among ids of versions. */
const NOW = "now";

/** A version's plan once it is read; null before, and for what is no version. */
function useVersionPlan(session: Session, id: string, fail: (error: unknown) => void): Plan | null {
  const [read, setRead] = useState<{ readonly id: string; readonly plan: Plan | null } | null>(null);
  useEffect(() => {
    if (id === NOW) return;
    let isWanted = true;
    session.library.version(id).then((plan) => isWanted && setRead({ id, plan }), fail);
    return () => {
      isWanted = false;
    };
  }, [session, id, fail]);
  return read?.id === id ? read.plan : null;
}

export function VersionDifferences({
  session,
  version,
  others,
  fail,
}: {
  session: Session;
  version: Version;
  others: readonly Version[];
  fail: (error: unknown) => void;
}) {
  const versions = useWords(libraryWords).versions;
  const words = {
    versions,
    history: useWords(historyWords),
    plan: useWords(planWords),
    rules: ruleWords[useLanguage()],
    format: useFormat(),
  };
  const [chosen, choose] = useState(NOW);
  const other = others.find(({ id }) => id === chosen);
  const onBench = useStudio((state) => state.plan);
  const before = useVersionPlan(session, version.id, fail);
  const read = useVersionPlan(session, other?.id ?? NOW, fail);
  const current = other ? read : onBench;
  const lines = before && current ? differenceLines(before, current, words) : null;
  const [here, there] = other ? [versions.inThis, versions.inOther] : [versions.before, versions.current];
  return (
    <div className="differences">
      {others.length > 0 ? (
        <Choice
          label={versions.against}
          value={other?.id ?? NOW}
          options={[
            { id: NOW, words: versions.bench },
            ...others.map(({ id, label }) => ({ id, words: label })),
          ]}
          onChange={choose}
        />
      ) : null}
      {lines ? (
        <p>{lines.length === 0 ? versions.same(other?.label) : versions.differs(other?.label)}</p>
      ) : null}
      <ul>
        {lines?.slice(0, MOST_LISTED).map((line) => (
          <li key={`${line.what} ${line.before} ${line.current}`}>
            <b>{line.what}</b>: {here} {line.before}, {there} {line.current}
          </li>
        ))}
        {lines && lines.length > MOST_LISTED ? <li>{versions.more(lines.length - MOST_LISTED)}</li> : null}
      </ul>
    </div>
  );
}
