/** After the piece is turned over: one trial facet tells how far the wheel's zero really stands off, and the back is placed again. */
import { useMemo } from "react";
import { habitsOf } from "../../../core/bench/order/order.ts";
import {
  afterFineTurn,
  afterTrialFacet,
  canTrim,
  offsetLeft,
  offsetTurn,
} from "../../../core/bench/rig/set-up.ts";
import { reportAtOnce } from "../../../core/check/report.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { Button } from "../../controls/Button.tsx";
import { Choice } from "../../controls/Choice.tsx";
import { Pick } from "../../controls/Pick.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useStudioStore } from "../../studio.ts";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { changeTrial, useBenchScreen } from "../bench-screen.ts";
import { MaybeField } from "../parts/MaybeField.tsx";
import { tierName } from "../parts/names.ts";

const OFFSET_RANGE = { min: 0, max: 50 };
/** Less than this is left by no whole number of stops: it can't be seen at any wheel. */
const NOTHING_DEG = 0.005;

/** Pairs that meet in a plan. */
const meeting = (plan: Plan): ReadonlySet<string> =>
  new Set(reportAtOnce(plan).pairs.flatMap(({ a, b, state }) => (state === "gap" ? [] : [`${a} ${b}`])));

/** How many pairs that meet now no longer do when the back stands as it does after whole stops alone. */
function usePairsLost(plan: Plan, turn: number): number {
  return useMemo(() => {
    if (turn === 0) return 0;
    const left = meeting(afterTrialFacet(plan, turn));
    return [...meeting(plan)].filter((pair) => !left.has(pair)).length;
  }, [plan, turn]);
}

/** What whole stops leave gets an answer: the index's fine turn, or cementing anew by the ink mark, with what each costs. */
function Left({ plan, turn, ring }: { plan: Plan; turn: number; ring: number }) {
  const { trial: words } = useWords(benchWords);
  const { degrees, length, number } = useFormat();
  const lost = usePairsLost(plan, turn);
  const left = offsetLeft(plan, turn);
  if (Math.abs(left) < NOTHING_DEG) return <p>{words.nothingLeft}</p>;
  const deg = degrees(Math.abs(left), 2);
  const skin = length(Math.abs((left * Math.PI) / 180) * ring, 2);
  return (
    <>
      <p>{words.costs(skin, lost)}</p>
      <p>
        {canTrim(plan, left)
          ? words.fineTurn(deg)
          : words.cementAnew(number(habitsOf(plan.rig).turnOverMin, 0))}
      </p>
    </>
  );
}

/** Back tiers on which an offset along the surface means a turn: not a flat at the pole. */
const trialTiers = (plan: Plan) =>
  plan.tiers
    .map((tier, i) => ({ tier, i }))
    .filter(({ tier }) => tier.side === "back" && tier.armAngleDeg < 90);

export function TrialFacet() {
  const studio = useStudioStore();
  const { trial: words, ...rest } = useWords(benchWords);
  const { degrees, length } = useFormat();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const choices = trialTiers(plan);
  const { tierId, offsetMm: offset, toward } = useBenchScreen((state) => state.trial);
  const one = choices.find(({ tier }) => tier.id === tierId) ?? choices[0];
  if (!one) return <p className="small soft">{words.none}</p>;
  // Seen from the back, clockwise is the way in which azimuths grow.
  const along = (offset ?? 0) * (toward === "clockwise" ? 1 : -1);
  const turn = offsetTurn(along, plan.piece.diameterMm / 2, one.tier.armAngleDeg) ?? 0;
  const ring = (plan.piece.diameterMm / 2) * Math.cos((one.tier.armAngleDeg * Math.PI) / 180);
  const left = offsetLeft(plan, turn);
  const isTrimmed = Math.abs(left) >= NOTHING_DEG && canTrim(plan, left);
  const apply = (after: (plan: Plan, turn: number) => Plan) => {
    dispatch({ type: "set-rig", change: { setUps: after(plan, turn).rig.setUps } });
    changeTrial(studio, { offsetMm: undefined });
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
          onChange={(id) => changeTrial(studio, { tierId: id })}
        />
        <MaybeField
          label={words.offset}
          value={offset}
          range={OFFSET_RANGE}
          digits={2}
          description={words.offsetHow}
          onChange={(offsetMm) => changeTrial(studio, { offsetMm })}
        />
      </div>
      <Pick
        label={words.toward}
        value={toward}
        options={[
          { id: "clockwise", words: words.clockwise },
          { id: "counter", words: words.counter },
        ]}
        onChange={(way) => changeTrial(studio, { toward: way })}
      />
      {offset ? (
        <>
          <p>
            {words.means(
              degrees(Math.abs(turn), 2),
              degrees(Math.abs(left), 2),
              length(Math.abs((left * Math.PI) / 180) * ring, 2),
            )}
          </p>
          <Left plan={plan} turn={turn} ring={ring} />
          {isTrimmed ? (
            <Button look="outlined" onPress={() => apply(afterFineTurn)}>
              {words.applyFine}
            </Button>
          ) : null}
          <Button look="outlined" onPress={() => apply(afterTrialFacet)}>
            {words.apply}
          </Button>
        </>
      ) : null}
    </div>
  );
}
