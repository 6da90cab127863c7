/** Facets measured by themselves: one that came out deeper or wider than its tier. */
import { useState } from "react";
import { readStop } from "../../../core/bench/rig/set-up.ts";
import type { AsCut, Tier } from "../../../core/plan/document.ts";
import { RANGES } from "../../../core/plan/limits.ts";
import { facetIds } from "../../../core/plan/references.ts";
import { Choice } from "../../controls/Choice.tsx";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useSolved } from "../../use-studio.ts";
import { MaybeField } from "../parts/MaybeField.tsx";
import { facetNumber } from "../parts/names.ts";
import { withFacet } from "./as-cut-plan.ts";
import { useCalipers } from "./use-calipers.ts";

export function SingleFacets({
  tier,
  onChange,
}: {
  tier: Tier;
  onChange: (asCut: AsCut | undefined) => void;
}) {
  const { asCut: words } = useWords(benchWords);
  const solved = useSolved();
  const calipers = useCalipers(tier);
  const ids = facetIds(tier);
  const measured = Object.keys(tier.asCut?.facets ?? {});
  const [chosen, setChosen] = useState(measured[0] ?? ids[0]);
  const id = ids.includes(chosen) ? chosen : ids[0];
  const own = tier.asCut?.facets?.[id] ?? {};
  const nameOf = (facetId: string) => {
    const placed = solved.facets.find((facet) => facet.id === facetId);
    const read = placed && readStop(solved.plan, placed);
    return !read || read.stop === null
      ? words.facet(String(facetNumber(facetId)))
      : words.facetStop(String(facetNumber(facetId)), read.label);
  };
  return (
    <>
      <h3>{words.single}</h3>
      <div className="bench-fields">
        <Choice
          label={words.whichFacet}
          value={id}
          options={ids.map((one) => ({
            id: one,
            words: nameOf(one),
            detail: measured.includes(one) ? words.measuredAlready : undefined,
          }))}
          onChange={setChosen}
        />
        {(["widthMm", ...calipers.keys] as const).map((key) => (
          <MaybeField
            key={`${id} ${key}`}
            digits={2}
            label={words.fields[key]}
            description={key === "caliperMm" ? (calipers.said ?? words.how[key]) : words.how[key]}
            value={own[key]}
            range={key === "widthMm" ? RANGES.widthMm : RANGES.acrossMm}
            onChange={(value) => onChange(withFacet(tier.asCut, id, { [key]: value }))}
          />
        ))}
      </div>
    </>
  );
}
