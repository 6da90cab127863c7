/** The index wheel: how many stops, which counts they divide into, what doesn't come out even. */
import { wheelFit } from "../../../core/bench/rig/set-up.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { evenCounts } from "../../../core/plan/place.ts";
import { Pick } from "../../controls/Pick.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useFormat } from "../../use-format.ts";
import { usePlan, useSolved, useStudio } from "../../use-studio.ts";
import { DegreeField, PlainField } from "../parts/fields.tsx";
import { tierName } from "../parts/names.ts";
import { COMMON_STOPS } from "./rig-defaults.ts";

const FREE = "free";

/** Tiers that don't come out even, each with how far off its worst facet stands. */
function UnevenTiers() {
  const words = useWords(benchWords);
  const { degrees, length } = useFormat();
  const solved = useSolved();
  const { plan } = solved;
  const uneven = plan.tiers.flatMap((tier, i) => {
    const fit = wheelFit(solved, i);
    return fit.divides ? [] : [{ tier, i, fit }];
  });
  if (plan.tiers.length === 0) return null;
  if (uneven.length === 0) return <p>{words.wheel.allEven}</p>;
  return uneven.map(({ tier, i, fit }) => (
    <p key={tier.id} className="finding" data-severity="warn">
      {words.wheel.uneven(
        tierName(plan, i, words),
        tier.count,
        degrees(fit.errorDeg, 2),
        length(fit.gapMm, 2),
      )}
    </p>
  ));
}

export function Wheel() {
  const words = useWords(benchWords);
  const { wheelStops, indexTrimDeg = 0 } = usePlan().rig;
  const dispatch = useStudio((state) => state.dispatch);
  const set = (stops: number | null) => dispatch({ type: "set-rig", change: { wheelStops: stops } });
  const isCommon = wheelStops !== null && COMMON_STOPS.includes(wheelStops);
  return (
    <section className="bench-part" aria-labelledby="bench-wheel">
      <h2 id="bench-wheel">{words.wheel.title}</h2>
      <Pick
        label={words.wheel.common}
        value={wheelStops === null ? FREE : isCommon ? String(wheelStops) : ""}
        options={[
          ...COMMON_STOPS.map((n) => ({ id: String(n), words: String(n) })),
          { id: FREE, words: words.wheel.free },
        ]}
        onChange={(id) => set(id === FREE ? null : Number(id))}
      />
      {wheelStops === null ? (
        <p className="soft">{words.wheel.freeWhat}</p>
      ) : (
        <>
          <PlainField label={words.wheel.any} value={wheelStops} range={RANGES.wheelStops} onChange={set} />
          <p className="soft">
            {words.wheel.divides(
              evenCounts(wheelStops)
                .filter((n) => n > 1 && n <= RANGES.count.max)
                .join(", "),
            )}
          </p>
        </>
      )}
      {wheelStops === null ? null : (
        <DegreeField
          label={words.wheel.trim}
          description={words.wheel.trimHow}
          value={indexTrimDeg}
          range={RANGES.indexTrimDeg}
          digits={2}
          onChange={(deg) => dispatch({ type: "set-rig", change: { indexTrimDeg: deg } })}
        />
      )}
      <UnevenTiers />
    </section>
  );
}
