/** A sheet of variants: pictures of equal size in rows, each traced under its own light, with its name below. */

import type { Plan } from "../../core/plan/document.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../render/pack-scene.ts";
import { behindOf, sceneOf } from "../look/look-scene.ts";
import { lookOf, type OtherLook } from "../look/look-settings.ts";
import { groundColor } from "../look/png.ts";
import { stillPicture, untilReady, viewOf } from "../look/traced.ts";
import type { Orbit } from "../piece/camera.ts";
import type { Studio } from "../studio.ts";

export const MOST_VARIANTS = 12;

export interface Variant {
  readonly plan: Plan;
  /** What differs from how Look shows a piece now. */
  readonly look: OtherLook;
  readonly name: string;
}

/** Pictures in a row: as near to a square as whole rows allow, never more than four. */
const columnsFor = (count: number): number => Math.min(4, Math.ceil(Math.sqrt(count)));

/** Shares of a picture's width: the room for its name, the letters, the white between pictures. */
const [BAND, LETTERS, GAP] = [0.14, 0.055, 0.04];

/**
 * @param from where all of them are seen from
 * @param size of one picture, pixels
 * @param onShare share done, 0 .. 1
 * @throws the signal's reason; what the tracer throws
 */
export async function drawVariants(
  studio: Studio,
  variants: readonly Variant[],
  from: Orbit,
  size: number,
  samples: number,
  signal: AbortSignal,
  onShare: (share: number) => void,
): Promise<Blob> {
  await untilReady(studio, signal);
  const columns = columnsFor(variants.length);
  const rows = Math.ceil(variants.length / columns);
  const [gap, band] = [Math.round(size * GAP), Math.round(size * BAND)];
  const canvas = new OffscreenCanvas(columns * (size + gap) + gap, rows * (size + band + gap) + gap);
  const context = canvas.getContext("2d");
  if (!context) throw new Error("the browser has no canvas of this size");
  const page = getComputedStyle(document.body);
  context.fillStyle = groundColor();
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.fillStyle = page.color;
  context.font = `${Math.round(size * LETTERS)}px ${page.fontFamily}`;
  context.textAlign = "center";
  context.textBaseline = "middle";
  const settings = lookOf(studio).getState();
  const view = viewOf(from, 1);
  for (const [k, { plan, look, name }] of variants.entries()) {
    const { light = settings.light, finish = settings.finish, glass = settings.glass } = look;
    const packed = packScene(sceneOf(plan, { ...settings, light, finish, glass }), {
      ...DEFAULT_OPTIONS,
      hasDispersion: settings.hasDispersion,
      maxMeetings: STILL_MEETINGS,
      behind: behindOf(settings),
    });
    const onProgress = (share: number) => onShare((k + share) / variants.length);
    const options = { width: size, height: size, samples, exposure: settings.exposure, signal, onProgress };
    const traced = await stillPicture(studio, packed, view, options);
    const x = gap + (k % columns) * (size + gap);
    const y = gap + Math.floor(k / columns) * (size + band + gap);
    context.drawImage(await createImageBitmap(traced), x, y);
    context.fillText(name, x + size / 2, y + size + band / 2, size);
  }
  return canvas.convertToBlob({ type: "image/png" });
}
