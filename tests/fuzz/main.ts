/**
 * `npm run fuzz -- --plans 100000 --seed 1`: so many plans as people make them, each judged against brute force, a share on
 * each of the processor's cores. Prints one JSON object: how many were refused, each that was wrong with its seed and what
 * differs, and the slowest. Ctrl+C ends it with what was found by then. Status 1 when anything was wrong.
 * `npm run fuzz -- ideas` judges what wishes find instead (`ideas.ts`).
 */
import { type ChildProcess, fork } from "node:child_process";
import { cpus } from "node:os";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { planOf } from "../plans/generator.ts";
import { judge } from "../plans/judge.ts";
import { fuzzIdeas } from "./ideas.ts";

interface Tally {
  plans: number;
  refused: number[];
  wrong: { seed: number; faults: readonly string[] }[];
  slowest: { seed: number; ms: number }[];
}
const none = (): Tally => ({ plans: 0, refused: [], wrong: [], slowest: [] });
/** So many of the slowest are named, and so many plans go by between two words to the parent. */
const [SLOWEST, BATCH] = [5, 50];
/** One plan in so many is also carried to the bench and meshed. */
const SLOW_EVERY = 5;

const slowestOf = (list: Tally["slowest"]) => list.sort((a, b) => b.ms - a.ms).slice(0, SLOWEST);

function add(sum: Tally, more: Tally): void {
  sum.plans += more.plans;
  sum.refused.push(...more.refused);
  sum.wrong.push(...more.wrong);
  sum.slowest = slowestOf([...sum.slowest, ...more.slowest]);
}

/** A child: every `step`-th seed from `from` on, told in batches. */
function work(from: number, to: number, step: number): void {
  let tally = none();
  for (let seed = from; seed < to; seed += step) {
    const start = performance.now();
    const { refused, faults } = judge(planOf(seed), seed % SLOW_EVERY === 0);
    tally.plans++;
    if (refused) tally.refused.push(seed);
    if (faults.length > 0) tally.wrong.push({ seed, faults });
    tally.slowest = slowestOf([...tally.slowest, { seed, ms: Math.round(performance.now() - start) }]);
    if (tally.plans === BATCH) {
      process.send?.(tally);
      tally = none();
    }
  }
  process.send?.(tally, () => process.exit(0));
}

function lead(plans: number, seed: number, cores: number): void {
  const sum = none();
  const started = performance.now();
  let ended = 0;
  let failed = false;
  const children: ChildProcess[] = [];
  const finish = () => {
    const seconds = Math.round((performance.now() - started) / 1000);
    console.log(JSON.stringify({ fuzz: "plans", seed, seconds, ...sum, failed }, null, 2));
    process.exitCode = sum.wrong.length > 0 || failed ? 1 : 0;
  };
  process.once("SIGINT", () => {
    for (const child of children) child.kill();
    finish();
    process.exit();
  });
  for (let k = 0; k < cores; k++) {
    const child = fork(fileURLToPath(import.meta.url), ["--work", `${seed + k},${seed + plans},${cores}`]);
    children.push(child);
    child.on("message", (tally: Tally) => {
      add(sum, tally);
      process.stderr.write(
        `\r${sum.plans} of ${plans}, ${sum.wrong.length} wrong, ${sum.refused.length} refused `,
      );
    });
    child.on("exit", (code) => {
      failed ||= code !== 0;
      if (++ended === cores) finish();
    });
  }
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    wishes: { type: "string", default: "50" },
    tries: { type: "string", default: "480" },
    plans: { type: "string", default: "10000" },
    seed: { type: "string", default: "1" },
    work: { type: "string" },
  },
});
if (positionals[0] === "ideas")
  await fuzzIdeas(Number(values.wishes), Number(values.tries), Number(values.seed));
else if (values.work) {
  const [from, to, step] = values.work.split(",").map(Number);
  work(from, to, step);
} else lead(Number(values.plans), Number(values.seed), cpus().length);
