/** Named versions of a plan: states that a person wants to find again. They are never changed, only added and taken away. */
import type { Plan } from "../../core/plan/document.ts";
import { parsePlan } from "../../core/plan/file.ts";
import { momentOf } from "./moment.ts";
import type { PicturesWhenNeeded } from "./pictures-when-needed.ts";
import type { StoragePort, VersionRow } from "./port.ts";

export interface Version {
  readonly id: string;
  readonly label: string;
  /** Milliseconds since 1970. */
  readonly at: number;
}

interface VersionsOptions {
  readonly port: StoragePort;
  readonly pictures: PicturesWhenNeeded;
  readonly now: () => number;
  readonly freshId: () => string;
  /** Called after every change. */
  readonly tell: () => void;
}

/** Digits of a time in an id, so that ids sort as versions were made. */
const DIGITS = 15;
/** Id of a version; `mark` keeps apart two made at the same moment, by two tabs even. */
export const versionId = (planId: string, at: number, mark: string): string =>
  `${planId}/${String(at).padStart(DIGITS, "0")}-${mark}`;

/** Longest name of a version, characters. */
export const LONGEST_LABEL = 500;
/** A version as it lies in the storage, every field made what it has to be. */
export function soundVersion(row: VersionRow): VersionRow {
  const { label, text }: { readonly label: unknown; readonly text: unknown } = row;
  return {
    ...row,
    label: typeof label === "string" ? label.slice(0, LONGEST_LABEL) : "",
    at: momentOf(row.at) ?? 0,
    text: typeof text === "string" ? text : (JSON.stringify(text) ?? ""),
  };
}

export function createVersions({ port, pictures, now, freshId, tell }: VersionsOptions) {
  return {
    async addVersion(planId: string, label: string, plan: Plan): Promise<Version> {
      const at = now();
      const id = versionId(planId, at, freshId());
      const version: VersionRow = { id, planId, label, at, text: await pictures.packPlan(plan) };
      await port.write([{ table: "versions", put: version }]);
      tell();
      return version;
    },

    /** Newest first. */
    async versions(planId: string): Promise<readonly Version[]> {
      const rows = await port.all("versions", `${planId}/`);
      return rows
        .map(soundVersion)
        .map(({ id, label, at }) => ({ id, label, at }))
        .reverse();
    },

    /** Null when it isn't there. @throws PlanFileError when it can't be read */
    async version(id: string): Promise<Plan | null> {
      const row = await port.get("versions", id);
      return row ? parsePlan(await pictures.unpackText(soundVersion(row).text)).plan : null;
    },

    /** Takes a version away. @returns the way to bring it back as it was */
    async removeVersion(id: string): Promise<() => Promise<void>> {
      const row = await port.get("versions", id);
      // with its pictures: where room is short they may be gone by then
      const text = row && (await pictures.unpackText(soundVersion(row).text));
      await port.write([{ table: "versions", erase: id }]);
      tell();
      return async () => {
        if (row && text !== undefined)
          await port.write([{ table: "versions", put: { ...row, text: await pictures.packText(text) } }]);
        tell();
      };
    },
  };
}
