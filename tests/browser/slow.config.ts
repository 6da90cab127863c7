/** Checks that take many minutes on software WebGL: `npm run test:look`. Same terms as the other browser tests. */
import { mergeConfig } from "vitest/config";
import browser from "./vitest.config.ts";

export default mergeConfig(
  { ...browser, test: { ...browser.test, include: [] } },
  { test: { include: ["tests/browser/**/*.slow.ts"], testTimeout: 3_600_000 } },
);
