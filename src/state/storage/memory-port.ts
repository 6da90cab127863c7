/** Keeps the library in memory: where the browser keeps nothing, work goes on and can be saved to files. */
import type { RowChange, Rows, StoragePort, Table } from "./port.ts";
import { TABLES } from "./port.ts";

type Tables = { readonly [T in Table]: Map<string, Rows[T]> };

function carryOut(tables: Tables, change: RowChange): void {
  const table = tables[change.table] as Map<string, unknown>;
  if ("erase" in change) table.delete(change.erase);
  else table.set(change.put.id, structuredClone(change.put));
}

export function memoryPort(): StoragePort {
  const tables = Object.fromEntries(TABLES.map((table) => [table, new Map()])) as unknown as Tables;
  return {
    durable: false,
    get: async (table, id) => tables[table].get(id),
    all: async (table, prefix = "") =>
      [...tables[table].values()]
        .filter((row) => row.id.startsWith(prefix))
        .sort((a, b) => (a.id < b.id ? -1 : 1)),
    ids: async (table) => [...tables[table].keys()],
    write: async (changes, only) => {
      if (only && (tables.plans.get(only.planId)?.revision ?? 0) !== only.revision) return false;
      for (const change of changes) carryOut(tables, change);
      return true;
    },
    close: () => undefined,
  };
}
