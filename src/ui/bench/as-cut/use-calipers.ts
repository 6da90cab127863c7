/** Which lengths calipers can take on a tier that is cut: to the skin where it stands opposite, else to the farthest point; none past a dop. */
import { useMemo } from "react";
import { caliperOf } from "../../../core/bench/as-cut/caliper.ts";
import { dopOf } from "../../../core/bench/bench.ts";
import type { Measured, Tier } from "../../../core/plan/document.ts";
import { benchWords } from "../../messages/bench.ts";
import { useWords } from "../../messages/words.tsx";
import { useSolved } from "../../use-studio.ts";
import { oppositeSaid } from "../parts/caliper.ts";

type CaliperKey = "flatToSkinMm" | "caliperMm";

/** What was measured before stays in sight. */
const holds = (measured: Measured | undefined, key: CaliperKey): boolean => measured?.[key] !== undefined;

export function useCalipers(tier: Tier): { keys: readonly CaliperKey[]; said: string | null } {
  const words = useWords(benchWords);
  const solved = useSolved();
  const index = solved.plan.tiers.findIndex((one) => one.id === tier.id);
  const reading = useMemo(
    () => (index < 0 ? null : caliperOf(solved, index, dopOf(solved.plan, solved.plan.tiers[index].side))),
    [solved, index],
  );
  const offered: CaliperKey | null =
    !reading || reading.isBlocked ? null : reading.opposite.kind === "skin" ? "flatToSkinMm" : "caliperMm";
  const readings = [tier.asCut, ...Object.values(tier.asCut?.facets ?? {})];
  const keys = (["flatToSkinMm", "caliperMm"] as const).filter(
    (key) => key === offered || readings.some((one) => holds(one, key)),
  );
  const said = reading ? words.caliper.jaws(oppositeSaid(reading.opposite, solved.plan, words)) : null;
  return { keys, said };
}
