/** A small library of a test. */
import { NO_HISTORY } from "../../src/state/history.ts";
import { backupsOf } from "../../src/state/storage/backup.ts";
import { createLibrary } from "../../src/state/storage/library.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import { samplePlan } from "./sample-plan.ts";

/** A library whose clock ticks once a look and whose ids count. */
export function libraryOn(port = memoryPort(), tab = "p") {
  let time = 1000;
  let ids = 0;
  return createLibrary({ port, now: () => time++, freshId: () => `${tab}${++ids}` });
}
/** The one file of a small library. */
export async function backupOf(library: ReturnType<typeof libraryOn>): Promise<Uint8Array<ArrayBuffer>> {
  const { value, done } = await backupsOf(library).next();
  if (done) throw new Error("no backup");
  return value;
}
export const named = (name: string) => ({ ...samplePlan(), name });

export async function kept(library: ReturnType<typeof libraryOn>, name: string): Promise<string> {
  const keeping = await library.keep(null, named(name), NO_HISTORY);
  if (!keeping.kept) throw new Error("not kept");
  return keeping.planId;
}
