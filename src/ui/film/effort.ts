/** How much there is to trace in a film, by what a person chooses, and what to choose where that takes too long. */

export const SHAPES = ["shop", "square", "story"] as const;
type Shape = (typeof SHAPES)[number];
export const SIZES = ["large", "small"] as const;
export const LENGTHS = ["3", "6", "12"] as const;
export const FINENESSES = ["draft", "good", "best"] as const;
/** Pictures a second. */
export const RATES = ["24", "12"] as const;

export interface Effort {
  readonly shape: Shape;
  readonly size: (typeof SIZES)[number];
  readonly length: (typeof LENGTHS)[number];
  readonly fineness: (typeof FINENESSES)[number];
  readonly rate: (typeof RATES)[number];
}

/** A card's, or a processor's that traces without one. */
type Device = "card" | "software";

/** Even numbers of pixels, as encoders want them. */
const PIXELS = {
  card: {
    large: { shop: [1280, 960], square: [1080, 1080], story: [1080, 1920] },
    small: { shop: [640, 480], square: [540, 540], story: [540, 960] },
  },
  software: {
    large: { shop: [320, 240], square: [270, 270], story: [216, 384] },
    small: { shop: [240, 180], square: [180, 180], story: [144, 256] },
  },
} as const;

/** A pixel of each picture. Smoothed, they are worth several times as many. */
const SAMPLES = {
  card: { draft: 8, good: 32, best: 128 },
  software: { draft: 4, good: 16, best: 64 },
} as const;

export const BEGUN: Readonly<Record<Device, Effort>> = {
  card: { shape: "square", size: "large", length: "6", fineness: "draft", rate: "24" },
  software: { shape: "square", size: "large", length: "6", fineness: "draft", rate: "12" },
};

/**
 * Light that doesn't part into its colours looks as clean with four samples as with sixteen that do (judged by eye at 270 x 270), so
 * a draft without a card leaves that out.
 */
export const partsLight = (device: Device, { fineness }: Effort): boolean =>
  device === "card" || fineness !== "draft";

interface Shot {
  readonly width: number;
  readonly height: number;
  readonly seconds: number;
  /** Pictures a second. */
  readonly rate: number;
  /** A pixel. */
  readonly samples: number;
}

export function shotOf(device: Device, { shape, size, length, fineness, rate }: Effort): Shot {
  const [width, height] = PIXELS[device][size][shape];
  return { width, height, seconds: Number(length), rate: Number(rate), samples: SAMPLES[device][fineness] };
}

/** Samples in all. */
export const samplesIn = ({ width, height, seconds, rate, samples }: Shot): number =>
  width * height * seconds * rate * samples;

/** What is given up first costs the eye least. */
const STEPS: readonly Partial<Effort>[] = [
  { fineness: "good" },
  { fineness: "draft" },
  { rate: "12" },
  { size: "small" },
  { length: "6" },
  { length: "3" },
];

const isMore = <T extends string>(from: readonly T[], now: T, then: T): boolean =>
  from.indexOf(then) > from.indexOf(now);

/** Whether a step gives something up. */
function spares(effort: Effort, step: Partial<Effort>): boolean {
  if (step.fineness) return isMore(FINENESSES, step.fineness, effort.fineness);
  if (step.length) return isMore(LENGTHS, step.length, effort.length);
  if (step.size) return isMore(SIZES, effort.size, step.size);
  return step.rate !== undefined && isMore(RATES, effort.rate, step.rate);
}

/**
 * The nearest that takes no longer than `mostMs`, or the least there is; null where nothing can be given up.
 * @param msOf how long a film takes, milliseconds
 */
export function lighter(effort: Effort, msOf: (effort: Effort) => number, mostMs: number): Effort | null {
  let found = effort;
  for (const step of STEPS) {
    if (found !== effort && msOf(found) <= mostMs) break;
    if (spares(found, step)) found = { ...found, ...step };
  }
  return found === effort ? null : found;
}
