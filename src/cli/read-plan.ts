/** Reads the plan file that a command was given. */
import { open } from "node:fs/promises";
import { type PlanFile, PlanFileError, parsePlan } from "../core/plan/file.ts";
import { FILE } from "../core/plan/limits.ts";
import { UsageError } from "./usage-error.ts";

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EISDIR: "this is a folder, a plan file is needed",
  EACCES: "the file may not be read",
  EPERM: "the file may not be read",
  ENAMETOOLONG: "the name is too long",
  ENOTDIR: "there is no such file",
};

/** The bytes of a regular file, judged by size before they are read. */
async function bytesOf(path: string): Promise<Uint8Array> {
  const file = await open(path, "r");
  try {
    const about = await file.stat();
    if (about.size > FILE.bytes)
      throw new PlanFileError({ code: "file-too-heavy", data: { bytes: about.size, most: FILE.bytes } });
    return await file.readFile();
  } finally {
    await file.close();
  }
}

function textOf(bytes: Uint8Array): string {
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
  try {
    return parsePlan(textOf(await bytesOf(path)));
  } catch (error) {
    if (error instanceof PlanFileError) throw new UsageError(`${path}: ${error.message}`);
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (code in REASONS) throw new UsageError(`${path}: ${REASONS[code]}`);
    throw error;
  }
}
