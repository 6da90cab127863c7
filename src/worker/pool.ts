/** A few workers of one kind, started when first needed, with a queue, progress and cancelling. See `job.ts` for the protocol. */
import { type Endpoint, proxy, type Remote, releaseProxy, wrap } from "comlink";
import type { JobServer, Jobs } from "./job.ts";

/** A worker as the pool needs it: comlink's endpoint that can be ended and tells of a crash. */
export interface JobWorker extends Endpoint {
  terminate(): void;
  onerror?: ((event: ErrorEvent) => void) | null;
}

interface RunOptions {
  /** Aborting it rejects with its reason (an `AbortError` unless given otherwise) and frees the worker. */
  readonly signal?: AbortSignal;
  /** Share done, 0..1, some 25 times a second at most. */
  readonly onProgress?: (share: number) => void;
  /** A later job with the same key takes the place of an earlier one, which rejects with an `AbortError`. */
  readonly key?: string;
}

type InputOf<J> = J extends (input: infer I, ...rest: never[]) => unknown ? I : never;
type OutputOf<J> = J extends (...all: never[]) => infer O ? Awaited<O> : never;

export interface Pool<J extends Jobs> {
  /** @throws what the job throws; `AbortError` when cancelled or replaced; `WorkerLost` when the worker crashed */
  run<K extends keyof J & string>(
    name: K,
    input: InputOf<J[K]>,
    options?: RunOptions,
  ): Promise<OutputOf<J[K]>>;
  /** Cancels everything and ends the workers. */
  close(): void;
}

/** A worker ended by itself: it could not be loaded, or ran out of memory. */
class WorkerLost extends Error {
  override readonly name = "WorkerLost";
}

interface Task {
  readonly id: number;
  readonly name: string;
  readonly input: unknown;
  readonly options: RunOptions;
  readonly resolve: (value: unknown) => void;
  readonly reject: (reason: unknown) => void;
  cancelledBecause: unknown;
  isOver: boolean;
}
interface Hand {
  readonly worker: JobWorker;
  readonly server: Remote<JobServer>;
  task: Task | null;
}

/** A cancelled job that hasn't stopped after this long is ended together with its worker, ms. */
const PATIENCE_MS = 250;
const MOST_WORKERS = 4;

/** One core is left to the page. */
const usualSize = (): number =>
  Math.max(1, Math.min(MOST_WORKERS, (globalThis.navigator?.hardwareConcurrency ?? 2) - 1));

const aborted = (): DOMException => new DOMException("cancelled", "AbortError");

/**
 * @param spawn starts one worker that serves jobs `J`
 * @param size workers at most
 */
export function createPool<J extends Jobs>(spawn: () => JobWorker, size: number = usualSize()): Pool<J> {
  const hands: Hand[] = [];
  let queue: Task[] = [];
  let ids = 0;

  /** Ends a task once; whatever comes later is of no interest. */
  function settle(task: Task, how: "resolve" | "reject", value: unknown): void {
    if (task.isOver) return;
    task.isOver = true;
    task[how](value);
  }

  /** Ends a worker and starts the next task on another. */
  function drop(hand: Hand): void {
    const at = hands.indexOf(hand);
    if (at < 0) return;
    hands.splice(at, 1);
    hand.server[releaseProxy]();
    hand.worker.terminate();
    next();
  }

  function hire(): Hand {
    const worker = spawn();
    const hand: Hand = { worker, server: wrap<JobServer>(worker), task: null };
    worker.onerror = (event) => {
      const { task } = hand;
      if (task) settle(task, "reject", new WorkerLost(event.message || "the worker could not be started"));
      drop(hand);
    };
    hands.push(hand);
    return hand;
  }

  async function work(hand: Hand, task: Task): Promise<void> {
    hand.task = task;
    const onProgress = proxy((share: number) => {
      if (!task.isOver && task.cancelledBecause === undefined) task.options.onProgress?.(share);
    });
    try {
      settle(task, "resolve", await hand.server.run(task.id, task.name, task.input, onProgress));
    } catch (error) {
      settle(task, "reject", task.cancelledBecause ?? error);
    }
    hand.task = null;
    if (hands.includes(hand)) next();
  }

  /** Gives waiting tasks to idle workers. */
  function next(): void {
    while (queue.length > 0) {
      const idle = hands.find((hand) => hand.task === null);
      if (!idle && hands.length >= size) return;
      const [task, ...rest] = queue;
      queue = rest;
      void work(idle ?? hire(), task);
    }
  }

  /** The asker hears at once; the worker gets a moment to stop by itself. */
  function cancel(task: Task, reason: unknown): void {
    if (task.isOver) return;
    task.cancelledBecause = reason;
    queue = queue.filter((waiting) => waiting !== task);
    settle(task, "reject", reason);
    const hand = hands.find((one) => one.task === task);
    if (!hand) return;
    void hand.server.cancel(task.id);
    setTimeout(() => {
      if (hand.task === task) drop(hand);
    }, PATIENCE_MS);
  }

  const current = (): Task[] => [...queue, ...hands.flatMap((hand) => (hand.task ? [hand.task] : []))];

  return {
    run: (name, input, options = {}) =>
      new Promise((resolve, reject) => {
        const { signal, key } = options;
        if (signal?.aborted) return reject(signal.reason);
        const task: Task = {
          id: ++ids,
          name,
          input,
          options,
          resolve: resolve as (value: unknown) => void,
          reject,
          cancelledBecause: undefined,
          isOver: false,
        };
        if (key !== undefined)
          for (const other of current()) if (other.options.key === key) cancel(other, aborted());
        signal?.addEventListener("abort", () => cancel(task, signal.reason), { once: true });
        queue.push(task);
        next();
      }),
    close: () => {
      for (const task of current()) settle(task, "reject", aborted());
      queue = [];
      for (const hand of [...hands]) drop(hand);
    },
  };
}
