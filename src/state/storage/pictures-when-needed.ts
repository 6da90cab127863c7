/** The way to the pictures of all plans (`pictures.ts`), fetched once something holds one: most plans have none. */

import type { Plan } from "../../core/plan/document.ts";
import { serializePlan } from "../../core/plan/file.ts";
import type { Pictures } from "./pictures.ts";
import type { StoragePort } from "./port.ts";

type Ways = typeof import("./pictures.ts");

/** What a mark begins with, see `picture-marks.ts`. */
export const MARK = "glintwright-picture:";

/** Whether plain data holds a picture, or a text that is or looks like a picture's mark. */
const holdsPictures = (data: unknown): boolean =>
  typeof data === "string"
    ? data.startsWith("data:image/") || data.startsWith(MARK)
    : typeof data === "object" && data !== null && Object.values(data).some(holdsPictures);

/** Whether a text may hold marks at all. */
export const mayHoldMarks = (text: string): boolean => text.includes(MARK);

let ways: Ways | null = null;
/** Rejects with whatever kept it from being fetched. */
export const pictureWays = async (): Promise<Ways> => {
  ways = await import("./pictures.ts");
  return ways;
};

/** Plain data as it may be written down now; null while it holds a picture whose hash isn't known yet. */
export const markedNow = <T>(data: T): T | null =>
  holdsPictures(data) ? (ways?.markedNow(data) ?? null) : data;

export type PicturesWhenNeeded = ReturnType<typeof picturesWhenNeeded>;

/** All that `createPictures` offers, which tells what each does. */
export function picturesWhenNeeded(port: StoragePort) {
  let made: Pictures | null = null;
  const all = async (): Promise<Pictures> => {
    const { createPictures } = await pictureWays();
    made ??= createPictures(port);
    return made;
  };
  return {
    all,
    packPlan: async (plan: Plan): Promise<string> =>
      holdsPictures(plan) ? (await all()).packPlan(plan) : serializePlan(plan),
    packData: async <T>(data: T): Promise<T> => (holdsPictures(data) ? (await all()).packData(data) : data),
    packText: async (text: string): Promise<string> =>
      text.includes("data:image/") || mayHoldMarks(text) ? (await all()).packText(text) : text,
    unpackText: async (text: string): Promise<string> =>
      mayHoldMarks(text) ? (await all()).unpackText(text) : text,
    hasAllOf: (data: unknown): boolean => !holdsPictures(data) || (made?.hasAllOf(data) ?? false),
  };
}
