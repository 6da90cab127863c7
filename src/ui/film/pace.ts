/** How long what is under way still takes: by how fast its latest part went, since what came before may have been compiling. */
import type { film } from "../../words/en/film.ts";
import type { Translated } from "../../words/language.ts";

/** The latest part: so many marks back. */
const LATEST = 12;

interface Mark {
  /** Share done, 0 .. 1. */
  readonly share: number;
  readonly ms: number;
}

/** Marks so far, with one more. @param share done, 0 .. 1, of what `ms` is the clock's time */
export const marked = (marks: readonly Mark[], share: number, ms: number): readonly Mark[] =>
  [...marks, { share, ms }].slice(-LATEST);

/** Milliseconds; null until two marks say how fast it goes. */
export function msLeft(marks: readonly Mark[]): number | null {
  const [first, last] = [marks[0], marks[marks.length - 1]];
  if (!first || last.share <= first.share) return null;
  return ((last.ms - first.ms) * (1 - last.share)) / (last.share - first.share);
}

const SECOND_MS = 1000;
const MINUTE_S = 60;
const HOUR_MIN = 60;
/** Below that many seconds they are told one by one, and below that many minutes those. */
const [SECONDS, MINUTES] = [90, 90];

/** As one says it, never less than it is. */
export function spanInWords(
  ms: number,
  words: Translated<typeof film>,
  number: (value: number, digits: number) => string,
): string {
  const seconds = ms / SECOND_MS;
  const minutes = seconds / MINUTE_S;
  if (seconds < SECONDS) return words.seconds(number(Math.max(1, Math.ceil(seconds)), 0));
  if (minutes < MINUTES) return words.minutes(number(Math.ceil(minutes), 0));
  return words.hours(number(Math.ceil(minutes / HOUR_MIN), 0));
}
