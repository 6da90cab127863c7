/**
 * What the twin says of pictures without a background and through a lens: means of parts of them, colour and coverage, kept as
 * numbers since a piece on a table takes it long.
 */
import { readFileSync } from "node:fs";
import { cameraFrom, type Lens } from "../../src/core/optics/camera.ts";
import { renderRows } from "../../src/core/optics/picture.ts";
import { DEFAULT_DISTANCE, DEFAULT_FIELD_DEG } from "../../src/render/view.ts";
import { ALL_SCENES, NOISY, ON_LINEN } from "./look-scenes.ts";

/** Width and height, pixels. */
export const SEEN_SIZE = 24;
/** Parts across and down. */
const PARTS = 4;
/** A pixel of what is kept. */
export const SEEN_SAMPLES = 256;
export const SEEN_SEED = 6;

export interface Seen {
  /** Of one of the shared scenes. */
  readonly scene: string;
  readonly behind: "nothing" | "light";
  readonly lens?: Lens;
}

export const THROUGH: readonly Seen[] = [...NOISY, ON_LINEN].map(({ name }) => ({
  scene: name,
  behind: "nothing",
}));
export const SHARP: Seen = { scene: ON_LINEN.name, behind: "light" };
export const BLURRED: Seen = { ...SHARP, lens: { radius: 1, focus: 6 } };
export const ALL_SEEN: readonly Seen[] = [...THROUGH, SHARP, BLURRED];

export const sceneNumber = ({ scene }: Seen): number => ALL_SCENES.findIndex(({ name }) => name === scene);

/** Means of each of four numbers over PARTS x PARTS parts; rows from the top. */
export function seenParts(rgba: ArrayLike<number>): number[] {
  const edge = SEEN_SIZE / PARTS;
  const means = new Array<number>(4 * PARTS * PARTS).fill(0);
  for (let i = 0; i < rgba.length; i++) {
    const pixel = Math.floor(i / 4);
    const [x, y] = [pixel % SEEN_SIZE, Math.floor(pixel / SEEN_SIZE)];
    means[4 * (Math.floor(y / edge) * PARTS + Math.floor(x / edge)) + (i % 4)] += rgba[i] / edge ** 2;
  }
  return means;
}

export function twinParts(seen: Seen, samples: number, seed: number): number[] {
  const { make, from, up, hasDispersion } = ALL_SCENES[sceneNumber(seen)];
  const pinhole = cameraFrom(...from, DEFAULT_DISTANCE, DEFAULT_FIELD_DEG, up);
  const camera = seen.lens ? { ...pinhole, lens: seen.lens } : pinhole;
  const transparent = seen.behind === "nothing";
  const settings = { size: SEEN_SIZE, samples, seed, dispersion: hasDispersion, bounces: null, transparent };
  const rows = renderRows(make(), camera, settings, 0, SEEN_SIZE, { lost: 0, meetings: 0 });
  if (transparent) return seenParts(rows);
  return seenParts(
    Array.from({ length: 4 * SEEN_SIZE ** 2 }, (_, i) => (i % 4 === 3 ? 1 : rows[3 * (i >> 2) + (i % 4)])),
  );
}

export const seenFile = new URL("../fixtures/look/seen-through.json", import.meta.url);

/** Rounded as they are kept. */
export const toKeep = (parts: readonly number[]): number[] => parts.map((v) => Number(v.toFixed(5)));

export const keptSeen = (seen: Seen): readonly number[] =>
  JSON.parse(readFileSync(seenFile, "utf8"))[ALL_SEEN.indexOf(seen)];
