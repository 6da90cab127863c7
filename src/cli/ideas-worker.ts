/** One thread of `ideas`: gets the wish once, then candidates to judge and plans to measure. */
import { parentPort, workerData } from "node:worker_threads";
import { measureAll } from "../core/ideas/answer.ts";
import { createJudge } from "../core/ideas/judge.ts";
import type { IdeaWish } from "../core/ideas/wish.ts";
import type { Task, TaskDone } from "./ideas-threads.ts";

const port = parentPort;
if (!port) throw new Error("the ideas worker was started without a parent thread");
const judge = createJudge(workerData as IdeaWish);

port.on("message", (task: Task) => {
  const answers =
    task.kind === "judge"
      ? task.candidates.map(({ tiers }) => judge(tiers, task.ask))
      : measureAll(task.plans);
  port.postMessage({ id: task.id, answers } satisfies TaskDone);
});
