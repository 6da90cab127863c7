/**
 * The one protocol for work off the main thread, over comlink. A worker file names its jobs and serves them:
 *
 *     const jobs = { simulate: async (input: Input, ticket: Ticket) => { ...; await ticket.report(k / n); ... } };
 *     export type SimulateJobs = typeof jobs;
 *     serveJobs(jobs, self);
 *
 * and the page asks for them through a pool:
 *
 *     const pool = createPool<SimulateJobs>(() => new Worker(new URL("simulate-worker.ts", import.meta.url), { type: "module" }));
 *     const answer = await pool.run("simulate", input, { signal, onProgress: (share) => ... });
 *
 * A job with many answers hands each on as it finds it (`ticket.found`, `onFound`). Input and output are plain data; large arrays are moved, not copied, with comlink's `transfer`. A job reports often:
 * each report is also where a cancelled job stops. One that doesn't stop in time is ended with its worker.
 */
import { type Endpoint, expose } from "comlink";
import { breathe } from "./breathe.ts";
import { letGo } from "./let-go.ts";

/** What a job gets beside its input. */
export interface Ticket<Item = never> {
  /**
   * Tells the share done, 0..1, and lets a wish to stop come through. Cheap: may be called thousands of times a second.
   * @throws JobCancelled when the job is no longer wanted: let it pass
   */
  report(share: number): Promise<void>;
  /** Hands one of several answers to whoever asked: it has come there once this resolves, so that none is lost at the end. */
  found(item: Item): Promise<void>;
  /**
   * Lets messages come through at once, and other jobs of this worker go on.
   * @throws JobCancelled when the job is no longer wanted: let it pass
   */
  rest(): Promise<void>;
}
type Job<Input, Output> = (input: Input, ticket: Ticket<never>) => Promise<Output> | Output;
/** `never` as input: a table may hold jobs of any input; the pool knows each one's own. */
export type Jobs = Readonly<Record<string, Job<never, unknown>>>;

/** Thrown inside a job that was cancelled, and known by its name on the other side. */
class JobCancelled extends Error {
  override readonly name = "JobCancelled";
}

/** Where what a job finds is sent; null where nobody listens. */
type Found = (item: unknown) => void | Promise<void>;

/** What the pool calls in the worker. */
export interface JobServer {
  run(
    id: number,
    name: string,
    input: unknown,
    onProgress: (share: number) => void,
    onFound?: Found | null,
  ): Promise<unknown>;
  cancel(id: number): void;
}

/** Progress and wishes to stop travel this often, ms: seen as smooth, and no burden on a long job. */
const BREATH_MS = 40;

function ticketFor(
  isCancelled: () => boolean,
  onProgress: (share: number) => void,
  onFound: Found | null,
): Ticket<unknown> {
  let last = performance.now();
  const rest = async () => {
    await breathe();
    if (isCancelled()) throw new JobCancelled("the job was cancelled");
  };
  return {
    rest,
    found: async (item) => {
      await onFound?.(item);
    },
    report: async (share) => {
      const now = performance.now();
      if (now - last < BREATH_MS && share < 1) return;
      last = now;
      onProgress(Math.min(1, Math.max(0, share)));
      await rest();
    },
  };
}

/** Serves a table of jobs on an endpoint (`self` in a worker). Returns what was exposed, for tests. */
export function serveJobs(jobs: Jobs, endpoint: Endpoint): JobServer {
  const running = new Set<number>();
  const cancelled = new Set<number>();
  const server: JobServer = {
    run: async (id, name, input, onProgress, onFound = null) => {
      running.add(id);
      try {
        if (!Object.hasOwn(jobs, name)) throw new Error(`this worker has no job "${name}"`);
        const ticket = ticketFor(() => cancelled.has(id), onProgress, onFound);
        return await jobs[name](input as never, ticket);
      } finally {
        running.delete(id);
        cancelled.delete(id);
        letGo(onProgress);
        if (onFound) letGo(onFound);
      }
    },
    cancel: (id) => {
      if (running.has(id)) cancelled.add(id);
    },
  };
  expose(server, endpoint);
  return server;
}
