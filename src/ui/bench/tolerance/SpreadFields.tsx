/** How far this person's settings scatter, and how the marble and its dop differ from the plan. */
import { DEFAULT_SPREAD } from "../../../core/bench/chances/spread.ts";
import type { Spread } from "../../../core/plan/document.ts";
import { COUNTS, RANGES } from "../../../core/plan/limits.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { usePlan, useStudio } from "../../use-studio.ts";
import { DegreeField, LengthField } from "../parts/fields.tsx";
import { MaybeField } from "../parts/MaybeField.tsx";

/** The marble's further diameters, two at most; emptied ones close up. */
function OtherDiameters() {
  const { tolerance: words } = useWords(benchWords);
  const { piece } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const others = piece.otherDiametersMm ?? [];
  const set = (place: number, value: number | undefined) => {
    const next = [...others];
    if (value === undefined) next.splice(place, 1);
    else next[Math.min(place, next.length)] = value;
    dispatch({ type: "set-piece", change: { otherDiametersMm: next.length > 0 ? next : undefined } });
  };
  return Array.from({ length: COUNTS.otherDiameters }, (_, i) => (
    <MaybeField
      // biome-ignore lint/suspicious/noArrayIndexKey: the places are fixed, first and second further diameter
      key={i}
      digits={2}
      label={words.diameters[i]}
      value={others[i]}
      range={RANGES.diameterMm}
      description={words.diameterHow}
      onChange={(value) => set(i, value)}
    />
  ));
}

export function SpreadFields() {
  const { tolerance: words } = useWords(benchWords);
  const { rig } = usePlan();
  const dispatch = useStudio((state) => state.dispatch);
  const own = rig.spread ?? {};
  const set = (change: Spread) => dispatch({ type: "set-rig", change: { spread: { ...own, ...change } } });
  return (
    <>
      <div className="bench-fields">
        <DegreeField
          label={words.arm}
          value={own.armDeg ?? DEFAULT_SPREAD.armDeg}
          range={RANGES.spreadDeg}
          digits={2}
          step={0.05}
          description={words.armHow}
          onChange={(armDeg) => set({ armDeg })}
        />
        <DegreeField
          label={words.stopPlay}
          value={own.stopDeg ?? DEFAULT_SPREAD.stopDeg}
          range={RANGES.spreadDeg}
          digits={2}
          step={0.05}
          description={words.stopHow}
          onChange={(stopDeg) => set({ stopDeg })}
        />
        <LengthField
          label={words.depth}
          value={own.depthMm ?? DEFAULT_SPREAD.depthMm}
          range={RANGES.spreadMm}
          digits={2}
          step={0.01}
          description={words.depthHow}
          onChange={(depthMm) => set({ depthMm })}
        />
        <OtherDiameters />
      </div>
      <p className="small soft">{rig.spread ? words.own : words.usual}</p>
    </>
  );
}
