/** `npm run bench -- NAME`: runs one benchmark and prints its answer as one JSON object. Never part of `npm test`. */

const BENCHMARKS = [
  "geometry",
  "drag",
  "look",
  "early",
  "saved",
  "open",
  "ideas",
  "guesses",
  "stop",
] as const;

const name = process.argv[2] ?? "";
if (!BENCHMARKS.some((known) => known === name)) {
  process.stderr.write(`npm run bench -- NAME, where NAME is one of: ${BENCHMARKS.join(", ")}\n`);
  process.exitCode = 2;
} else {
  const { bench } = (await import(`./${name}.ts`)) as { bench: () => Promise<object> };
  process.stdout.write(`${JSON.stringify(await bench(), null, 1)}\n`);
}

export {};
