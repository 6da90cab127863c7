/**
 * What the tests of one file, or of one part of it, share. A test that is tried again begins anew: with a page of its own, as if
 * it were the first.
 */
import { afterAll, afterEach, beforeEach, expect } from "vitest";
import { type BuiltApp, serveBuiltApp, type Visit } from "./built-app.ts";
import type { ProfileOptions } from "./profiles.ts";
import { developedApp } from "./support.ts";

function begun<T>(thing: T | undefined): T {
  if (!thing) throw new Error("only within a test or a hook");
  return thing;
}

/** For the hook that opens a page: it may have to bundle it first, beside much else that the machine does. */
const OPENING_MS = 400_000;

/** Something that is opened before the first of the tests that share it, and anew after one that failed; `check` judges it after each. */
export function sharedThing<T>(
  open: () => Promise<T>,
  close: (thing: T, isWell: boolean) => Promise<unknown>,
  check: (thing: T) => void = () => undefined,
): () => T {
  let thing: T | undefined;
  const end = async (isWell: boolean) => {
    const was = thing;
    thing = undefined;
    // what a failed test leaves may be beyond closing: the next page has a profile of its own
    if (was) await close(was, isWell).catch(() => undefined);
  };
  beforeEach(async () => {
    thing ??= await open();
  }, OPENING_MS);
  afterEach(async ({ task }) => {
    let isWell = task.result?.state !== "fail";
    try {
      if (isWell && thing) check(thing);
    } catch (error) {
      isWell = false;
      throw error;
    } finally {
      if (!isWell) await end(false);
    }
  });
  afterAll(() => end(true));
  return () => begun(thing);
}

const served = (open: () => Promise<BuiltApp>): Pick<BuiltApp, "visit" | "beside"> => {
  const app = sharedThing(open, (opened, isWell) => opened.close(isWell));
  return {
    visit: (...given) => app().visit(...given),
    beside: (...given) => app().beside(...given),
  };
};

/** The built app. What a failed test has left open of it is closed before the next. */
export const sharedApp = () => served(serveBuiltApp);

/** The app as it is developed, several times as slow: what React finds wrong is an error there, and not heard in the built one. */
export const sharedDevelopedApp = () => served(async () => serveBuiltApp(await developedApp()));

export interface Shared {
  /** What a person did before the first test. */
  readonly prepare?: (page: Visit["page"]) => Promise<unknown>;
  /** Errors that belong to what is tested. */
  readonly expected?: RegExp;
}

/** One visit to it, which reports no error. */
export function sharedVisit(
  app: Pick<BuiltApp, "visit">,
  options: ProfileOptions,
  { prepare, expected }: Shared = {},
): Omit<Visit, "close"> {
  const visit = sharedThing(
    async () => {
      const opened = await app.visit(options);
      await prepare?.(opened.page);
      return opened;
    },
    (opened) => opened.close(),
    ({ errors }) => expect(errors.filter((words) => !expected?.test(words))).toEqual([]),
  );
  return {
    get page() {
      return visit().page;
    },
    get errors() {
      return visit().errors;
    },
    get foreign() {
      return visit().foreign;
    },
  };
}
