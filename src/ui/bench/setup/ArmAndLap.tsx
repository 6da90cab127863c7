/** The person's own arm and lap, each measure with a way to take it from points that a ruler can touch. */
import type { Arm, Lap } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { usePlan, useStudio } from "../../use-studio.ts";
import { LengthField, PlainField } from "../parts/fields.tsx";
import { STARTING_ARM, STARTING_LAP } from "./rig-defaults.ts";

type Span = readonly [number, number];

/** A span keeps its order: an end moved past the other takes it along. */
const withEnd = ([low, high]: Span, end: 0 | 1, value: number): Span =>
  end === 0 ? [value, Math.max(value, high)] : [Math.min(low, value), value];

function ArmFields({ arm }: { arm: Arm }) {
  const { arm: words } = useWords(benchWords);
  const dispatch = useStudio((state) => state.dispatch);
  const set = (change: Partial<Arm>) => dispatch({ type: "set-rig", change: { arm: { ...arm, ...change } } });
  const span = (key: "lengthMm" | "pivotHeightMm", end: 0 | 1) => (value: number) =>
    set({ [key]: withEnd(arm[key], end, value) });
  return (
    <div className="bench-fields">
      <LengthField
        label={words.shortest}
        value={arm.lengthMm[0]}
        range={RANGES.lengthMm}
        description={words.lengthHow}
        onChange={span("lengthMm", 0)}
      />
      <LengthField
        label={words.longest}
        value={arm.lengthMm[1]}
        range={RANGES.lengthMm}
        description={words.longestHow}
        onChange={span("lengthMm", 1)}
      />
      <LengthField
        label={words.pivotToAxis}
        value={arm.pivotToAxisMm}
        range={RANGES.distanceMm}
        description={words.pivotToAxisHow}
        onChange={(pivotToAxisMm) => set({ pivotToAxisMm })}
      />
      <LengthField
        label={words.lowest}
        value={arm.pivotHeightMm[0]}
        range={RANGES.pivotHeightMm}
        description={words.lowestHow}
        onChange={span("pivotHeightMm", 0)}
      />
      <LengthField
        label={words.highest}
        value={arm.pivotHeightMm[1]}
        range={RANGES.pivotHeightMm}
        description={words.highestHow}
        onChange={span("pivotHeightMm", 1)}
      />
      <LengthField
        label={words.hingeOffset}
        value={arm.hingeOffsetMm ?? 0}
        range={RANGES.hingeOffsetMm}
        description={words.hingeOffsetHow}
        onChange={(hingeOffsetMm) => set({ hingeOffsetMm })}
      />
    </div>
  );
}

function LapFields({ lap }: { lap: Lap }) {
  const { lap: words } = useWords(benchWords);
  const dispatch = useStudio((state) => state.dispatch);
  const set = (change: Partial<Lap>) => dispatch({ type: "set-rig", change: { lap: { ...lap, ...change } } });
  const band = (end: 0 | 1) => (value: number) => set({ bandMm: withEnd(lap.bandMm, end, value) });
  return (
    <div className="bench-fields">
      <LengthField
        label={words.diameter}
        value={lap.diameterMm}
        range={RANGES.lengthMm}
        description={words.diameterHow}
        onChange={(diameterMm) => set({ diameterMm })}
      />
      <LengthField
        label={words.bandInner}
        value={lap.bandMm[0]}
        range={RANGES.distanceMm}
        description={words.bandInnerHow}
        onChange={band(0)}
      />
      <LengthField
        label={words.bandOuter}
        value={lap.bandMm[1]}
        range={RANGES.distanceMm}
        description={words.bandOuterHow}
        onChange={band(1)}
      />
      <PlainField
        label={words.speed}
        value={lap.rpm}
        range={RANGES.rpm}
        step={10}
        unit={words.rpm}
        description={words.speedHow}
        onChange={(rpm) => set({ rpm })}
      />
    </div>
  );
}

export function ArmAndLap() {
  const words = useWords(benchWords);
  const { arm, lap } = usePlan().rig;
  const dispatch = useStudio((state) => state.dispatch);
  const isThere = arm !== undefined && lap !== undefined;
  const begin = () =>
    dispatch({ type: "set-rig", change: { arm: arm ?? STARTING_ARM, lap: lap ?? STARTING_LAP } });
  return (
    <section className="bench-part" aria-labelledby="bench-arm">
      <h2 id="bench-arm">{words.arm.title}</h2>
      {isThere ? (
        <>
          <p className="soft">{words.arm.zero}</p>
          <ArmFields arm={arm} />
          <h3>{words.lap.title}</h3>
          <LapFields lap={lap} />
          <Button onPress={() => dispatch({ type: "set-rig", change: { arm: undefined, lap: undefined } })}>
            {words.arm.remove}
          </Button>
        </>
      ) : (
        <>
          <p>{words.arm.why}</p>
          <Button look="outlined" onPress={begin}>
            {words.arm.begin}
          </Button>
          <p className="small soft">{words.arm.beginWhat}</p>
        </>
      )}
    </section>
  );
}
