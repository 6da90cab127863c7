/** "14 facets at 36.5 degrees on the front, starting at stop 3, until they just touch": every part can be changed in place. */
import { startAt, startStop, stopLabel } from "../../../core/bench/rig/set-up.ts";
import type { DepthRule, Tier } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { stopsOf } from "../../../core/plan/place.ts";
import type { Change } from "../../../state/commands.ts";
import { parseAngle, parseNumber } from "../../../words/format.ts";
import { Choice } from "../../controls/Choice.tsx";
import { NumberField } from "../../controls/NumberField.tsx";
import { Sentence } from "../../controls/Sentence.tsx";
import { planWords } from "../../messages/plan.ts";
import { useWords } from "../../messages/words.tsx";
import { MeetingBand, Quietly } from "../../shared/slots.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { DepthWords } from "./DepthWords.tsx";

interface FieldProps {
  readonly tier: Tier;
  readonly change: (change: Change<Omit<Tier, "id">>) => void;
}

/** Whole numbers without decimals, anything else with two. */
const DIGITS = 2;
const trimmed = (value: number, number: (value: number, digits: number) => string): string =>
  number(value, Number.isInteger(value) ? 0 : DIGITS);

function CountField({ tier, change }: FieldProps) {
  const words = useWords(planWords);
  return (
    <NumberField
      inline
      label={words.count}
      value={tier.count}
      min={RANGES.count.min}
      max={RANGES.count.max}
      step={1}
      format={String}
      parse={(text) => {
        const value = parseNumber(text);
        return value !== null && Number.isInteger(value) ? value : null;
      }}
      allowed={words.allowedCount}
      beside={
        <Quietly>
          <MeetingBand tier={tier} of="count" />
        </Quietly>
      }
      onChange={(count) => change({ count: Math.round(count) })}
    />
  );
}

function AngleField({ tier, change }: FieldProps) {
  const words = useWords(planWords);
  const { cuttingAngle, number, degrees } = useFormat();
  const shown = (angle: number) => (cuttingAngle ? 90 - angle : angle);
  const { min, max } = RANGES.armAngleDeg;
  return (
    <NumberField
      inline
      label={cuttingAngle ? words.cuttingAngle : words.armAngle}
      value={shown(tier.armAngleDeg)}
      min={min}
      max={max}
      step={0.5}
      format={(value) => `${number(value, Number.isInteger(value * 10) ? 1 : DIGITS)}°`}
      parse={parseAngle}
      allowed={words.allowedAngle(degrees(min, 0), degrees(max, 0))}
      beside={
        <Quietly>
          <MeetingBand tier={tier} of="angle" />
        </Quietly>
      }
      onChange={(angle) => change({ armAngleDeg: shown(angle) })}
    />
  );
}

function StartField({ tier, change }: FieldProps) {
  const words = useWords(planWords);
  const { number } = useFormat();
  const plan = usePlan();
  const stops = stopsOf(plan, tier.side);
  // As engraved on this side's wheel, where the first facet really stands.
  const stop = startStop(plan, tier, tier.startDeg);
  /** Refused where the wheel has no such stop; the arrow keys go round. */
  const onWheel = (value: number | null): number | null =>
    value === null ||
    stops === null ||
    (value >= 0 && value < stops) ||
    String(value) === stopLabel(plan, tier.side, 0)
      ? value
      : null;
  const field = (
    <NumberField
      inline
      label={words.start}
      value={stop ?? Number(tier.startDeg.toFixed(6))}
      min={RANGES.turnDeg.min}
      max={RANGES.turnDeg.max}
      step={1}
      format={(value) =>
        stops === null
          ? `${trimmed(value, number)}°`
          : Number.isInteger(value)
            ? stopLabel(plan, tier.side, value)
            : trimmed(value, number)
      }
      parse={(text) => onWheel(parseAngle(text))}
      allowed={stops === null ? words.startAllowedAngle : words.startAllowedStop(String(stops - 1))}
      onChange={(start) => change({ startDeg: startAt(plan, tier, start) })}
    />
  );
  return <Sentence template={stops === null ? words.startAngle : words.startStop} slots={{ start: field }} />;
}

function SideField({ tier, change }: FieldProps) {
  const words = useWords(planWords);
  return (
    <Choice
      inline
      label={words.side}
      value={tier.side}
      options={[
        { id: "front", words: words.sides.front },
        { id: "back", words: words.sides.back },
      ]}
      onChange={(side) => change({ side })}
    />
  );
}

export function TierSentence({ tier, index, isMet }: { tier: Tier; index: number; isMet: boolean }) {
  const words = useWords(planWords);
  const dispatch = useStudio((state) => state.dispatch);
  const change = (fields: Change<Omit<Tier, "id">>) =>
    void dispatch({ type: "change-tier", tierId: tier.id, change: fields });
  const template =
    tier.count > 1 ? words.sentence : tier.armAngleDeg === 90 ? words.sentencePole : words.sentenceOne;
  const parts = { tier, change };
  return (
    <div className="tier-sentence">
      {isMet ? null : <span className="wedge" role="img" aria-label={words.toll.stops} />}
      <Sentence
        template={template}
        slots={{
          count: <CountField {...parts} />,
          facets: words.facets(tier.count),
          angle: <AngleField {...parts} />,
          side: <SideField {...parts} />,
          start: <StartField {...parts} />,
          rule: <DepthWords tier={tier} index={index} onChange={(depth: DepthRule) => change({ depth })} />,
        }}
      />
    </div>
  );
}
