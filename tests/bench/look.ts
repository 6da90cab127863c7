/**
 * How fast the look is traced: `npm run bench -- look`, in Chromium, against the plain yardstick and against a general path
 * tracer for meshes, in the same run. On a real graphics card: `tsx tests/bench/look/emit.ts FOLDER`, then
 * `python3 tests/bench/look/egl.py FOLDER/timings.json OUT`.
 */
import { loadavg } from "node:os";
import { endBrowser, openPage } from "../browser/support.ts";
import type { GeneralRun } from "./look/general.ts";
import { blocksApart, type Run, type Step, timeTo } from "./look/noise.ts";

const SIZE = 256;
const PASSES = 4;
/** Yardstick and tracer take turns, so that a change of the machine's load meets both. */
const ROUNDS = 2;
const COUNTS = [25, 60, 120] as const;
/** A product picture's piece; with a table under it a pass is to take at most so many times as long as without. */
const TABLE_COUNT = 61;
/** As large as it is shown: the smallest light map is too much for a stamp. */
const TABLE_SIZE = 480;
const TABLE_LIMIT = 1.6;

/** Small, so that the general tracer gets there; converged pictures have eight times the samples of what is held against them. */
const NOISE_SIZE = 96;
const [OUR_SAMPLES, OUR_REFERENCE] = [128, 1024];
const [GENERAL_SAMPLES, GENERAL_REFERENCE] = [16, 256];
/**
 * Both have to see the same piece in the same light. What is left between them: the general tracer takes Schlick's formula for
 * Fresnel's, from inside the glass too, where it misses most of what is mirrored just short of the critical angle.
 */
const MOST_APART = 0.15;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];
const rounded = (value: number): number => Number(value.toPrecision(3));

type Ask = <T>(call: string) => Promise<T>;

/** Million samples a second, and how many times the yardstick's time a sample takes; medians over the rounds. */
async function speed(ask: Ask): Promise<object> {
  const rates = new Map<string, number[]>();
  const time = async (name: string, call: string) => {
    rates.set(name, [...(rates.get(name) ?? []), await ask<number>(call)]);
  };
  for (let round = 0; round < ROUNDS; round++) {
    for (const count of COUNTS) {
      await time(`yardstick, ${count} planes, 12 bounces`, `timeBare(${count}, ${SIZE}, ${PASSES})`);
      await time(`${count} facets, dispersion`, `timeTracer(${count}, true, ${SIZE}, ${PASSES})`);
    }
    await time(`${TABLE_COUNT} facets`, `timeTracer(${TABLE_COUNT}, true, ${TABLE_SIZE}, ${PASSES})`);
    await time(
      `${TABLE_COUNT} facets on paper`,
      `timeTracer(${TABLE_COUNT}, true, ${TABLE_SIZE}, ${PASSES}, true)`,
    );
    await time("25 facets, no dispersion", `timeTracer(25, false, ${SIZE}, ${PASSES})`);
  }
  const rate = (name: string) => median(rates.get(name) ?? []);
  const plain = (count: number) => rate(`yardstick, ${count} planes, 12 bounces`);
  const answers = [...rates].map(([name, all]) => ({
    name,
    megaSamplesPerSecond: rounded(median(all)),
    slowest: rounded(Math.min(...all)),
    fastest: rounded(Math.max(...all)),
    timesYardstickOf25: rounded(plain(25) / median(all)),
    timesYardstickOfAsMany: rounded(plain(Number.parseInt(name.replace(/^\D+/, ""), 10)) / median(all)),
  }));
  const onPaper = rate(`${TABLE_COUNT} facets`) / rate(`${TABLE_COUNT} facets on paper`);
  return { size: SIZE, answers, table: { timesWithout: rounded(onPaper), limit: TABLE_LIMIT } };
}

