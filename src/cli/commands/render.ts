/** `render`: traces a picture of a plan's piece and writes it as PNG or as linear PFM. */
import { encode } from "fast-png";
import { cameraFrom } from "../../core/optics/camera.ts";
import { MOST_PIXELS, readHdr } from "../../core/optics/hdr.ts";
import { HdrError } from "../../core/optics/hdr-fault.ts";
import { LIGHT_SETTINGS, type Light, type LightName } from "../../core/optics/lights.ts";
import { writePfm } from "../../core/optics/pfm.ts";
import { sceneOfPlan } from "../../core/optics/scene.ts";
import { toBytes } from "../../core/optics/tone-map.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import { mustBeWritable, readNamed, writeOut } from "../files.ts";
import { readPlan } from "../read-plan.ts";
import { type RenderOptions, renderOptions, type Words } from "../render-options.ts";
import { renderPicture } from "../render-threads.ts";
import { UsageError } from "../usage-error.ts";

/** The most pixels a light may have, uncompressed, and its head. */
const LIGHT_BYTES = 4 * MOST_PIXELS + 65_536;

async function readPictureLight(path: string): Promise<Light> {
  const bytes = await readNamed(path, LIGHT_BYTES, `--light: can't read ${path}`);
  try {
    const { width, height, data } = readHdr(bytes);
    // Shared, so that threads need no copies of their own.
    const shared = new Float32Array(new SharedArrayBuffer(data.byteLength));
    shared.set(data);
    return { kind: "picture", picture: { width, height, data: shared }, turnRad: 0 };
  } catch (error) {
    throw error instanceof HdrError ? new UsageError(`--light ${path}: ${error.message}`) : error;
  }
}

function lightNamed(name: string): Light | Promise<Light> {
  if (name === "uniform") return { kind: "uniform" };
  if (Object.hasOwn(LIGHT_SETTINGS, name))
    return { kind: "setting", setting: LIGHT_SETTINGS[name as LightName], turnRad: 0 };
  return readPictureLight(name);
}

/** Tenths as they are reached, on standard error only. */
function progress(): (share: number) => void {
  let told = 0;
  return (share) => {
    const tenths = Math.floor(share * 10 + 1e-9);
    if (tenths > told) process.stderr.write(`${tenths * 10} %\n`);
    told = Math.max(told, tenths);
  };
}

async function writePicture(options: RenderOptions, rows: Float32Array): Promise<void> {
  const { size, out } = options;
  const file =
    options.format === "pfm"
      ? writePfm(size, size, rows)
      : encode({ width: size, height: size, data: toBytes(rows, 1), channels: 3, depth: 8 });
  await writeOut(out, file);
}

export async function run([planPath]: readonly string[], words: Words): Promise<void> {
  const { plan } = await readPlan(planPath);
  const radiusMm = plan.piece.diameterMm / 2;
  const options = renderOptions(words, radiusMm);
  // told before the tracing, not after: a picture can take an hour
  await mustBeWritable(options.out);
  const light = await lightNamed(options.light);
  const { azimuthDeg, elevationDeg, distanceMm, fieldDeg, size, samples, seed, dispersion, bounces } =
    options;
  const job = {
    scene: sceneOfPlan(solvePlan(plan), light),
    camera: cameraFrom(azimuthDeg, elevationDeg, distanceMm / radiusMm, fieldDeg),
    settings: { size, samples, seed, dispersion, bounces },
  };
  const { rows, lost } = await renderPicture(job, progress());
  const share = lost / (size * size * samples);
  if (share > 0)
    process.stderr.write(`lost at the cap on bounces: ${(100 * share).toPrecision(2)} % of all paths\n`);
  await writePicture(options, rows);
}
