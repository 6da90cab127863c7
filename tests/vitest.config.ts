/** The unit tests: `npx vitest run --config tests/vitest.config.ts`. Those in a browser have a file of their own, `browser/vitest.config.ts`. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { LongestFirst } from "./longest-first.ts";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  cacheDir: fileURLToPath(new URL("../.cache/vite", import.meta.url)),
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/browser/**", "tests/bench/**"],
    environment: "node",
    // Every core reckons, none is kept free for the runner, which only waits.
    maxWorkers: "100%",
    sequence: { sequencer: LongestFirst },
    // These reckon: on a machine with much else to do one takes many times as long. Only what never ends is to be ended.
    testTimeout: 600_000,
    // Modules are loaded once a process, not once a file: what a test changes of its surroundings is put back after it.
    isolate: false,
    unstubGlobals: true,
    execArgv: ["--import", fileURLToPath(new URL("plain-core.mjs", import.meta.url)), "--enable-source-maps"],
    server: {
      deps: {
        // its modules name each other without endings, which Node alone does not resolve
        inline: ["quickhull3d"],
        external: [/\/src\/core\//],
      },
    },
  },
});
