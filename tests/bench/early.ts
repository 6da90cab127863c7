/**
 * What a person waits for where the processor traces: `npm run bench -- early`. Pictures of 480 x 480 of examples on tables as Look
 * shows them one after the other, each with the processor time of the whole browser until then (programs made included), what the clock
 * says, which is true on an idle machine only, and how far it is from the same picture at 128 samples: the mean difference in CIE L*a*b* (1976), over the piece and beside it, of both
 * blurred by a pixel, as an eye at arm's length does. `presentable`: over the piece that is 2.3 at most, a difference just noticed
 * (M. Mahy, L. Van Eycken, A. Oosterlinck, Evaluation of uniform color spaces, Color Res. Appl. 19, 1994; from memory).
 */
import { readdirSync, readFileSync } from "node:fs";
import { converter } from "culori";
import { endBrowser, openPage } from "../browser/support.ts";
import type { Early } from "./look/early.ts";

const SIZE = 480;
/** Samples of the pictures that are told of, and of the one that they are held to. */
const [LAST, CONVERGED] = [32, 128];
const PRESENTABLE = 2.3;
/** Linux counts processor time in hundredths of a second. */
const TICKS = 100;
/** Piece and picture share a middle; radius of what counts as the piece, pixels. */
const PIECE = 140;
const ON_TABLES = [
  ["Both banks", "paper"],
  ["Three steps up", "linen"],
] as const;

/** Processor time of all processes that this one has begun, and of theirs, seconds. */
function secondsBelow(): number {
  const all = readdirSync("/proc").flatMap((id) => {
    if (!/^\d+$/.test(id)) return [];
    try {
      const text = readFileSync(`/proc/${id}/stat`, "utf8");
      const numbers = text
        .slice(text.lastIndexOf(")") + 2)
        .split(" ")
        .map(Number);
      return [{ id: Number(id), parent: numbers[1], ticks: numbers[11] + numbers[12] }];
    } catch {
      // it has ended meanwhile
      return [];
    }
  });
  const below = new Set([process.pid]);
  for (let before = 0; before !== below.size; ) {
    before = below.size;
    for (const { id, parent } of all) if (below.has(parent)) below.add(id);
  }
  below.delete(process.pid);
  return all.reduce((sum, { id, ticks }) => sum + (below.has(id) ? ticks : 0), 0) / TICKS;
}

const toLab = converter("lab65");

function labOf(rgb: number): readonly number[] {
  const [r, g, b] = [rgb >> 16, (rgb >> 8) & 255, rgb & 255].map((byte) => byte / 255);
  const lab = toLab({ mode: "rgb", r, g, b });
  return [lab.l, lab.a, lab.b];
}

/** L*, a*, b* of a picture, each blurred by a pixel: weights 1 4 6 4 1 both ways. */
function blurredLab(rgb: string): Float64Array[] {
  const bytes = Buffer.from(rgb, "base64");
  const known = new Map<number, readonly number[]>();
  const planes = [0, 1, 2].map(() => new Float64Array(SIZE * SIZE));
  for (let k = 0; k < SIZE * SIZE; k++) {
    const key = bytes.readUIntBE(3 * k, 3);
    const lab = known.get(key) ?? labOf(key);
    known.set(key, lab);
    for (const c of [0, 1, 2]) planes[c][k] = lab[c];
  }
  return planes.map((plane) => blurred(blurred(plane, 1), SIZE));
}

function blurred(plane: Float64Array, step: number): Float64Array {
  return plane.map((_, k) =>
    [1, 4, 6, 4, 1].reduce((sum, weight, n) => {
      const at = k + (n - 2) * step;
      return sum + (weight / 16) * (plane[at] ?? plane[k]);
    }, 0),
  );
}

function difference(a: readonly Float64Array[], b: readonly Float64Array[]) {
  const sums = { piece: 0, beside: 0 };
  const counts = { piece: 0, beside: 0 };
  for (let k = 0; k < SIZE * SIZE; k++) {
    const off = Math.hypot((k % SIZE) - SIZE / 2, Math.floor(k / SIZE) - SIZE / 2);
    const where = off < PIECE ? "piece" : "beside";
    sums[where] += Math.hypot(...[0, 1, 2].map((c) => a[c][k] - b[c][k]));
    counts[where]++;
  }
  return { piece: sums.piece / counts.piece, beside: sums.beside / counts.beside };
}

const rounded = (value: number): number => Number(value.toPrecision(3));

export async function bench(): Promise<object> {
  const { page, errors, close } = await openPage("tests/bench/look/page.html");
  try {
    await page.exposeFunction("processorSeconds", secondsBelow);
    await page.waitForFunction("'earlyPictures' in window");
    const answers: object[] = [];
    for (const [name, table] of ON_TABLES) {
      const wish = JSON.stringify({ name, table, size: SIZE, upTo: LAST, until: CONVERGED });
      const taken = await page.evaluate<Early[]>(`earlyPictures(${wish})`);
      const converged = blurredLab(taken[taken.length - 1].rgb);
      const steps = taken.slice(0, -1).map(({ rgb, ...step }) => ({
        ...step,
        ...difference(blurredLab(rgb), converged),
      }));
      const presentable = steps.find(({ piece, isCoarse }) => !isCoarse && piece <= PRESENTABLE);
      answers.push({
        name: `${name} on ${table}`,
        presentableSeconds: presentable ? rounded(presentable.seconds) : null,
        presentableByClock: presentable ? rounded(presentable.clockSeconds) : null,
        steps: steps.map(({ samples, isCoarse, seconds, clockSeconds, piece, beside }) => ({
          samples,
          isCoarse,
          seconds: rounded(seconds),
          clockSeconds: rounded(clockSeconds),
          piece: rounded(piece),
          beside: rounded(beside),
        })),
      });
    }
    if (errors.length > 0) throw new Error(errors.join("\n"));
    return { size: SIZE, presentable: PRESENTABLE, answers };
  } finally {
    await close();
    await endBrowser();
  }
}
