/** `photo`: puts a photograph of the uncut ball into its plan as what is inside, as the glass showed it. */
import { decodePicture } from "../../core/optics/decode-picture.ts";
import type { Raster } from "../../core/optics/raster.ts";
import { largestInGlassMm, type PhotoWish, withPhoto } from "../../core/optics/with-photo.ts";
import { PlanFileError, planFromData, serializePlan } from "../../core/plan/file.ts";
import { RANGES } from "../../core/plan/limits.ts";
import { type PictureFile, pictureSize } from "../../core/plan/pictures.ts";
import { fileFaultInWords } from "../../words/file-faults.ts";
import { mustBeWritable, readNamed, writeOut } from "../files.ts";
import { numberOption } from "../number-option.ts";
import { choice, type Options } from "../options.ts";
import { readPlan } from "../read-plan.ts";
import { UsageError } from "../usage-error.ts";

/** Bytes of a photograph, and pixels along its edge. */
const MOST_BYTES = 64 * 1024 * 1024;
const MOST_EDGE = 16_384;
const FARTHEST_MM = 1e6;
const DEFAULT_DISTANCE_RADII = 10;

function fileOf(path: string, bytes: Uint8Array): PictureFile {
  for (const kind of ["png", "jpeg"] as const) {
    const file = { kind, bytes };
    if (pictureSize(file)) return file;
  }
  throw new UsageError(({ files }) => `${path}: ${files.noPicture}`);
}

async function readPhoto(path: string): Promise<Raster> {
  const file = fileOf(path, await readNamed(path, MOST_BYTES));
  const size = pictureSize(file);
  if (size && Math.max(size.width, size.height) > MOST_EDGE)
    throw new UsageError(
      ({ files }) =>
        `${path}: ${files.largePhoto(String(size.width), String(size.height), String(MOST_EDGE))}`,
    );
  try {
    return decodePicture(file, MOST_EDGE);
  } catch (error) {
    throw new UsageError(({ files }) => `${path}: ${files.damagedPicture}`, { cause: error });
  }
}

function outlineOption(options: Options, { width, height }: Raster): PhotoWish["outline"] {
  const text = String(options.circle ?? "");
  const parts = text.split(",").map((part) => (part.trim() === "" ? Number.NaN : Number(part)));
  const [x, y, r] = parts;
  if (parts.length !== 3 || !parts.every(Number.isFinite) || !(r > 0))
    throw new UsageError(({ refused }) => refused.circle(text));
  const isOn = x + r > 0 && y + r > 0 && x - r < width && y - r < height;
  if (!isOn) throw new UsageError(({ refused }) => refused.circleBeyond(String(width), String(height)));
  return { x, y, r };
}

function wishOf(options: Options, photo: Raster, radiusMm: number): PhotoWish {
  const outline = outlineOption(options, photo);
  const distanceMm = numberOption(options, "distance", DEFAULT_DISTANCE_RADII * radiusMm, {
    min: radiusMm,
    max: FARTHEST_MM,
    open: true,
  });
  const depthMm = numberOption(options, "depth", 0, { min: -radiusMm, max: radiusMm, open: true });
  const shape = choice(options, "shape", ["disc", "core"]);
  const side = choice(options, "side", ["front", "back"]);
  const wish = { outline, distanceMm, depthMm, shape, side };
  if (options.diameter === undefined) return { ...wish, diameterMm: null };
  const most = Math.min(RANGES.sizeMm.max, largestInGlassMm(radiusMm, { ...wish, diameterMm: null }));
  const diameterMm = numberOption(options, "diameter", 0, { min: 0, max: most });
  if (diameterMm === 0) throw new UsageError(({ refused }) => refused.diameterNone);
  return { ...wish, diameterMm };
}

export async function run([photoPath]: readonly string[], options: Options): Promise<void> {
  const { plan } = await readPlan(String(options.plan));
  const photo = await readPhoto(photoPath);
  const wish = wishOf(options, photo, plan.piece.diameterMm / 2);
  const out = String(options.out);
  await mustBeWritable(out);
  const made = withPhoto(plan, photo, wish);
  try {
    // as strict as for any plan: what is written can be read again
    await writeOut(out, serializePlan(planFromData(made).plan));
  } catch (error) {
    throw error instanceof PlanFileError
      ? new UsageError(({ files }, language) =>
          files.pictureNotTaken(fileFaultInWords(error.fault, language)),
        )
      : error;
  }
}
