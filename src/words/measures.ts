/** What can be measured on a finished tier, in words. */
import type { MeasureName } from "../core/bench/as-cut/measurements.ts";

export type MeasureWords = Readonly<Record<MeasureName, string>>;
