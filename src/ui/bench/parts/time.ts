/** Times as one says them: to five minutes below two hours, to a quarter of an hour above. */
const HOUR = 60;
const FINE = 5;
const COARSE = 15;

interface TimeWords {
  readonly minutes: (n: number) => string;
  readonly hours: (h: number) => string;
  readonly both: (h: number, min: number) => string;
}

/** Minutes as they are said. */
export function timeAsSaid(minutes: number): number {
  const step = minutes < 2 * HOUR ? FINE : COARSE;
  return Math.max(step, Math.round(minutes / step) * step);
}

export function timeInWords(minutes: number, words: TimeWords): string {
  const rounded = timeAsSaid(minutes);
  const [h, min] = [Math.floor(rounded / HOUR), rounded % HOUR];
  if (h === 0) return words.minutes(min);
  return min === 0 ? words.hours(h) : words.both(h, min);
}
