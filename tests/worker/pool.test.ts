import { afterEach, describe, expect, it, vi } from "vitest";
import { serveJobs, type Ticket } from "../../src/worker/job.ts";
import { createPool, type JobWorker, type Pool, type PoolOptions } from "../../src/worker/pool.ts";

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

const jobs = {
  double: (x: number) => 2 * x,
  fail: async (_: null): Promise<never> => {
    throw new RangeError("no such depth");
  },
  /** Works until told to stop. */
  endless: async (_: null, ticket: Ticket): Promise<never> => {
    for (;;) {
      await pause(5);
      await ticket.report(0.5);
    }
  },
  /** Finds so many things and lets others come between. */
  find: async (count: number, ticket: Ticket<string>) => {
    for (let k = 0; k < count; k++) {
      await ticket.found(`thing ${k}`);
      await ticket.rest();
    }
  },
  /** Finds so many things at once and never looks up. */
  spill: async (count: number, ticket: Ticket<string>) => {
    await Promise.all(Array.from({ length: count }, (_, k) => ticket.found(`drop ${k}`)));
  },
  /** Never looks up. */
  deaf: (_: null) => new Promise<never>(() => undefined),
  count: async (to: number, ticket: Ticket) => {
    for (let k = 0; k < to; k++) {
      await pause(10);
      await ticket.report((k + 1) / to);
    }
    return to;
  },
};

/** Workers of this process: each end of a message channel, the same protocol as a real one. */
function workers() {
  const started: { ended: boolean; worker: JobWorker }[] = [];
  const spawn = (): JobWorker => {
    const { port1, port2 } = new MessageChannel();
    serveJobs(jobs, port2 as never);
    port2.start();
    port1.start();
    const record = { ended: false, worker: null as unknown as JobWorker };
    record.worker = Object.assign(port1, {
      terminate: () => {
        record.ended = true;
        port1.close();
        port2.close();
      },
    }) as unknown as JobWorker;
    started.push(record);
    return record.worker;
  };
  return { started, spawn };
}

let pool: Pool<typeof jobs> | null = null;
function poolOf(size: number, rest: PoolOptions = {}) {
  const { started, spawn } = workers();
  pool = createPool<typeof jobs>(spawn, { size, ...rest });
  return { pool, started };
}
afterEach(() => pool?.close());

/** A job without end, and when it is at work. */
function begun(pool: Pool<typeof jobs>, signal: AbortSignal): [Promise<never>, Promise<void>] {
  let tell: () => void = () => undefined;
  const atWork = new Promise<void>((resolve) => {
    tell = resolve;
  });
  return [pool.run("endless", null, { signal, onProgress: tell }), atWork];
}

