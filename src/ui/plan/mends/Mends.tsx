/** Mends of one finding, each a button that says beforehand what it does and what comes of it. */
import { useEffect, useState } from "react";
import { useStore } from "zustand";
import type { Mend } from "../../../core/check/mends.ts";
import type { Plan } from "../../../core/plan/document.ts";
import type { PlanFinding } from "../../../core/plan/finding.ts";
import { costInWords, doubtsInWords, mendInWords } from "../../../words/mends.ts";
import { Button } from "../../controls/Button.tsx";
import { askIdeas } from "../../ideas/asked.ts";
import { lossesOf } from "../../losses.ts";
import { ideasWords } from "../../messages/ideas.ts";
import { useWords } from "../../messages/words.tsx";
import { useSettledPlan } from "../../settled.ts";
import { hasMany } from "../../settling.ts";
import { useSay, useSays } from "../../use-say.ts";
import { useStudio } from "../../use-studio.ts";
import { MendPicture } from "./MendPicture.tsx";
import { mendCommand } from "./mend-commands.ts";
import { askMends } from "./plan-worker-client.ts";
import "./mends.css";
import { useStudioStore } from "../../studio.ts";

/** A plan has to stand this long before mends are looked for: while it is being changed they would be out of date. */
const REST_MS = 350;

interface Found {
  readonly for: PlanFinding;
  readonly mends: readonly Mend[];
  /** Whether all has been looked for. */
  readonly isDone: boolean;
}

/** Mends as they are found; empty while the plan is on its way. */
function useMends(finding: PlanFinding): Found {
  const plan = useSettledPlan();
  const before = useStore(lossesOf(useStudioStore()), (found) => found.before);
  const isDragging = useStudio((state) => state.drag !== null);
  const nothing: Found = { for: finding, mends: [], isDone: false };
  const [found, setFound] = useState(nothing);
  useEffect(() => {
    if (isDragging) return;
    let stop = () => {};
    const timer = setTimeout(() => {
      const asked = askMends(plan, finding, before, (mend) =>
        setFound((old) => ({
          for: finding,
          mends: old.for === finding ? [...old.mends, mend] : [mend],
          isDone: false,
        })),
      );
      let isOpen = true;
      stop = () => {
        isOpen = false;
        asked.stop();
      };
      const finish = () => {
        if (isOpen)
          setFound((old) => ({ for: finding, mends: old.for === finding ? old.mends : [], isDone: true }));
      };
      // a worker that breaks off has found no more
      asked.done.then(finish, finish);
    }, REST_MS);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [plan, finding, before, isDragging]);
  return found.for === finding ? found : nothing;
}

/** Where nothing mends it: patterns near this one that meet. */
function NearestIdeas({ plan }: { plan: Plan }) {
  const studio = useStudioStore();
  const words = useWords(ideasWords);
  return (
    <Button
      className="mend"
      look="outlined"
      onPress={() => askIdeas(studio, { like: [plan.tiers], ways: "near" })}
    >
      {words.nearest}
    </Button>
  );
}

export default function Mends({ finding }: { finding: PlanFinding }) {
  const { mends, isDone } = useMends(finding);
  const say = useSay();
  const says = useSays();
  const plan = useSettledPlan();
  const dispatch = useStudio((state) => state.dispatch);
  if (isDone && mends.length === 0 && finding.severity === "stop") return <NearestIdeas plan={plan} />;
  return mends.map((mend) => {
    const said = mendInWords(mend, plan, say);
    return (
      <Button
        key={said}
        className="mend"
        look="outlined"
        data-doubtful={mend.doubts.length > 0 || undefined}
        onPress={() => dispatch(mendCommand(mend, says))}
      >
        {hasMany(plan) ? null : <MendPicture plan={plan} mend={mend} />}
        <span className="mend-words">
          <span className="mend-said">{said}</span>
          <span className="mend-cost"> {costInWords(mend, say).join(" \u00b7 ")}</span>
          {doubtsInWords(mend, plan, say).map((doubt) => (
            <span key={doubt} className="mend-doubt">
              {" "}
              {doubt}
            </span>
          ))}
        </span>
      </Button>
    );
  });
}
