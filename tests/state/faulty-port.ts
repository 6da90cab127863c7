import { type FaultKind, StorageFault } from "../../src/state/storage/faults.ts";
import type { StoragePort } from "../../src/state/storage/port.ts";

/** A port that breaks on purpose: set what is to go wrong, clear it to let all be well again. */
export interface Faults {
  onWrite?: FaultKind;
  onRead?: FaultKind;
  /** Writes are told as done but lose their end, as on a disk going bad. */
  silentDamage?: boolean;
}

export function faultyPort(port: StoragePort, faults: Faults): StoragePort {
  const fail = (kind: FaultKind | undefined) => {
    if (kind) throw new StorageFault(kind, `injected: ${kind}`);
  };
  return {
    durable: true,
    close: () => port.close(),
    get: async (table, id) => {
      fail(faults.onRead);
      return port.get(table, id);
    },
    all: async (table, prefix) => {
      fail(faults.onRead);
      return port.all(table, prefix);
    },
    ids: async (table) => {
      fail(faults.onRead);
      return port.ids(table);
    },
    write: async (changes, only) => {
      fail(faults.onWrite);
      if (!faults.silentDamage) return port.write(changes, only);
      const damaged = changes.map((change) =>
        change.table === "plans" && "put" in change
          ? { ...change, put: { ...change.put, text: change.put.text.slice(0, -20) } }
          : change,
      );
      return port.write(damaged, only);
    },
  };
}

/** Web Locks as the standard describes them, as far as exclusive locks with a signal go, shared by the "tabs" of a test. */
export function sharedLocks() {
  const last = new Map<string, Promise<unknown>>();
  const held = new Set<string>();
  const request = async (
    name: string,
    { signal }: LockOptions,
    work: () => Promise<unknown>,
  ): Promise<unknown> => {
    const before = last.get(name) ?? Promise.resolve();
    let free = (): void => undefined;
    const mine = new Promise<void>((resolve) => {
      free = resolve;
    });
    last.set(
      name,
      before.then(() => mine),
    );
    const givenUp = new Promise<never>((_resolve, reject) =>
      signal?.addEventListener("abort", () => reject(signal.reason)),
    );
    try {
      await Promise.race([before, givenUp]);
      givenUp.catch(() => undefined);
      held.add(name);
      return await work().finally(() => held.delete(name));
    } finally {
      free();
    }
  };
  const query = async () => ({ held: [...held].map((name) => ({ name })) });
  return { request: request as LockManager["request"], query };
}
