/** A measured width, typed at the lap on keys for wet fingers. It is kept as measured; the plan itself changes only under As cut, when asked. */
import { useEffect, useRef, useState } from "react";
import type { Bench } from "../../core/bench/bench.ts";
import { isWithin, RANGES } from "../../core/plan/limits.ts";
import { decimalSign } from "../../words/format.ts";
import { withMeasured } from "../bench/as-cut/as-cut-plan.ts";
import { tierNameOf } from "../bench/parts/names.ts";
import { benchWords } from "../messages/bench.ts";
import { lapWords } from "../messages/lap.ts";
import { useWords } from "../messages/words.tsx";
import { useFormat } from "../use-format.ts";
import { usePlan, useStudio } from "../use-studio.ts";
import { HoldButton } from "./HoldButton.tsx";

/** Longer than any reading of calipers. */
const LONGEST = 9;
const DIGITS = ["1", "2", "3", "4", "5", "6", "7", "8", "9"] as const;

export function LapWidth({ bench, tierId, onDone }: { bench: Bench; tierId: string; onDone: () => void }) {
  const words = useWords(lapWords).typed;
  const names = useWords(benchWords);
  const { length, locale, unit, parseLength } = useFormat();
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const [typed, setTyped] = useState("");
  const room = useRef<HTMLFieldSetElement>(null);
  useEffect(() => room.current?.focus(), []);
  const planned = bench.tiers.find((one) => one.tier === tierId)?.stages.at(-1)?.widthMm ?? null;
  const most = Math.min(plan.piece.diameterMm, RANGES.widthMm.max);
  const mm = typed === "" ? null : parseLength(typed);
  const isWrong = typed !== "" && (mm === null || mm <= 0 || mm > most || !isWithin(RANGES.widthMm, mm));
  const add = (key: string) => setTyped((old) => (old + key).slice(0, LONGEST));
  const take = () => setTyped((old) => old.slice(0, -1));
  const keep = () => {
    const tier = plan.tiers.find(({ id }) => id === tierId);
    if (!tier || mm === null || isWrong) return;
    const asCut = withMeasured(tier.asCut, { widthMm: mm });
    if (dispatch({ type: "change-tier", tierId, change: { asCut } }).ok) onDone();
  };
  const sign = decimalSign(locale);
  const keys = unit === "inch-fraction" ? [...DIGITS, " ", "0", "/"] : [...DIGITS, sign, "0"];
  return (
    <fieldset
      ref={room}
      className="lap-width"
      aria-label={words.title(tierNameOf(plan, tierId, names))}
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key === "Backspace") take();
        else if (/^[0-9.,/ ]$/.test(event.key) && event.target === event.currentTarget) add(event.key);
        else return;
        event.preventDefault();
      }}
    >
      <div className="lap-width-said">
        <p className="lap-where">{words.title(tierNameOf(plan, tierId, names))}</p>
        <p className="lap-typed" aria-live="polite">
          <b>{typed === "" ? "–" : typed}</b>
          <span className="unit">{unit === "mm" ? "mm" : "in"}</span>
        </p>
        {isWrong ? (
          <p role="alert">{words.allowed(length(most))}</p>
        ) : (
          <p>{planned === null ? words.stays : `${words.planned(length(planned, 2))} ${words.stays}`}</p>
        )}
      </div>
      <div className="lap-keypad">
        {keys.map((key) => (
          <button key={key} type="button" onClick={() => add(key)}>
            {key === " " ? words.space : key}
          </button>
        ))}
        <button type="button" aria-label={words.takeLabel} onClick={take}>
          {words.take}
        </button>
      </div>
      <HoldButton
        className="lap-next"
        label={words.keepLabel}
        isDisabled={mm === null || isWrong}
        onHeld={keep}
      >
        {words.keep}
      </HoldButton>
    </fieldset>
  );
}
