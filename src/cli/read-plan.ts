/** Reads the plan file that a command was given. */
import { type PlanFile, PlanFileError, parsePlan } from "../core/plan/file.ts";
import { FILE } from "../core/plan/limits.ts";
import { fileFaultInWords } from "../words/file-faults.ts";
import { readNamed } from "./files.ts";
import { UsageError } from "./usage-error.ts";

export function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new PlanFileError({ code: "file-not-text", data: {} });
  }
}

/**
 * @param path a plan file
 * @throws UsageError, its line beginning with the path, when the file is missing, a folder, too large, not text or no plan
 */
export async function readPlan(path: string): Promise<PlanFile> {
  const bytes = await readNamed(path, FILE.bytes);
  try {
    return parsePlan(textOf(bytes));
  } catch (error) {
    throw error instanceof PlanFileError
      ? new UsageError((_, language) => `${path}: ${fileFaultInWords(error.fault, language)}`)
      : error;
  }
}
