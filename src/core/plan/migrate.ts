/**
 * Brings older plan files up to the present version. Each step is a pure function from one version's document to the
 * next one's; a file of any past version walks the chain. A step never drops a field that it doesn't know.
 */
import { PlanFileError, shown } from "./plan-file-error.ts";

/** The version that this program writes. */
export const PLAN_VERSION = 1;

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
  const allowed = target === 1 ? "1" : `1 to ${target}`;
  if (version === undefined) throw new PlanFileError(`version: missing, ${allowed} needed`);
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    throw new PlanFileError(`version: ${shown(version)} is no version number, ${allowed} allowed`);
  if (version > target)
    throw new PlanFileError(
      `version: the plan was written by a newer version of Glintwright (plan version ${version}), this one reads ${allowed}`,
    );
  let current = document;
  for (let v = version; v < target; v++) current = { ...steps[v](current), version: v + 1 };
  return current;
}
