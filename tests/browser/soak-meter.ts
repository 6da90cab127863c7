/** Memory of a page in Chromium: its heap after a forced collection, nodes and listeners alive, and what its processes hold. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

const PAGE_BYTES = 4096;
const MB = 2 ** 20;
/** Memory counts as flat when the last third of the measurements lies no further above the middle third. */
const FLAT = 1.1;

export interface Measured {
  readonly minute: number;
  /** JavaScript heap in use after a forced collection, MiB. */
  readonly heapMB: number;
  /** Nodes alive, on the page or not. */
  readonly nodes: number;
  readonly listeners: number;
  /** Memory of the page's process with its workers, and of the one that draws, MiB; null where the system does not tell. */
  readonly pageMB: number | null;
  readonly gpuMB: number | null;
}

/** Resident memory of a process, MiB (Linux: proc(5), statm). */
function residentMB(pid: number | undefined): number | null {
  if (pid === undefined) return null;
  try {
    return (Number(readFileSync(`/proc/${pid}/statm`, "utf8").split(" ")[1]) * PAGE_BYTES) / MB;
  } catch {
    return null; // another system keeps no such file
  }
}

export async function createMeter(page: Page, began: number): Promise<() => Promise<Measured>> {
  const devtools = await page.context().newCDPSession(page);
  const browser = await page.context().browser()?.newBrowserCDPSession();
  await devtools.send("Performance.enable");
  const rounded = (value: number | null) => (value === null ? null : Math.round(value * 100) / 100);
  return async () => {
    for (let i = 0; i < 3; i++) await devtools.send("HeapProfiler.collectGarbage");
    const { metrics } = await devtools.send("Performance.getMetrics");
    const { processInfo } = (await browser?.send("SystemInfo.getProcessInfo")) ?? { processInfo: [] };
    const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
    const residentOf = (type: string) =>
      processInfo
        .filter((process) => process.type === type)
        .reduce<number | null>((most, { id }) => Math.max(most ?? 0, residentMB(id) ?? 0) || null, null);
    return {
      minute: rounded((Date.now() - began) / 60_000)!,
      heapMB: rounded(of("JSHeapUsedSize") / MB)!,
      nodes: of("Nodes"),
      listeners: of("JSEventListeners"),
      pageMB: rounded(residentOf("renderer")),
      gpuMB: rounded(residentOf("GPU")),
    };
  };
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Medians of the middle and the last third, and whether the second is not above the first by more than `FLAT`. */
export function trend(
  measured: readonly Measured[],
  name: "heapMB" | "nodes" | "listeners" | "pageMB" | "gpuMB",
) {
  const third = Math.floor(measured.length / 3);
  const of = (part: readonly Measured[]) => median(part.map((one) => one[name] ?? Number.NaN));
  const [middle, last] = [of(measured.slice(third, 2 * third)), of(measured.slice(-third))];
  return { middle, last, flat: third > 0 ? last <= middle * FLAT : null };
}