/** Wall time to the general tracer's last noise level, in both tracers. @throws Error when they don't see the same picture */
async function equalNoise(ask: Ask): Promise<object> {
  const general = await ask<GeneralRun>(
    `traceGeneral(25, ${NOISE_SIZE}, ${GENERAL_SAMPLES}, ${GENERAL_REFERENCE})`,
  );
  const { error, ms } = general.steps[general.steps.length - 1];
  const ours = async (hasDispersion: boolean) => {
    const call = `convergeTracer(25, ${hasDispersion}, ${NOISE_SIZE}, ${OUR_SAMPLES}, ${OUR_REFERENCE})`;
    const { steps, blocks } = await ask<Run>(call);
    const apart = blocksApart(general.blocks, blocks);
    if (!(apart <= MOST_APART)) throw new Error(`the tracers' pictures are ${rounded(100 * apart)} % apart`);
    const ourMs = timeTo(error, steps);
    return {
      steps: steps.map(roundedStep),
      pictureApart: rounded(apart),
      msToEqualNoise: rounded(ourMs),
      timesFaster: rounded(ms / ourMs),
    };
  };
  return {
    size: NOISE_SIZE,
    noise: "root mean square against a converged picture of the same tracer, relative to its mean",
    general: {
      name: "three-gpu-pathtracer, the same piece as a mesh, no dispersion, 12 bounces",
      readyMs: rounded(general.readyMs),
      steps: general.steps.map(roundedStep),
    },
    withoutDispersion: await ours(false),
    withDispersion: await ours(true),
  };
}

const roundedStep = ({ samples, ms, error, shownError }: Step): Step => ({
  samples,
  ms: rounded(ms),
  error: rounded(error),
  ...(shownError !== undefined && { shownError: rounded(shownError) }),
});

const FIRST_SIZES = [
  [960, 720],
  [1920, 1080],
] as const;
const EDITS = 20;
const FIRST_LIMIT_MS = 100;

/**
 * From an edit of the piece to its first picture on the card, in the app's own renderer. The limit is one for a graphics card:
 * in software the last step alone, showing a picture at the screen's size, takes a good part of it.
 */
async function firstPicture(ask: Ask): Promise<object> {
  const answers: object[] = [];
  for (const [width, height] of FIRST_SIZES)
    for (const count of COUNTS) {
      const all = await ask<number[]>(`firstPictures(${count}, ${width}, ${height}, ${EDITS})`);
      const ms = median(all);
      answers.push({
        facets: count,
        width,
        height,
        ms: rounded(ms),
        slowestMs: rounded(Math.max(...all)),
        timesLimit: rounded(ms / FIRST_LIMIT_MS),
      });
    }
  return { limitMs: FIRST_LIMIT_MS, answers };
}

/** A machine on which the general tracer's program alone takes longer than this has no ratio to tell. */
const GENERAL_LIMIT_MS = 240_000;

/** What a measurement says, or that it was not done in time; the page that runs it is closed right after. */
async function within(limitMs: number, measurement: Promise<object>): Promise<object> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<object>((resolve) => {
    timer = setTimeout(() => resolve({ notDoneAfterMs: limitMs }), limitMs);
  });
  try {
    return await Promise.race([measurement, late]);
  } finally {
    clearTimeout(timer);
    // Closing the page rejects what still runs in it.
    measurement.catch(() => undefined);
  }
}

export async function bench(): Promise<object> {
  const { page, errors, close } = await openPage("tests/bench/look/page.html");
  const ask: Ask = (call) => {
    process.stderr.write(`${call}\n`);
    return page.evaluate(call);
  };
  try {
    await page.waitForFunction("'timeTracer' in window");
    const answer = {
      renderer: "Chromium, WebGL in software",
      load: loadavg().map(rounded),
      speed: await speed(ask),
      firstPicture: await firstPicture(ask),
      equalNoise: await within(GENERAL_LIMIT_MS, equalNoise(ask)),
    };
    if (errors.length > 0) throw new Error(errors.join("\n"));
    return answer;
  } finally {
    await close();
    await endBrowser();
  }
}
