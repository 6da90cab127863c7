/** After the piece is turned over: one trial facet tells how far the wheel's zero really stands off, and the back is placed again. */
import { useState } from "react";
import { afterTrialFacet, offsetLeft, offsetTurn } from "../../../core/bench/set-up.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { Button } from "../../controls/Button.tsx";
import { Choice } from "../../controls/Choice.tsx";
import { Pick } from "../../controls/Pick.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { MaybeField } from "../parts/MaybeField.tsx";
import { tierName } from "../parts/names.ts";

const OFFSET_RANGE = { min: 0, max: 50 };
type Toward = "clockwise" | "counter";

/** Back tiers on which an offset along the surface means a turn: not a flat at the pole. */
const trialTiers = (plan: Plan) =>
  plan.tiers
    .map((tier, i) => ({ tier, i }))
    .filter(({ tier }) => tier.side === "back" && tier.armAngleDeg < 90);

export function TrialFacet() {
  const { trial: words, ...rest } = useWords(benchWords);
  const { degrees, length } = useFormat();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const choices = trialTiers(plan);
  const [chosen, setChosen] = useState<string | null>(null);
  const [offset, setOffset] = useState<number | undefined>();
  const [toward, setToward] = useState<Toward>("clockwise");
  const one = choices.find(({ tier }) => tier.id === chosen) ?? choices[0];
  if (!one) return <p className="small soft">{words.none}</p>;
  // Seen from the back, clockwise is the way in which azimuths grow.
  const along = (offset ?? 0) * (toward === "clockwise" ? 1 : -1);
  const turn = offsetTurn(along, plan.piece.diameterMm / 2, one.tier.armAngleDeg) ?? 0;
  const ring = (plan.piece.diameterMm / 2) * Math.cos((one.tier.armAngleDeg * Math.PI) / 180);
  const apply = () => {
    dispatch({ type: "set-rig", change: { setUps: afterTrialFacet(plan, turn).rig.setUps } });
    setOffset(undefined);
  };
  return (
    <div className="bench-trial">
      <h4>{words.title}</h4>
      <p className="soft">{words.what}</p>
      <div className="bench-fields">
        <Choice
          label={words.tier}
          value={one.tier.id}
          options={choices.map(({ tier, i }) => ({ id: tier.id, words: tierName(plan, i, rest) }))}
          onChange={setChosen}
        />
        <MaybeField
          label={words.offset}
          value={offset}
          range={OFFSET_RANGE}
          digits={2}
          description={words.offsetHow}
          onChange={setOffset}
        />
      </div>
      <Pick
        label={words.toward}
        value={toward}
        options={[
          { id: "clockwise", words: words.clockwise },
          { id: "counter", words: words.counter },
        ]}
        onChange={setToward}
      />
      {offset ? (
        <>
          <p>
            {words.means(
              degrees(Math.abs(turn), 2),
              degrees(Math.abs(offsetLeft(plan, turn)), 2),
              length(Math.abs((offsetLeft(plan, turn) * Math.PI) / 180) * ring, 2),
            )}
          </p>
          <Button look="outlined" onPress={apply}>
            {words.apply}
          </Button>
        </>
      ) : null}
    </div>
  );
}
