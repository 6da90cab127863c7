/** A chip on the finished piece: where, how deep, how wide, and the smallest recut that takes it away. */
import { useMemo, useState } from "react";
import type { Recut } from "../../../core/bench/as-cut/mend-cut.ts";
import type { Plan } from "../../../core/plan/document.ts";
import { facetIds } from "../../../core/plan/references.ts";
import type { ChipQuestion } from "../../../worker/bench-worker.ts";
import { Button } from "../../controls/Button.tsx";
import { Choice } from "../../controls/Choice.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { benchPool } from "../bench-worker-client.ts";
import { Cautions } from "../parts/Cautions.tsx";
import { LengthField } from "../parts/fields.tsx";
import { MaybeField } from "../parts/MaybeField.tsx";
import { facetNumber, tierName, tierNameOf } from "../parts/names.ts";
import { useAsked } from "../use-asked.ts";
import { Changes } from "./Changes.tsx";

const askRecuts = (question: ChipQuestion): Promise<readonly Recut[]> => benchPool.run("recuts", question);

/** Chips are small beside the piece; a place on a facet lies within the piece's radius of its middle. */
const CHIP_RANGE = { min: 0, max: 50, openMin: true };
/** More ways than these only cost more glass. */
const SHOWN = 3;
/** A way that takes so many times the glass of the first is a choice nobody makes without being told. */
const DEAR = 10;

interface ChipState {
  readonly facetId: string;
  readonly acrossMm: number;
  readonly upMm: number;
  readonly depthMm: number | undefined;
  readonly diameterMm: number | undefined;
}

function ChipPlace({
  plan,
  chip,
  set,
}: {
  plan: Plan;
  chip: ChipState;
  set: (change: Partial<ChipState>) => void;
}) {
  const words = useWords(benchWords);
  const reach = plan.piece.diameterMm / 2;
  const range = { min: -reach, max: reach };
  const tierId = chip.facetId.slice(0, chip.facetId.lastIndexOf("/"));
  const tier = plan.tiers.find((one) => one.id === tierId) ?? plan.tiers[0];
  return (
    <div className="bench-fields">
      <Choice
        label={words.chip.tier}
        value={tier.id}
        options={plan.tiers.map((one, i) => ({ id: one.id, words: tierName(plan, i, words) }))}
        onChange={(id) => set({ facetId: `${id}/1` })}
      />
      <Choice
        label={words.chip.facet}
        value={chip.facetId}
        options={facetIds(tier).map((id) => ({ id, words: words.asCut.facet(String(facetNumber(id))) }))}
        onChange={(facetId) => set({ facetId })}
      />
      <LengthField
        label={words.chip.across}
        value={chip.acrossMm}
        range={range}
        step={0.5}
        description={words.chip.acrossHow}
        onChange={(acrossMm) => set({ acrossMm })}
      />
      <LengthField
        label={words.chip.up}
        value={chip.upMm}
        range={range}
        step={0.5}
        description={words.chip.upHow}
        onChange={(upMm) => set({ upMm })}
      />
      <MaybeField
        label={words.chip.depth}
        value={chip.depthMm}
        range={CHIP_RANGE}
        digits={2}
        description={words.chip.depthHow}
        onChange={(depthMm) => set({ depthMm })}
      />
      <MaybeField
        label={words.chip.diameter}
        value={chip.diameterMm}
        range={CHIP_RANGE}
        digits={1}
        description={words.chip.diameterHow}
        onChange={(diameterMm) => set({ diameterMm })}
      />
    </div>
  );
}

function Ways({ plan, recuts }: { plan: Plan; recuts: readonly Recut[] }) {
  const words = useWords(benchWords);
  const { length, number } = useFormat();
  const dispatch = useStudio((state) => state.dispatch);
  if (recuts.length === 0) return <p>{words.chip.none}</p>;
  return (
    <ol className="bench-numbered">
      {recuts.slice(0, SHOWN).map((recut) => (
        <li key={recut.tier}>
          <p className="bench-sentence">
            {words.chip.way(
              tierNameOf(plan, recut.tier, words),
              String(facetNumber(recut.facet)),
              length(recut.deeperMm, 2),
            )}
          </p>
          {recut.removedMm3 >= DEAR * recuts[0].removedMm3 ? (
            <p className="bench-dear">
              {words.chip.dear(number(Math.floor(recut.removedMm3 / recuts[0].removedMm3), 0))}
            </p>
          ) : null}
          {recut.intoInsideMm > 0 ? (
            <p className="bench-dear">{words.chip.intoInside(length(recut.intoInsideMm, 2))}</p>
          ) : null}
          <Changes mended={recut} />
          <Button look="outlined" onPress={() => dispatch({ type: "replace-plan", plan: recut.plan })}>
            {words.chip.take}
          </Button>
        </li>
      ))}
    </ol>
  );
}

export function ChipPart() {
  const { chip: words, counting } = useWords(benchWords);
  const plan = usePlan();
  const [chip, setChip] = useState<ChipState>({
    facetId: `${plan.tiers[0].id}/1`,
    acrossMm: 0,
    upMm: 0,
    depthMm: undefined,
    diameterMm: undefined,
  });
  const isThere = plan.tiers.some((tier) => facetIds(tier).includes(chip.facetId));
  const facetId = isThere ? chip.facetId : `${plan.tiers[0].id}/1`;
  const { acrossMm, upMm, depthMm, diameterMm } = chip;
  const question = useMemo(
    (): ChipQuestion | null =>
      depthMm === undefined || diameterMm === undefined
        ? null
        : { plan, facetId, acrossMm, upMm, depthMm, diameterMm },
    [plan, facetId, acrossMm, upMm, depthMm, diameterMm],
  );
  const asked = useAsked(question, askRecuts);
  return (
    <details className="bench-fold">
      <summary>{words.title}</summary>
      <p className="soft">{words.what}</p>
      <Cautions list={["cracked-glass"]} />
      <ChipPlace plan={plan} chip={{ ...chip, facetId }} set={(change) => setChip({ ...chip, ...change })} />
      {question === null ? null : asked.isWaiting || asked.answer === null ? (
        <p className="faint">{counting}</p>
      ) : (
        <Ways plan={plan} recuts={asked.answer} />
      )}
    </details>
  );
}
