/**
 * In which order test files begin: those that take longest first, so that at the end no core waits for another. The runner
 * remembers times only on a machine where it ran before.
 */
import { BaseSequencer, type TestSpecification } from "vitest/node";
import longUnitFiles from "./long-files.json" with { type: "json" };

/** The dearest files, longest first, by the end of their paths; all others follow as the runner has them. */
const LONGEST = [
  ...longUnitFiles.map((path) => path.slice("tests/".length)),
  "browser/look.test.ts",
  "browser/look-gpu.test.ts",
  "browser/whole-app.test.ts",
  "browser/screens.test.ts",
  "browser/sheet.test.ts",
  "browser/ideas-deeds.test.ts",
  "browser/faults.test.ts",
  "browser/written-ahead.test.ts",
  "browser/lap-plan.test.ts",
  "browser/first-hour.test.ts",
  "browser/edit.test.ts",
  "browser/guide.test.ts",
  "browser/customer.test.ts",
  "browser/piece.test.ts",
  "browser/show-table.test.ts",
  "browser/load.test.ts",
  "browser/film.test.ts",
  "browser/layouts.test.ts",
  "browser/film-sheet.test.ts",
  "browser/storage.test.ts",
  "browser/library.test.ts",
  "browser/bench-lap.test.ts",
  "browser/price.test.ts",
  "browser/mends.test.ts",
  "browser/bench.test.ts",
  "browser/twin.test.ts",
  "browser/everyone.test.ts",
  "browser/photo.test.ts",
  "browser/trust.test.ts",
  "browser/bench-follow.test.ts",
];

const rank = ({ moduleId }: TestSpecification): number => {
  const at = LONGEST.findIndex((path) => moduleId.endsWith(`/${path}`));
  return at === -1 ? LONGEST.length : at;
};

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}
