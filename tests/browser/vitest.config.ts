/** Tests that need a real browser: `npx vitest run --config tests/browser/vitest.config.ts`. Three processes, each with one browser. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { LongestFirst } from "../longest-first.ts";
import { PATIENCE_MS } from "./patience.ts";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("../..", import.meta.url)),
    include: ["tests/browser/**/*.test.ts"],
    environment: "node",
    // A browser is many processes that wait for one another much of the time: three of them fill two cores. Each lives as long as
    // the process that runs its files.
    maxWorkers: 3,
    isolate: false,
    sequence: { sequencer: LongestFirst },
    // A real browser on a busy machine fails once in a while: a test is tried again from a fresh page, and the run says which.
    retry: 1,
    testTimeout: 600_000,
    hookTimeout: 120_000,
    // as patient as the browser's own waits: a second is soon over on a busy machine
    expect: { poll: { timeout: PATIENCE_MS } },
  },
});
