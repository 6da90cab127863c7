/**
 * Brings older plan files up to the present version. Each step is a pure function from one version's document to the
 * next one's; a file of any past version walks the chain. A step never drops a field that it doesn't know.
 */
import type { Allowed } from "./file-fault.ts";
import { PlanFileError } from "./plan-file-error.ts";

/** The version that this program writes. */
const PLAN_VERSION = 1;

type Document = Readonly<Record<string, unknown>>;
/** `steps[v]` turns a document of version v into one of version v + 1. */
export type Migrations = Readonly<Record<number, (document: Document) => Document>>;

/** Version 1 is the first, so there is nothing yet to bring up. */
const MIGRATIONS: Migrations = {};

/**
 * @param document data of a plan file of any version, not yet checked
 * @returns the same data in version `target`, or the very same object when it is that already
 * @throws PlanFileError when the version is missing, no version number or newer than `target`
 */
export function migrate(
  document: Document,
  target: number = PLAN_VERSION,
  steps: Migrations = MIGRATIONS,
): Document {
  const { version } = document;
  const allowed: Allowed = { kind: "version", range: { min: 1, max: target } };
  const path = ["version"];
  if (version === undefined) throw new PlanFileError({ code: "missing", data: { allowed }, path });
  const data = { found: version, allowed };
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    throw new PlanFileError({ code: "no-version", data, path });
  if (version > target) throw new PlanFileError({ code: "newer-version", data, path });
  let current = document;
  for (let v = version; v < target; v++) current = { ...steps[v](current), version: v + 1 };
  return current;
}
