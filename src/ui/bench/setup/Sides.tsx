/** Front and back, each a set-up of its own: what the wheel reads there and what the piece is held by. */
import { directionOf, readMark } from "../../../core/bench/rig/set-up.ts";
import type { SetUp, SetUpDop, Side } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { Pick } from "../../controls/Pick.tsx";
import { Toggle } from "../../controls/Toggle.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useStudio } from "../../use-studio.ts";
import { DegreeField, LengthField, PlainField } from "../parts/fields.tsx";
import { MaybeField } from "../parts/MaybeField.tsx";
import { TextField } from "../parts/TextField.tsx";
import { USUAL_STOPS } from "./rig-defaults.ts";
import { TrialFacet } from "./TrialFacet.tsx";

type Change = { readonly [K in keyof SetUp]?: SetUp[K] | undefined };

/** A set-up with fields set or (undefined) removed. */
function changed(setUp: SetUp, change: Change): SetUp {
  return Object.fromEntries(
    Object.entries({ ...setUp, ...change }).filter(([, value]) => value !== undefined),
  );
}

interface SideProps {
  readonly side: Side;
  readonly setUp: SetUp;
  readonly set: (change: Change) => void;
}

function DopFields({ setUp, set }: SideProps) {
  const { sides: words } = useWords(benchWords);
  const { diameterMm } = usePlan().piece;
  const { dop } = setUp;
  const change = (next: Partial<Record<keyof SetUpDop, number | undefined>>) => {
    const fields = Object.entries({ ...dop, ...next }).filter(([, value]) => value !== undefined);
    return set({ dop: Object.fromEntries(fields) as unknown as SetUpDop });
  };
  return (
    <>
      <Toggle
        isOn={dop !== undefined}
        onChange={(on) => set({ dop: on ? { diameterMm: Math.round(diameterMm * 0.45) } : undefined })}
      >
        {words.ownDop}
      </Toggle>
      {dop ? (
        <div className="bench-fields">
          <LengthField
            label={words.dopDiameter}
            value={dop.diameterMm}
            range={RANGES.sizeMm}
            onChange={(mm) => change({ diameterMm: mm })}
          />
          <MaybeField
            label={words.dopLength}
            value={dop.lengthMm}
            range={RANGES.lengthMm}
            description={words.dopLengthHow}
            onChange={(mm) => change({ lengthMm: mm })}
          />
          <MaybeField
            label={words.chuck}
            value={dop.chuckDiameterMm}
            range={RANGES.sizeMm}
            description={words.chuckHow}
            onChange={(mm) => change({ chuckDiameterMm: mm })}
          />
          <MaybeField
            label={words.runOut}
            value={dop.runOutMm}
            range={RANGES.spreadMm}
            digits={2}
            description={words.runOutHow}
            onChange={(mm) => change({ runOutMm: mm })}
          />
        </div>
      ) : null}
    </>
  );
}

function WheelFields({ side, setUp, set }: SideProps) {
  const { sides: words } = useWords(benchWords);
  const plan = usePlan();
  const { degrees } = useFormat();
  const mark = readMark(plan, side);
  const isOwnWheel = setUp.wheelStops !== undefined;
  return (
    <>
      <div className="bench-fields">
        <DegreeField
          label={words.zero}
          value={setUp.zeroDeg ?? 0}
          range={RANGES.turnDeg}
          digits={2}
          description={words.zeroHow}
          onChange={(zeroDeg) => set({ zeroDeg })}
        />
        <TextField
          label={words.zeroLabel}
          value={setUp.zeroLabel ?? ""}
          placeholder="0"
          description={words.zeroLabelHow}
          onChange={(text) => set({ zeroLabel: text || undefined })}
        />
      </div>
      <Pick
        label={words.direction}
        value={directionOf(plan, side)}
        options={[
          { id: "with", words: words.withAzimuth },
          { id: "against", words: words.againstAzimuth },
        ]}
        onChange={(direction) => set({ direction })}
      />
      <p className="small soft">{side === "back" ? words.directionBack : words.directionHow}</p>
      <p className="small soft">
        {words.mark(
          mark.isStop ? mark.label : `${mark.label}°`,
          mark.isStop,
          Math.abs(mark.pastDeg) < 0.05 ? null : degrees(Math.abs(mark.pastDeg)),
          mark.pastDeg > 0,
        )}
      </p>
      <Toggle isOn={isOwnWheel} onChange={(on) => set({ wheelStops: on ? plan.rig.wheelStops : undefined })}>
        {words.ownWheel}
      </Toggle>
      {isOwnWheel ? (
        <>
          {setUp.wheelStops === null ? null : (
            <PlainField
              label={words.ownStops}
              value={setUp.wheelStops ?? USUAL_STOPS}
              range={RANGES.wheelStops}
              onChange={(wheelStops) => set({ wheelStops })}
            />
          )}
          <Toggle
            isOn={setUp.wheelStops === null}
            onChange={(free) => set({ wheelStops: free ? null : (plan.rig.wheelStops ?? USUAL_STOPS) })}
          >
            {words.ownFree}
          </Toggle>
        </>
      ) : null}
    </>
  );
}

function OneSide({ side }: { side: Side }) {
  const { sides: words } = useWords(benchWords);
  const plan = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const setUp = plan.rig.setUps?.[side] ?? {};
  const set = (change: Change) =>
    dispatch({
      type: "set-rig",
      change: { setUps: { ...plan.rig.setUps, [side]: changed(setUp, change) } },
    });
  const props = { side, setUp, set };
  return (
    <div className="bench-side">
      <h3>{words[side]}</h3>
      <WheelFields {...props} />
      <DopFields {...props} />
      {side === "back" ? <TrialFacet /> : null}
    </div>
  );
}

export function Sides() {
  const words = useWords(benchWords);
  const { inkMarkDeg } = usePlan().piece;
  const dispatch = useStudio((state) => state.dispatch);
  return (
    <section className="bench-part" aria-labelledby="bench-sides">
      <h2 id="bench-sides">{words.sides.title}</h2>
      <p className="soft">{words.sides.what}</p>
      <DegreeField
        label={words.sides.inkMark}
        value={inkMarkDeg ?? 0}
        range={RANGES.turnDeg}
        digits={1}
        description={words.sides.inkMarkHow}
        onChange={(deg) => dispatch({ type: "set-piece", change: { inkMarkDeg: deg } })}
      />
      <OneSide side="front" />
      <OneSide side="back" />
    </section>
  );
}
