/** Prints one JSON object on standard output. JSON has no NaN or infinity: one here is a fault of ours, so it is thrown. */
export function printJson(value: unknown): void {
  const text = JSON.stringify(
    value,
    (key, v) => {
      if (typeof v === "number" && !Number.isFinite(v))
        throw new Error(`${key || "answer"} is not a finite number`);
      return v;
    },
    1,
  );
  process.stdout.write(`${text}\n`);
}
