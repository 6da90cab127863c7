/** The measurements of a tier: calipers on a facet, over the pole, flat to skin, the angle as read. Empty = not measured. */
import { DEFAULT_READ_SD_DEG, DEFAULT_SD_MM } from "../../../core/bench/as-cut/measurements.ts";
import type { AsCut, Measured, Tier } from "../../../core/plan/document.ts";
import { RANGES, type Range } from "../../../core/plan/limits.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { DegreeField, LengthField } from "../parts/fields.tsx";
import { MaybeField } from "../parts/MaybeField.tsx";
import { useCalipers } from "./use-calipers.ts";

type Change = { readonly [K in keyof AsCut]?: AsCut[K] | undefined };
type MeasureKey = keyof Measured;

const RANGE_OF: Readonly<Record<MeasureKey, Range>> = {
  widthMm: RANGES.widthMm,
  heightMm: RANGES.widthMm,
  gapMm: RANGES.gapMm,
  edgeMm: RANGES.widthMm,
  acrossMm: RANGES.acrossMm,
  flatToSkinMm: RANGES.acrossMm,
  caliperMm: RANGES.acrossMm,
  readDeg: RANGES.readDeg,
  pivotHeightMm: RANGES.pivotHeightMm,
  armLengthMm: RANGES.lengthMm,
};
/** Measurements between neighbours make no sense on a facet alone, over the pole none on a flat at the pole. */
const measuresOf = (tier: Tier, calipers: readonly MeasureKey[]): readonly MeasureKey[] => {
  const pairs: readonly MeasureKey[] = tier.count > 1 ? ["edgeMm", "gapMm", "acrossMm"] : [];
  return ["widthMm", "heightMm", ...pairs, ...calipers, "readDeg", "pivotHeightMm", "armLengthMm"];
};

export function Measures({ tier, onChange }: { tier: Tier; onChange: (change: Change) => void }) {
  const { asCut: words } = useWords(benchWords);
  const calipers = useCalipers(tier);
  const asCut = tier.asCut ?? {};
  return (
    <>
      <p className="soft">{words.measureWhat}</p>
      <div className="bench-fields">
        {measuresOf(tier, calipers.keys).map((key) => (
          <MaybeField
            key={key}
            kind={key === "readDeg" ? "angle" : "length"}
            digits={key === "readDeg" ? 1 : 2}
            label={words.fields[key]}
            description={key === "caliperMm" ? (calipers.said ?? words.how[key]) : words.how[key]}
            value={asCut[key]}
            range={RANGE_OF[key]}
            onChange={(value) => onChange({ [key]: value })}
          />
        ))}
      </div>
      {tier.asCut ? (
        <div className="bench-fields">
          <LengthField
            label={words.sd}
            value={asCut.sdMm ?? DEFAULT_SD_MM}
            range={RANGES.sdMm}
            digits={2}
            step={0.05}
            description={words.sdHow}
            onChange={(sdMm) => onChange({ sdMm })}
          />
          <DegreeField
            label={words.readSd}
            value={asCut.readSdDeg ?? DEFAULT_READ_SD_DEG}
            range={RANGES.sdDeg}
            description={words.readSdHow}
            onChange={(readSdDeg) => onChange({ readSdDeg })}
          />
        </div>
      ) : null}
    </>
  );
}
