/**
 * The command line answered in this process: what it writes and the status it ends with are those of the program, which is
 * started itself only where starting, pipes, signals or files that are none are what a test is about (`start`, `streams`).
 */
import { vi } from "vitest";
import { commandLine } from "../../src/cli/command-line.ts";

export interface Answer {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Answers the arguments. One at a time: the process has one standard output. */
export async function answer(...args: readonly string[]): Promise<Answer> {
  const written = { stdout: "", stderr: "" };
  const spies = (["stdout", "stderr"] as const).map((name) =>
    vi.spyOn(process[name], "write").mockImplementation(((text: string, done?: () => void) => {
      written[name] += text;
      done?.();
      return true;
    }) as never),
  );
  process.exitCode = undefined;
  try {
    await commandLine(args);
    return { status: Number(process.exitCode ?? 0), out: written.stdout, err: written.stderr };
  } finally {
    process.exitCode = undefined;
    for (const spy of spies) spy.mockRestore();
  }
}
