/** Named versions of a plan: states that a person wants to find again. They are never changed, only added and taken away. */
import type { Plan } from "../../core/plan/document.ts";
import { parsePlan, serializePlan } from "../../core/plan/file.ts";
import type { StoragePort, VersionRow } from "./port.ts";

export interface Version {
  readonly id: string;
  readonly label: string;
  /** Milliseconds since 1970. */
  readonly at: number;
}

interface VersionsOptions {
  readonly port: StoragePort;
  readonly now: () => number;
  /** Called after every change. */
  readonly tell: () => void;
}

/** Digits of a version's number in its id, so that ids sort as they were made. */
const DIGITS = 6;
const versionId = (planId: string, number: number): string =>
  `${planId}/${String(number).padStart(DIGITS, "0")}`;
const numberOf = (version: VersionRow): number => Number(version.id.slice(version.id.lastIndexOf("/") + 1));

export function createVersions({ port, now, tell }: VersionsOptions) {
  return {
    async addVersion(planId: string, label: string, plan: Plan): Promise<Version> {
      const last = Math.max(0, ...(await port.all("versions", `${planId}/`)).map(numberOf));
      const id = versionId(planId, last + 1);
      const version: VersionRow = { id, planId, label, at: now(), text: serializePlan(plan) };
      await port.write([{ table: "versions", put: version }]);
      tell();
      return version;
    },

    /** Newest first. */
    async versions(planId: string): Promise<readonly Version[]> {
      const rows = await port.all("versions", `${planId}/`);
      return rows.map(({ id, label, at }) => ({ id, label, at })).reverse();
    },

    /** Null when it isn't there. @throws PlanFileError when it can't be read */
    async version(id: string): Promise<Plan | null> {
      const row = await port.get("versions", id);
      return row ? parsePlan(row.text).plan : null;
    },

    async removeVersion(id: string): Promise<void> {
      await port.write([{ table: "versions", erase: id }]);
      tell();
    },
  };
}
