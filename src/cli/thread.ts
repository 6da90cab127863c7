/** Node's threads as workers of the pool: the protocol of `worker/job.ts`, over comlink's own adapter. */
import { parentPort, Worker } from "node:worker_threads";
import nodeEndpoint from "comlink/dist/umd/node-adapter.js";
import { type Jobs, serveJobs } from "../worker/job.ts";
import type { JobWorker } from "../worker/pool.ts";

/**
 * What a thread runs: bundled, its own bundle beside this one; from the sources, a module that registers the loader first.
 * @param name "render" for `render-worker.ts`
 */
export const threadFile = (name: string): URL =>
  new URL(import.meta.url.endsWith(".ts") ? `./${name}-thread.mjs` : `./${name}-worker.js`, import.meta.url);

/**
 * Starts a thread. One that is gone, with an error or without a word, is told as a worker's crash is.
 * @param given what it finds as `workerData`
 */
export function startThread(file: URL, given?: unknown): JobWorker {
  const thread = new Worker(file, { workerData: given });
  const own: JobWorker = Object.assign(nodeEndpoint(thread), {
    terminate: () => void thread.terminate(),
    onerror: null,
    onmessageerror: null,
  });
  const lost = ({ message }: Error) => own.onerror?.({ message } as ErrorEvent);
  thread.on("error", (error) => lost(error instanceof Error ? error : new Error(String(error))));
  thread.on("messageerror", () => lost(new Error("an answer of the thread could not be read")));
  thread.on("exit", (status) => lost(new Error(`the thread ended with ${status} while it was at work`)));
  return own;
}

/** In a thread: serves a table of jobs to whoever started it. */
export function serveThread(jobs: Jobs): void {
  if (!parentPort) throw new Error("a thread's file was started without a parent thread");
  serveJobs(jobs, nodeEndpoint(parentPort));
}
