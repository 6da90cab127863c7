/** What is asked of the shader and its twin: a function of either, and how inputs come about. */
import type { Vec3 } from "../../../src/core/geometry/vec.ts";
import { nextRandom, type Random } from "../../../src/core/optics/random.ts";
import type { ByteTexels, Texels } from "../../../src/render/packed-scene.ts";
import type { ProbeWish, SentTexels } from "../twin-page.ts";

export interface Probe {
  readonly name: string;
  readonly wish: Partial<Omit<ProbeWish, "inputs">> & Pick<ProbeWish, "include" | "body">;
  /** Four numbers a texel. */
  readonly input: (random: Random) => readonly number[];
  /** What the twin makes of an input: eight numbers at most. */
  readonly twin: (given: readonly number[]) => readonly number[];
  readonly within?: number;
  readonly stray?: number;
}

export const sent = ({ width, height, rgba }: Texels | ByteTexels): SentTexels => ({
  width,
  height,
  bytes: rgba instanceof Uint8Array,
  rgba: Array.from(rgba),
});
/** No texture beside the inputs. */
export const NONE: ProbeWish["samplers"] = {};

export const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * nextRandom(random);
export const padded = (...values: readonly number[]): readonly number[] => [
  ...values,
  ...new Array<number>((4 - (values.length % 4)) % 4).fill(0),
];
export const vec = (given: readonly number[], at: number): Vec3 => [given[at], given[at + 1], given[at + 2]];
/** A whole number of 32 bits as two of 16. */
export const halves = (random: Random) => [
  Math.floor(65536 * nextRandom(random)),
  Math.floor(65536 * nextRandom(random)),
];
export const state = (high: number, low: number): Random => ({
  state: ((high << 16) | low) >>> 0,
  sample: 0,
  scramble: 0,
  even: false,
});
