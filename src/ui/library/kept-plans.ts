/** Any plan that is kept here, to be chosen: versions of the one on the bench, and the others of the shelf. */
import { useEffect, useState } from "react";
import type { Plan } from "../../core/plan/document.ts";
import { faultOf } from "../../state/storage/faults.ts";
import type { Version } from "../../state/storage/versions.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { lookWords } from "../messages/look.ts";
import { storageWords } from "../messages/storage.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useStudio } from "../use-studio.ts";
import { useSession } from "../visit.ts";
import { useShelf } from "./use-shelf.ts";
import { whyInexact } from "./why-inexact.ts";

/** Versions of the plan on the bench, as they are now. */
function useVersions(planId: string | null): readonly Version[] {
  const session = useSession();
  const [versions, setVersions] = useState<readonly Version[]>([]);
  useEffect(() => {
    setVersions([]);
    if (!session || planId === null) return;
    let isHere = true;
    const read = () =>
      session.library.versions(planId).then(
        (found) => isHere && setVersions(found),
        (error: unknown) => session.health.setState({ fault: faultOf(error).kind }),
      );
    void read();
    const stop = session.library.watch(() => void read());
    return () => {
      isHere = false;
      stop();
    };
  }, [session, planId]);
  return versions;
}

export interface KeptPlans {
  /** `words` says what it is, `name` what a picture of it is called. */
  readonly options: readonly { readonly id: string; readonly words: string; readonly name: string }[];
  /** The plan of one of the options; null where it can't be read or reckoned, and `onTrouble` has said why. */
  readonly read: (id: string) => Promise<Plan | null>;
}

/** @param onTrouble gets the words of what went wrong, null when a plan is asked for anew */
export function useKeptPlans(onTrouble: (words: string | null) => void): KeptPlans {
  const words = useWords(lookWords).compare;
  const { faults } = useWords(storageWords);
  const language = useLanguage();
  const session = useSession();
  const planId = useStudio((state) => state.planId);
  const planName = useStudio((state) => state.plan.name);
  const { plans } = useShelf("out", "");
  const versions = useVersions(planId);
  const taken = async (id: string): Promise<Plan | null> => {
    if (id.startsWith("version "))
      return (await session?.library.version(id.slice("version ".length))) ?? null;
    const opening = await session?.library.open(id.slice("shelf ".length));
    if (opening && !opening.ok) onTrouble(fileFaultInWords(opening.fault, language));
    return opening?.ok ? opening.file.plan : null;
  };
  const read = async (id: string): Promise<Plan | null> => {
    onTrouble(null);
    try {
      const plan = await taken(id);
      const why = plan && (await whyInexact(plan, language));
      if (why) onTrouble(why);
      return why ? null : plan;
    } catch (error) {
      onTrouble(faults[faultOf(error).kind]);
      return null;
    }
  };
  return {
    options: [
      ...versions.map(({ id, label }) => ({
        id: `version ${id}`,
        words: words.version(label),
        name: [planName, words.version(label)].filter(Boolean).join(", "),
      })),
      ...(plans ?? [])
        .filter((plan) => plan.id !== planId && plan.about !== null)
        .map(({ id, name }) => ({ id: `shelf ${id}`, words: name, name })),
    ],
    read,
  };
}
