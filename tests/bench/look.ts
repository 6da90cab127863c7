/**
 * How fast the look is traced: `npm run bench -- look`, in Chromium, against the plain yardstick in the same run. On a real
 * graphics card: `tsx tests/bench/look/emit.ts FOLDER`, then `python3 tests/bench/look/egl.py FOLDER/timings.json OUT`.
 */
import { loadavg } from "node:os";
import { openPage } from "../browser/support.ts";

const SIZE = 512;
const PASSES = 6;
/** The yardstick runs before and after, so that a change of the machine's load shows. */
const ROUNDS = 3;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

const YARDSTICK = "yardstick, 25 planes, 12 bounces";

/** Million samples a second, and how many times the yardstick's time a sample takes; medians over the rounds. */
export async function bench(): Promise<object> {
  const { page, errors, close } = await openPage("tests/bench/look/page.html");
  const rates = new Map<string, number[]>();
  const time = async (name: string, call: string) => {
    const rate = await page.evaluate<number>(call);
    rates.set(name, [...(rates.get(name) ?? []), rate]);
  };
  try {
    await page.waitForFunction("'timeTracer' in window");
    for (let round = 0; round < ROUNDS; round++) {
      await time(YARDSTICK, `timeBare(${SIZE}, ${PASSES})`);
      for (const count of [25, 60, 120])
        await time(`${count} facets, dispersion`, `timeTracer(${count}, true, ${SIZE}, ${PASSES})`);
      await time("25 facets, no dispersion", `timeTracer(25, false, ${SIZE}, ${PASSES})`);
    }
  } finally {
    await close();
  }
  if (errors.length > 0) throw new Error(errors.join("\n"));
  const plain = median(rates.get(YARDSTICK) ?? []);
  const answers = [...rates].map(([name, all]) => ({
    name,
    megaSamplesPerSecond: round2(median(all)),
    slowest: round2(Math.min(...all)),
    fastest: round2(Math.max(...all)),
    timesYardstick: round2(plain / median(all)),
  }));
  return { renderer: "Chromium, WebGL in software", size: SIZE, load: loadavg(), answers };
}

const round2 = (value: number): number => Math.round(100 * value) / 100;
