/** Visits to one browser of a test: its storage, its locks, its clock. */
import { vi } from "vitest";
import { type Session, type Surroundings, startSession } from "../../src/state/session.ts";
import { memoryPort } from "../../src/state/storage/memory-port.ts";
import type { StoragePort } from "../../src/state/storage/port.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { type Faults, faultyPort, sharedLocks } from "./faulty-port.ts";
import { samplePlan } from "./sample-plan.ts";

export const freshStore = () => createPlanStore({ plan: samplePlan(), depthOf: () => 0 });

/** The small shelf of a browser, over a map that the test looks into. */
export const shelfOn = (shelf: Map<string, string>): Surroundings["shelf"] => ({
  getItem: (key) => shelf.get(key) ?? null,
  setItem: (key, value) => void shelf.set(key, value),
  removeItem: (key) => void shelf.delete(key),
  key: (i) => [...shelf.keys()][i] ?? null,
  get length() {
    return shelf.size;
  },
});

/** One browser: its storage, its locks, its small shelf. Every visit is a tab. */
export function browser(faults: Faults = {}) {
  const kept = faultyPort(memoryPort(), faults);
  const shelf = new Map<string, string>();
  const locks = sharedLocks();
  let time = 0;
  const around = (openPort: () => Promise<StoragePort> = async () => kept): Surroundings => ({
    openPort,
    locks,
    otherTabs: null,
    shelf: shelfOn(shelf),
    persist: async () => true,
    now: () => ++time,
  });
  const visit = (openPort?: () => Promise<StoragePort>, store = freshStore()) =>
    startSession(store, around(openPort));
  return { visit, around, faults, shelf };
}
export const rename = ({ store }: Session, name: string) =>
  store.getState().dispatch({ type: "set-name", name });
/** Keeps at once, with the time that waiting for another tab's lock takes. */
export async function flush({ autosave }: Session) {
  const flushing = autosave.flush();
  await vi.advanceTimersByTimeAsync(2000);
  return flushing;
}
export const status = ({ autosave }: Session) => autosave.status.getState();
export const shelfNames = async ({ library }: Session) => (await library.list()).map((plan) => plan.name);
