/** Threads of the command line speak the workers' protocol: one that dies is told to whoever waits for it. */
import { afterEach, expect, it } from "vitest";
import { startThread } from "../../src/cli/thread.ts";
import { createPool, type Pool } from "../../src/worker/pool.ts";

const jobs = { wait: (_: null) => new Promise<never>(() => undefined), double: (x: number) => 2 * x };
let pool: Pool<typeof jobs> | null = null;
afterEach(() => pool?.close());

const file = (code: string): URL => new URL(`data:text/javascript,${encodeURIComponent(code)}`);
function poolOf(code: string): Pool<typeof jobs> {
  pool = createPool<typeof jobs>(() => startThread(file(code)), { size: 1 });
  return pool;
}

it.each([
  ["goes without a word", "process.exit(3)", "the thread ended with 3 while it was at work"],
  ["throws while it starts", "throw new RangeError('no such depth')", "no such depth"],
  [
    "throws where nobody catches it",
    "import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => { throw new Error('broken'); })",
    "broken",
  ],
])("tells whoever waits that a thread is gone which %s", async (_, code, message) => {
  await expect(poolOf(code).run("wait", null)).rejects.toMatchObject({ name: "WorkerLost", message });
});

it("tells each of several that wait, and tries the next on a thread of its own", async () => {
  const own = poolOf("process.exit(4)");
  const ends = await Promise.allSettled([own.run("wait", null), own.run("double", 2), own.run("wait", null)]);
  expect(ends.map(({ status }) => status)).toEqual(["rejected", "rejected", "rejected"]);
});
