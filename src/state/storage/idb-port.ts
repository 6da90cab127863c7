/** Keeps the library in the browser's IndexedDB. A write is one transaction, its condition checked inside it. */
import { type IDBPDatabase, openDB } from "idb";
import { faultOf, StorageFault } from "./faults.ts";
import { type Condition, type RowChange, type StoragePort, TABLES } from "./port.ts";

const DATABASE = "glintwright";
/** Version of the tables, not of plan files. */
const LAYOUT = 2;
/** The greatest UTF-16 unit: the end of every range of ids with one beginning. */
const LAST = "\uffff";

/** A connection that is opened again when the browser closed it (a newer page, a cleared cache, a long sleep). */
interface Connection {
  readonly use: <T>(work: (db: IDBPDatabase) => Promise<T>) => Promise<T>;
  readonly close: () => void;
}

function keepOpen(first: IDBPDatabase, reopen: () => Promise<IDBPDatabase>): Connection {
  let db = first;
  const use = async <T>(work: (db: IDBPDatabase) => Promise<T>): Promise<T> => {
    try {
      return await work(db);
    } catch (error) {
      // the one error of a connection that is closed already; nothing has been written then
      if (!(error instanceof DOMException) || error.name !== "InvalidStateError") throw faultOf(error);
    }
    try {
      db = await reopen();
      return await work(db);
    } catch (error) {
      throw faultOf(error);
    }
  };
  return { use, close: () => db.close() };
}

async function write(db: IDBPDatabase, changes: readonly RowChange[], only?: Condition): Promise<boolean> {
  // "strict": told as done only when it lies on the disk
  const transaction = db.transaction([...TABLES], "readwrite", { durability: "strict" });
  const done = transaction.done;
  try {
    const kept = only ? await transaction.objectStore("plans").get(only.planId) : undefined;
    const holds = !only || (kept?.revision ?? 0) === only.revision;
    const requests = (holds ? changes : []).map((change) => {
      const table = transaction.objectStore(change.table);
      return "erase" in change ? table.delete(change.erase) : table.put(change.put);
    });
    await Promise.all([...requests, done]);
    return holds;
  } catch (error) {
    // all or nothing: what was asked for before the failure must not be committed
    if (transaction.error === null) abort(transaction);
    // the transaction's own error tells more (a full disk shows only there)
    const reason = await done.then(
      () => null,
      () => transaction.error,
    );
    throw reason ?? error;
  }
}

/** Takes back everything in a transaction, unless it is over already. */
function abort(transaction: { readonly abort: () => void }): void {
  try {
    transaction.abort();
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== "InvalidStateError") throw error;
  }
}

function portOf({ use, close }: Connection): StoragePort {
  return {
    durable: true,
    get: (table, id) => use((db) => db.get(table, id)),
    all: (table, prefix = "") => use((db) => db.getAll(table, IDBKeyRange.bound(prefix, `${prefix}${LAST}`))),
    ids: (table) => use(async (db) => (await db.getAllKeys(table)).map(String)),
    write: (changes, only) => use((db) => write(db, changes, only)),
    close,
  };
}

/** @throws StorageFault missing, denied, blocked or damaged */
async function connect(waitMs: number): Promise<IDBPDatabase> {
  if (typeof indexedDB === "undefined") throw new StorageFault("missing", "this browser has no IndexedDB");
  let timer: ReturnType<typeof setTimeout> | undefined;
  const opening = openDB(DATABASE, LAYOUT, {
    upgrade: (db) => {
      for (const table of TABLES)
        if (!db.objectStoreNames.contains(table)) db.createObjectStore(table, { keyPath: "id" });
    },
    // a newer page waits for this one to let go
    blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close(),
  });
  const tooLong = new Promise<never>((_resolve, reject) => {
    const fault = new StorageFault("blocked", "another tab with an older version holds the storage");
    timer = setTimeout(() => reject(fault), waitMs);
  });
  try {
    return await Promise.race([opening, tooLong]);
  } catch (error) {
    // one that opens after all, too late, must not stand in others' way
    opening.then(
      (db) => db.close(),
      () => undefined,
    );
    const fault = faultOf(error);
    throw fault.kind === "lost" ? new StorageFault("denied", fault.message, error) : fault;
  } finally {
    clearTimeout(timer);
  }
}

/**
 * Opens the browser's storage.
 * @param waitMs how long an older tab may hold on to it before it counts as blocked
 * @throws StorageFault missing, denied, blocked or damaged
 */
export async function openIdbPort(waitMs: number): Promise<StoragePort> {
  return portOf(keepOpen(await connect(waitMs), () => connect(waitMs)));
}
