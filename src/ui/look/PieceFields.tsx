/** How the piece itself is shown: as planned, or as it would be in another glass or at another stage of the work. */

import { GLASS_NAMES } from "../../core/optics/glasses.ts";
import type { Finish } from "../../core/plan/document.ts";
import { nameOrPlace } from "../../words/names.ts";
import { Choice } from "../controls/Choice.tsx";
import { Toggle } from "../controls/Toggle.tsx";
import { lookWords } from "../messages/look.ts";
import { planWords } from "../messages/plan.ts";
import { useWords } from "../messages/words.tsx";
import { useStudioStore } from "../studio.ts";
import { usePlan, useStudio } from "../use-studio.ts";
import { type FinishChoice, type GlassChoice, setLook, useLook } from "./look-settings.ts";

const GLASSES: readonly GlassChoice[] = ["planned", ...GLASS_NAMES];
const FINISHES: readonly FinishChoice[] = ["planned", "ground", "prepolished", "polished"];

const TIER_FINISHES: readonly Finish[] = ["polished", "prepolished", "ground"];

/** How fine a face each tier is left with: part of the plan, seen here as it is chosen. */
function TierFinishes() {
  const words = useWords(planWords);
  const { tiers } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  return tiers.map((tier, i) => (
    <Choice<Finish>
      key={tier.id}
      label={`${words.finish}: ${nameOrPlace(tier.name, i, words.tierNumber)}`}
      value={tier.finish ?? "polished"}
      options={TIER_FINISHES.map((id) => ({ id, words: words.finishes[id] }))}
      onChange={(next) => dispatch({ type: "change-tier", tierId: tier.id, change: { finish: next } })}
    />
  ));
}

export function PieceFields() {
  const studio = useStudioStore();
  const words = useWords(lookWords);
  const { glasses } = useWords(planWords).piece;
  const plan = usePlan();
  const glass = useLook((settings) => settings.glass);
  const finish = useLook((settings) => settings.finish);
  const isWet = useLook((settings) => settings.isWet);
  const showInside = useLook((settings) => settings.showInside);
  const hasDispersion = useLook((settings) => settings.hasDispersion);
  const isTurning = useLook((settings) => settings.isTurning);
  const isRough =
    finish === "planned"
      ? plan.tiers.some((tier) => tier.finish === "ground" || tier.finish === "prepolished")
      : finish !== "polished";
  return (
    <section className="look-part">
      <h2>{words.glass.title}</h2>
      <Choice
        label={words.glass.finish}
        value={finish}
        options={FINISHES.map((id) => ({ id, words: words.glass.finishes[id] }))}
        onChange={(next) => setLook(studio, { finish: next })}
      />
      {finish === "planned" ? <TierFinishes /> : null}
      <Choice
        label={words.glass.glass}
        value={glass}
        options={GLASSES.map((id) => ({ id, words: id === "planned" ? words.glass.planned : glasses[id] }))}
        onChange={(next) => setLook(studio, { glass: next })}
      />
      <p className="look-note">{words.glass.onlyLook}</p>
      {isRough ? (
        <Toggle isOn={isWet} onChange={(next) => setLook(studio, { isWet: next })}>
          {words.glass.wet}
        </Toggle>
      ) : null}
      {plan.piece.inside?.length ? (
        <Toggle isOn={showInside} onChange={(next) => setLook(studio, { showInside: next })}>
          {words.glass.inside}
        </Toggle>
      ) : null}
      <Toggle isOn={hasDispersion} onChange={(next) => setLook(studio, { hasDispersion: next })}>
        {words.glass.fire}
      </Toggle>
      <Toggle isOn={isTurning} onChange={(next) => setLook(studio, { isTurning: next })}>
        {words.turning}
      </Toggle>
    </section>
  );
}
