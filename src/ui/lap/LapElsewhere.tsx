/** The lap never takes another plan for its own: which one lies on the bench now, and the way on, or back. */
import { useState } from "react";
import { addressOf, putAddress } from "../address.ts";
import { Button } from "../controls/Button.tsx";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { type Studio, useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";
import { useSession } from "../visit.ts";
import { agreeToBench } from "./lap-open.ts";

/** Says in the address that the lap stands at what lies on the bench. */
function standHere(studio: Studio): void {
  agreeToBench(studio);
  putAddress({ ...addressOf(location.hash), lap: { planId: studio.getState().planId ?? "" } });
}

export function LapElsewhere() {
  const words = useWords(lapWords).elsewhere;
  const studio = useStudioStore();
  const plan = usePlan();
  const [isGone, setGone] = useState(false);
  const name = plan.name || words.unnamed;
  const session = useSession();
  const stoodAt = addressOf(location.hash).lap?.planId;
  const goBack = async (id: string) => {
    const opened = await session?.openPlan(id).catch(() => null);
    if (opened?.ok) standHere(studio);
    else setGone(true);
  };
  return (
    <div className="lap-step">
      <div className="lap-step-words">
        <h1 className="lap-title">{words.title}</h1>
        <p className="lap-line">{words.what(name)}</p>
        <p role="status">{isGone ? words.gone : null}</p>
        <div className="lap-answers">
          {stoodAt && !isGone ? (
            <button type="button" className="lap-press" onClick={() => void goBack(stoodAt)}>
              {words.back}
            </button>
          ) : null}
          <Button onPress={() => standHere(studio)}>{words.goOn(name)}</Button>
        </div>
      </div>
    </div>
  );
}
