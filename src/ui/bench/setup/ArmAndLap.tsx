/** The person's own arm and lap, each measure with a way to take it from points that a ruler can touch. */
import type { Arm, Lap } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { Button } from "../../controls/Button.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { usePlan, useStudio } from "../../use-studio.ts";
import { asked, FieldGrid, PlainField } from "../parts/fields.tsx";
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
  const [low, high] = arm.pivotHeightMm;
  return (
    <FieldGrid
      lengths={[
        asked(words.shortest, words.lengthHow, arm.lengthMm[0], RANGES.lengthMm, span("lengthMm", 0)),
        asked(words.longest, words.longestHow, arm.lengthMm[1], RANGES.lengthMm, span("lengthMm", 1)),
        asked(
          words.pivotToAxis,
          words.pivotToAxisHow,
          arm.pivotToAxisMm,
          RANGES.distanceMm,
          (pivotToAxisMm) => set({ pivotToAxisMm }),
        ),
        asked(words.lowest, words.lowestHow, low, RANGES.pivotHeightMm, span("pivotHeightMm", 0)),
        asked(words.highest, words.highestHow, high, RANGES.pivotHeightMm, span("pivotHeightMm", 1)),
        asked(
          words.hingeOffset,
          words.hingeOffsetHow,
          arm.hingeOffsetMm ?? 0,
          RANGES.hingeOffsetMm,
          (hingeOffsetMm) => set({ hingeOffsetMm }),
        ),
      ]}
    />
  );
}

function LapFields({ lap }: { lap: Lap }) {
  const { lap: words } = useWords(benchWords);
  const dispatch = useStudio((state) => state.dispatch);
  const set = (change: Partial<Lap>) => dispatch({ type: "set-rig", change: { lap: { ...lap, ...change } } });
  const band = (end: 0 | 1) => (value: number) => set({ bandMm: withEnd(lap.bandMm, end, value) });
  return (
    <FieldGrid
      lengths={[
        asked(words.diameter, words.diameterHow, lap.diameterMm, RANGES.lengthMm, (diameterMm) =>
          set({ diameterMm }),
        ),
        asked(words.bandInner, words.bandInnerHow, lap.bandMm[0], RANGES.distanceMm, band(0)),
        asked(words.bandOuter, words.bandOuterHow, lap.bandMm[1], RANGES.distanceMm, band(1)),
      ]}
    >
      <PlainField
        label={words.speed}
        value={lap.rpm}
        range={RANGES.rpm}
        step={10}
        unit={words.rpm}
        description={words.speedHow}
        onChange={(rpm) => set({ rpm })}
      />
    </FieldGrid>
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
