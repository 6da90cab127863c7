/** A few workers of one kind, started when first needed, with a queue, progress and cancelling. See `job.ts` for the protocol. */
import { type Endpoint, proxy, type Remote, releaseProxy, wrap } from "comlink";
import type { JobServer, Jobs, Ticket } from "./job.ts";

/** A worker as the pool needs it: comlink's endpoint that can be ended and tells of a crash. */
export interface JobWorker extends Endpoint {
  terminate(): void;
  onerror?: ((event: ErrorEvent) => void) | null;
  onmessageerror?: ((event: MessageEvent) => void) | null;
}

interface RunOptions<Item> {
  /** Aborting it rejects with its reason (an `AbortError` unless given otherwise) and frees the worker. */
  readonly signal?: AbortSignal;
  /** Share done, 0..1, some 25 times a second at most. */
  readonly onProgress?: (share: number) => void;
  /** Gets what the job finds, one at a time; nothing more once it is cancelled. */
  readonly onFound?: (item: Item) => void;
  /** A later job with the same key takes the place of an earlier one, which rejects with an `AbortError`. */
  readonly key?: string;
}

type InputOf<J> = J extends (input: infer I, ...rest: never[]) => unknown ? I : never;
type OutputOf<J> = J extends (...all: never[]) => infer O ? Awaited<O> : never;
type ItemOf<J> = J extends (input: never, ticket: Ticket<infer I>) => unknown ? I : never;

/** A worker pool with a queue (remote procedure calls, cancelled by `AbortSignal`). */
export interface Pool<J extends Jobs> {
  /** @throws what the job throws; `AbortError` when cancelled or replaced; `WorkerLost` when the worker crashed */
  run<K extends keyof J & string>(
    name: K,
    input: InputOf<J[K]>,
    options?: RunOptions<ItemOf<J[K]>>,
  ): Promise<OutputOf<J[K]>>;
  /** Cancels everything and ends the workers. */
  close(): void;
}

/** A worker ended by itself: it could not be loaded, or ran out of memory. */
class WorkerLost extends Error {
  override readonly name = "WorkerLost";
}

/** One job asked for. */
interface Task {
  readonly id: number;
  readonly name: string;
  readonly input: unknown;
  readonly options: RunOptions<unknown>;
  readonly resolve: (value: unknown) => void;
  readonly reject: (reason: unknown) => void;
  cancelledBecause: unknown;
  isOver: boolean;
}

/** One worker and what it works on. */
interface Started {
  readonly worker: JobWorker;
  readonly server: Remote<JobServer>;
  readonly tasks: Set<Task>;
}

export interface PoolOptions {
  /** Workers at most. */
  readonly size?: number;
  /** Jobs at a time in one worker: more than one only where every job often lets others come between. */
  readonly atOnce?: number;
  /** A cancelled job that hasn't stopped after this long is ended together with its worker, ms. */
  readonly patienceMs?: number;
}

const PATIENCE_MS = 250;
const MOST_WORKERS = 4;

/** One core is left to the page. */
const usualSize = (): number =>
  Math.max(1, Math.min(MOST_WORKERS, (globalThis.navigator?.hardwareConcurrency ?? 2) - 1));

const aborted = (): DOMException => new DOMException("cancelled", "AbortError");

/** Ends a task once; whatever comes later is of no interest. */
function settle(task: Task, how: "resolve" | "reject", value: unknown): void {
  if (task.isOver) return;
  task.isOver = true;
  task[how](value);
}

class WorkerPool {
  readonly #started: Started[] = [];
  #queue: Task[] = [];
  #ids = 0;
  readonly #spawn: () => JobWorker;
  readonly #size: number;
  readonly #atOnce: number;
  readonly #patienceMs: number;

  constructor(spawn: () => JobWorker, options: PoolOptions) {
    this.#spawn = spawn;
    this.#size = options.size ?? usualSize();
    this.#atOnce = options.atOnce ?? 1;
    this.#patienceMs = options.patienceMs ?? PATIENCE_MS;
  }

  run(name: string, input: unknown, options: RunOptions<unknown> = {}): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const { signal, key } = options;
      if (signal?.aborted) return reject(signal.reason);
      const id = ++this.#ids;
      const task: Task = {
        id,
        name,
        input,
        options,
        resolve,
        reject,
        cancelledBecause: undefined,
        isOver: false,
      };
      if (key !== undefined)
        for (const other of this.#current()) if (other.options.key === key) this.#cancel(other, aborted());
      signal?.addEventListener("abort", () => this.#cancel(task, signal.reason), { once: true });
      this.#queue.push(task);
      this.#next();
    });
  }

  close(): void {
    for (const task of this.#current()) settle(task, "reject", aborted());
    this.#queue = [];
    for (const one of [...this.#started]) this.#drop(one, "the pool was closed");
  }

  #current(): Task[] {
    return [...this.#queue, ...this.#started.flatMap(({ tasks }) => [...tasks])];
  }

  /** Gives waiting tasks to workers that have room. */
  #next(): void {
    while (this.#queue.length > 0) {
      const free = this.#started.find(({ tasks }) => tasks.size < this.#atOnce);
      if (!free && this.#started.length >= this.#size) return;
      const [task, ...rest] = this.#queue;
      this.#queue = rest;
      void this.#work(free ?? this.#start(), task);
    }
  }

  #start(): Started {
    const worker = this.#spawn();
    const one: Started = { worker, server: wrap<JobServer>(worker), tasks: new Set() };
    worker.onerror = ({ message }) => this.#drop(one, message || "the worker could not be started");
    worker.onmessageerror = () => this.#drop(one, "an answer of the worker could not be read");
    this.#started.push(one);
    return one;
  }

  /** Ends a worker, tells all who still wait for it, and starts the next task on another. */
  #drop(one: Started, why: string): void {
    for (const task of one.tasks) settle(task, "reject", new WorkerLost(why));
    const at = this.#started.indexOf(one);
    if (at < 0) return;
    this.#started.splice(at, 1);
    one.server[releaseProxy]();
    one.worker.terminate();
    this.#next();
  }

  async #work(one: Started, task: Task): Promise<void> {
    one.tasks.add(task);
    const { onProgress, onFound } = task.options;
    const isWanted = () => !task.isOver && task.cancelledBecause === undefined;
    const progress = proxy((share: number) => {
      if (isWanted()) onProgress?.(share);
    });
    const found =
      onFound &&
      proxy((item: unknown) => {
        if (isWanted()) onFound(item);
      });
    try {
      settle(task, "resolve", await one.server.run(task.id, task.name, task.input, progress, found));
    } catch (error) {
      settle(task, "reject", task.cancelledBecause ?? error);
    }
    one.tasks.delete(task);
    if (this.#started.includes(one)) this.#next();
  }

  /** The asker hears at once; the worker gets a moment to stop by itself, and for good where it has other jobs in hand. */
  #cancel(task: Task, reason: unknown): void {
    if (task.isOver) return;
    task.cancelledBecause = reason;
    this.#queue = this.#queue.filter((waiting) => waiting !== task);
    settle(task, "reject", reason);
    const own = this.#started.find(({ tasks }) => tasks.has(task));
    if (!own) return;
    void own.server.cancel(task.id);
    if (this.#atOnce > 1) return;
    setTimeout(() => {
      if (own.tasks.has(task)) this.#drop(own, "the worker did not stop");
    }, this.#patienceMs);
  }
}

/** @param spawn starts one worker that serves jobs `J` */
export const createPool = <J extends Jobs>(spawn: () => JobWorker, options: PoolOptions = {}): Pool<J> =>
  new WorkerPool(spawn, options) as Pool<J>;