describe("a pool of workers", () => {
  it("gives every answer to its own question, and starts no more workers than allowed", async () => {
    const { pool, started } = poolOf(2);
    const answers = await Promise.all([1, 2, 3, 4, 5, 6, 7].map((x) => pool.run("double", x)));
    expect(answers).toEqual([2, 4, 6, 8, 10, 12, 14]);
    expect(started).toHaveLength(2);
  });

  it("starts no worker before it is asked", () => {
    expect(poolOf(3).started).toHaveLength(0);
  });

  it("passes on what a job throws and goes on with the next", async () => {
    const { pool, started } = poolOf(1);
    await expect(pool.run("fail", null)).rejects.toThrow("no such depth");
    expect(await pool.run("double", 21)).toBe(42);
    expect(started).toHaveLength(1);
  });

  it("leaves no message port open behind a job, done, failed or cancelled", async () => {
    const ports: { isClosed: boolean }[] = [];
    class Counted extends MessageChannel {
      constructor() {
        super();
        for (const port of [this.port1, this.port2]) {
          const record = { isClosed: false };
          ports.push(record);
          port.addEventListener("close", () => {
            record.isClosed = true;
          });
        }
      }
    }
    const { pool } = poolOf(1);
    expect(await pool.run("double", 1)).toBe(2);
    vi.stubGlobal("MessageChannel", Counted);
    const stop = new AbortController();
    const onProgress = () => undefined;
    await pool.run("count", 12, { onProgress });
    await expect(pool.run("fail", null, { onProgress })).rejects.toThrow();
    const [endless, atWork] = begun(pool, stop.signal);
    await atWork;
    stop.abort();
    await expect(endless).rejects.toMatchObject({ name: "AbortError" });
    expect(await pool.run("double", 3)).toBe(6);
    expect(ports.length).toBeGreaterThanOrEqual(6);
    // a second, as usual, is soon over on a busy machine
    await vi.waitFor(() => expect(ports.filter(({ isClosed }) => !isClosed)).toEqual([]), 60_000);
  });

  it("tells progress, growing up to 1", async () => {
    const { pool } = poolOf(1);
    const shares: number[] = [];
    await pool.run("count", 12, { onProgress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[shares.length - 1]).toBe(1);
  });

  it("cancels a job that looks up without ending its worker", async () => {
    const { pool, started } = poolOf(1);
    const stop = new AbortController();
    const [endless, atWork] = begun(pool, stop.signal);
    await atWork;
    stop.abort();
    await expect(endless).rejects.toMatchObject({ name: "AbortError" });
    expect(await pool.run("double", 4)).toBe(8);
    expect(started).toHaveLength(1);
    expect(started[0].ended).toBe(false);
  });

  it("ends the worker of a cancelled job that never looks up, and starts another", async () => {
    const { pool, started } = poolOf(1);
    const stop = new AbortController();
    const deaf = pool.run("deaf", null, { signal: stop.signal });
    stop.abort(new Error("too slow"));
    await expect(deaf).rejects.toThrow("too slow");
    expect(await pool.run("double", 5)).toBe(10);
    expect(started.map(({ ended }) => ended)).toEqual([true, false]);
  });

  it("waits for a cancelled job as long as it is told to, and no longer", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout"] });
    try {
      const { pool, started } = poolOf(1, { patienceMs: 80 });
      const stop = new AbortController();
      const deaf = pool.run("deaf", null, { signal: stop.signal });
      stop.abort();
      await expect(deaf).rejects.toMatchObject({ name: "AbortError" });
      vi.advanceTimersByTime(79);
      expect(started[0].ended).toBe(false);
      vi.advanceTimersByTime(1);
      expect(started[0].ended).toBe(true);
    } finally {
      vi.useRealTimers();
    }
  });

  it("cancels a job that still waits, without a worker ever seeing it", async () => {
    const { pool, started } = poolOf(1);
    const [first, second] = [new AbortController(), new AbortController()];
    const running = pool.run("endless", null, { signal: first.signal });
    const waiting = pool.run("endless", null, { signal: second.signal });
    second.abort();
    await expect(waiting).rejects.toMatchObject({ name: "AbortError" });
    first.abort();
    await expect(running).rejects.toMatchObject({ name: "AbortError" });
    expect(await pool.run("double", 1)).toBe(2);
    expect(started).toHaveLength(1);
  });

  it("refuses a job whose signal is aborted already", async () => {
    const { pool, started } = poolOf(1);
    await expect(pool.run("double", 1, { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: "AbortError",
    });
    expect(started).toHaveLength(0);
  });

  it("lets a later job take the place of an earlier one with the same key, and of no other", async () => {
    const { pool } = poolOf(2);
    const old = pool.run("endless", null, { key: "look" });
    const other = pool.run("count", 3, { key: "margin" });
    const fresh = pool.run("double", 9, { key: "look" });
    await expect(old).rejects.toMatchObject({ name: "AbortError" });
    expect(await fresh).toBe(18);
    expect(await other).toBe(3);
  });

  it("says that a worker was lost when it crashes, and starts another for the next job", async () => {
    const { pool, started } = poolOf(1);
    const doomed = pool.run("deaf", null);
    started[0].worker.onerror?.({ message: "out of memory" } as ErrorEvent);
    await expect(doomed).rejects.toMatchObject({ name: "WorkerLost", message: "out of memory" });
    expect(await pool.run("double", 3)).toBe(6);
    expect(started).toHaveLength(2);
  });

  it("hands on each thing found, in order and all before the job is done, and nothing after a cancel", async () => {
    const { pool } = poolOf(1);
    const found: string[] = [];
    await pool.run("find", 3, { onFound: (thing) => found.push(thing) });
    expect(found).toEqual(["thing 0", "thing 1", "thing 2"]);
    const stop = new AbortController();
    const some: string[] = [];
    const onFound = (thing: string) => {
      some.push(thing);
      if (some.length === 2) stop.abort();
    };
    await expect(pool.run("find", 1e6, { signal: stop.signal, onFound })).rejects.toMatchObject({
      name: "AbortError",
    });
    expect(await pool.run("double", 2)).toBe(4);
    expect(some).toEqual(["thing 0", "thing 1"]);
    // neither what had been sent before the job heard of it
    const last = new AbortController();
    const drops: string[] = [];
    const onDrop = (drop: string) => {
      drops.push(drop);
      last.abort();
    };
    await expect(pool.run("spill", 20, { signal: last.signal, onFound: onDrop })).rejects.toMatchObject({
      name: "AbortError",
    });
    expect(await pool.run("double", 3)).toBe(6);
    expect(drops).toEqual(["drop 0"]);
  });

  it("lets jobs of one worker go on side by side where it is allowed, and tells all of them when it is lost", async () => {
    const { pool, started } = poolOf(1, { atOnce: 3 });
    const [endless, deaf] = [pool.run("endless", null), pool.run("deaf", null)];
    expect(await pool.run("double", 6)).toBe(12);
    expect(started).toHaveLength(1);
    started[0].worker.onerror?.({ message: "gone" } as ErrorEvent);
    await expect(endless).rejects.toMatchObject({ name: "WorkerLost", message: "gone" });
    await expect(deaf).rejects.toMatchObject({ name: "WorkerLost", message: "gone" });
    expect(await pool.run("double", 7)).toBe(14);
  });

  it("leaves the other jobs of a worker in peace when one that never looks up is cancelled", async () => {
    const { pool, started } = poolOf(1, { atOnce: 2 });
    const stop = new AbortController();
    const deaf = pool.run("deaf", null, { signal: stop.signal });
    const counting = pool.run("count", 40);
    stop.abort();
    await expect(deaf).rejects.toMatchObject({ name: "AbortError" });
    expect(await counting).toBe(40);
    expect(started.map(({ ended }) => ended)).toEqual([false]);
  });

  it("ends every job and worker when it is closed", async () => {
    const { pool, started } = poolOf(1);
    const running = pool.run("endless", null);
    const waiting = pool.run("double", 1);
    pool.close();
    await expect(running).rejects.toMatchObject({ name: "AbortError" });
    await expect(waiting).rejects.toMatchObject({ name: "AbortError" });
    expect(started.every(({ ended }) => ended)).toBe(true);
  });
});
