/** Where a person starts from before they have measured their own arm and lap. Ours, common practice: meant to be changed. */
import type { Arm, Lap } from "../../../core/plan/document.ts";

export const STARTING_ARM: Arm = { lengthMm: [150, 260], pivotToAxisMm: 210, pivotHeightMm: [10, 230] };
export const STARTING_LAP: Lap = { diameterMm: 200, bandMm: [35, 88], rpm: 280 };

/** Counts of stops that index wheels are commonly made with. Common practice, no source. */
export const COMMON_STOPS: readonly number[] = [32, 48, 64, 72, 80, 96, 120];
/** What a wheel is offered with where the plan has none. */
export const USUAL_STOPS = 96;
