/** Values of measures as a person reads them, each with its unit. */
import { useFormat } from "../use-format.ts";
import type { Axis } from "./draft.ts";

const MINUTES = 60;
const PER_CENT = "\u00a0%";

export function useMeasureSaid() {
  const { number, length } = useFormat();
  const share = [(value: number) => number(100 * value, 0), PER_CENT] as const;
  const count = [(value: number) => number(value, 0), ""] as const;
  const ways: Readonly<Record<Axis, readonly [figure: (value: number) => string, unit: string]>> = {
    minutes: [(value) => number(value / MINUTES, 1), "\u00a0h"],
    facets: count,
    tiers: count,
    leastFacetMm: [(value) => length(value, 1), ""],
    skinShare: share,
    back: share,
    through: share,
    inside: share,
    images: count,
    sparkle: [(value) => number(value, 1), PER_CENT],
  };
  return {
    span: (axis: Axis, from: number, to: number): string => {
      const [figure, unit] = ways[axis];
      return `${figure(from)} – ${figure(to)}${unit}`;
    },
  };
}
