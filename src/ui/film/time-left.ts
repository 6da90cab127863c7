/** How long what is under way still takes, told as one says it. */
import type { film } from "../../words/en/film.ts";
import type { Translated } from "../../words/language.ts";

const MINUTE_S = 60;
const HOUR_MIN = 60;
/** Below that many seconds they are told one by one, and below that many minutes those. */
const [SECONDS, MINUTES] = [90, 90];

/** @returns empty before anything is done, and when all is */
export function timeLeft(
  spentMs: number,
  done: number,
  of: number,
  words: Translated<typeof film>,
  number: (value: number, digits: number) => string,
): string {
  if (done === 0 || done >= of) return "";
  const seconds = ((spentMs / done) * (of - done)) / 1000;
  const minutes = seconds / MINUTE_S;
  if (seconds < SECONDS) return words.left(words.leftSeconds(number(Math.ceil(seconds), 0)));
  if (minutes < MINUTES) return words.left(words.leftMinutes(number(Math.ceil(minutes), 0)));
  return words.left(words.leftHours(number(Math.ceil(minutes / HOUR_MIN), 0)));
}
