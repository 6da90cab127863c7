/** What the tests of one file, or of one part of it, share: served or opened before the first, closed after the last. */
import { afterAll, beforeAll } from "vitest";
import { type BuiltApp, serveBuiltApp, type Visit, type VisitOptions } from "./built-app.ts";

function begun<T>(thing: T | undefined): T {
  if (!thing) throw new Error("only within a test or a hook");
  return thing;
}

/** The built app. */
export function sharedApp(): Pick<BuiltApp, "visit" | "beside"> {
  let app: BuiltApp | undefined;
  beforeAll(async () => {
    app = await serveBuiltApp();
  });
  afterAll(() => app?.close());
  return {
    visit: (...given) => begun(app).visit(...given),
    beside: (...given) => begun(app).beside(...given),
  };
}

/** One visit to it. */
export function sharedVisit(app: Pick<BuiltApp, "visit">, options?: VisitOptions): Omit<Visit, "close"> {
  let visit: Visit | undefined;
  beforeAll(async () => {
    visit = await app.visit(options);
  });
  afterAll(() => visit?.close());
  return {
    get page() {
      return begun(visit).page;
    },
    get errors() {
      return begun(visit).errors;
    },
    get foreign() {
      return begun(visit).foreign;
    },
  };
}
