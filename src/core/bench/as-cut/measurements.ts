/** What was measured on a cut tier, and what the same measurement would read on a cut that is supposed. mm and degrees. */
import { sinDeg } from "../../geometry/plane.ts";
import type { Measured } from "../../plan/document.ts";
import {
  type Cut,
  type CutTier,
  LENGTHS,
  type LengthName,
  lengthAt,
  lengthOf,
  pivotHeightOf,
} from "./cut-model.ts";

export const DEFAULT_SD_MM = 0.1;
export const DEFAULT_READ_SD_DEG = 2;

export type MeasureName = LengthName | "readDeg" | "pivotHeightMm";

export interface Measurement {
  readonly name: MeasureName;
  /** Position in the tier of a single facet; null for the tier's mean. */
  readonly k: number | null;
  readonly value: number;
  /** Of a pivot height: the arm length it was read with. */
  readonly armLengthMm?: number;
}

export interface FitSetting {
  readonly tier: CutTier;
  readonly plannedDeg: number;
  readonly plannedDepthMm: number;
  readonly sdMm: number;
  readonly readSdDeg: number;
  readonly hingeOffsetMm: number;
  /** Whether calipers would have to stand where the dop is cemented. */
  readonly isDopInTheWay: boolean;
  /** Arm length to assume for a pivot height without one; null when the rig isn't known. */
  readonly plannedArmMm: number | null;
}

/** The measurements that one set of readings holds. A pivot height needs an arm length, read or planned. */
export function measurementsIn(
  measured: Measured,
  k: number | null,
  plannedArmMm: number | null,
): Measurement[] {
  const found: Measurement[] = LENGTHS.flatMap((name) => {
    const value = measured[name];
    return value === undefined ? [] : [{ name, k, value }];
  });
  if (measured.readDeg !== undefined) found.push({ name: "readDeg", k, value: measured.readDeg });
  const armLengthMm = measured.armLengthMm ?? plannedArmMm;
  if (measured.pivotHeightMm !== undefined && armLengthMm !== null)
    found.push({ name: "pivotHeightMm", k, value: measured.pivotHeightMm, armLengthMm });
  return found;
}

/** What a measurement would read on this cut; null when there is no such thing on this tier. */
export function predicted(setting: FitSetting, cut: Cut, m: Measurement): number | null {
  if (m.name === "readDeg") return cut.armAngleDeg;
  if (m.name === "pivotHeightMm") return pivotHeightOf(cut, m.armLengthMm ?? 0, setting.hingeOffsetMm);
  return m.k === null ? lengthOf(cut, m.name) : lengthAt(cut, m.name, m.k);
}

/** One standard deviation of a measurement; a pivot height carries the arm length's error too. */
export function sdOf(setting: FitSetting, name: MeasureName): number {
  if (name === "readDeg") return setting.readSdDeg;
  if (name === "pivotHeightMm") return setting.sdMm * Math.hypot(1, sinDeg(setting.plannedDeg));
  return setting.sdMm;
}
