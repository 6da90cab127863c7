/** How long a job under way still takes, by what of it has been done since it first told a share: what was told before it began was a guess. */

/** So much must have been done, and for so long, before its pace says anything. */
const [LEAST_SHARE, LEAST_MS] = [0.03, 1000];

/**
 * For one job, which tells its share (0 .. 1) as it goes.
 * @param now milliseconds
 * @returns milliseconds left at a share; null as long as its pace says nothing
 */
export function makeTimeLeft(now: () => number): (share: number) => number | null {
  let first: { readonly share: number; readonly ms: number } | null = null;
  return (share) => {
    const ms = now();
    first ??= { share, ms };
    const [done, taken] = [share - first.share, ms - first.ms];
    return done < LEAST_SHARE || taken < LEAST_MS ? null : (taken / done) * (1 - share);
  };
}
