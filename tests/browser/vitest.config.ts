/** Tests that need a real browser: `npx vitest run --config tests/browser/vitest.config.ts`. One file at a time: each opens its own. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: fileURLToPath(new URL("../..", import.meta.url)),
    include: ["tests/browser/**/*.test.ts"],
    environment: "node",
    fileParallelism: false,
    testTimeout: 600_000,
    hookTimeout: 120_000,
    // as patient as the browser's own waits: a second is soon over on a busy machine
    expect: { poll: { timeout: 30_000 } },
  },
});
