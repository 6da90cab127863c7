/** `render`: traces a picture of a plan's piece and writes it as PNG or as linear PFM. */
import { encode } from "fast-png";
import { supportOf } from "../../core/check/size.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import { dot, scale } from "../../core/geometry/vec.ts";
import { type Camera, cameraFrom } from "../../core/optics/camera.ts";
import { MOST_PIXELS, readHdr } from "../../core/optics/hdr.ts";
import { HdrError } from "../../core/optics/hdr-fault.ts";
import { LIGHT_SETTINGS, type Light, type LightName } from "../../core/optics/lights.ts";
import { writePfm } from "../../core/optics/pfm.ts";
import { putOnStage, type Scene, sceneOfPlan } from "../../core/optics/scene.ts";
import { toBytes, toBytesWithAlpha } from "../../core/optics/tone-map.ts";
import { solvePlan } from "../../core/plan/solve.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { mustBeWritable, readNamed, writeOut } from "../files.ts";
import { readPlan } from "../read-plan.ts";
import { type RenderOptions, renderOptions, type Words } from "../render-options.ts";
import { renderPicture } from "../render-threads.ts";
import { UsageError } from "../usage-error.ts";

/** Cosines this near to 1 are a view along the normal. */
const ALONG_NORMAL = 1e-12;
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

function png({ size, transparent }: RenderOptions, rows: Float32Array): Uint8Array {
  const data = transparent ? toBytesWithAlpha(rows, 1) : toBytes(rows, 1);
  return encode({ width: size, height: size, data, channels: transparent ? 4 : 3, depth: 8 });
}

async function writePicture(options: RenderOptions, rows: Float32Array): Promise<void> {
  const { size, out, format } = options;
  await writeOut(out, format === "pfm" ? writePfm(size, size, rows) : png(options, rows));
}

/** A camera that stands below the table, or sees it along its normal, sees no piece on a table. */
function mustSeeTable({ at, forward }: Camera, { up, height }: NonNullable<Scene["stage"]>): void {
  if (!(dot(at, up) > height)) throw new UsageError("--from: the camera would stand below the table");
  if (Math.abs(dot(forward, up)) > 1 - ALONG_NORMAL)
    throw new UsageError(
      "--from: the camera can't look straight along the table's normal: no side would be up",
    );
}

/** The scene and its camera: in the piece's own axes, on a table when there is one. */
function setUp(solved: SolvedPlan, light: Light, options: RenderOptions): { scene: Scene; camera: Camera } {
  const { azimuthDeg, elevationDeg, distanceMm, fieldDeg, stage } = options;
  const bare = sceneOfPlan(solved, light);
  const view = [azimuthDeg, elevationDeg, distanceMm / solved.radiusMm, fieldDeg] as const;
  if (!stage) return { scene: bare, camera: cameraFrom(...view) };
  const { down } = stage.rest;
  const up = scale(down, -1);
  const scene = putOnStage(bare, up, -supportOf(cutBall(solved.planes), down), stage.rgb);
  const camera = cameraFrom(...view, up);
  if (scene.stage) mustSeeTable(camera, scene.stage);
  return { scene, camera };
}

export async function run([planPath]: readonly string[], words: Words): Promise<void> {
  const { plan } = await readPlan(planPath);
  const radiusMm = plan.piece.diameterMm / 2;
  const normals = () => new Map(solvePlan(plan).facets.map(({ id, frame }) => [id, frame.n]));
  const options = renderOptions(words, radiusMm, normals);
  // told before the tracing, not after: a picture can take an hour
  await mustBeWritable(options.out);
  const light = await lightNamed(options.light);
  const { size, samples, seed, dispersion, bounces, transparent } = options;
  const job = {
    ...setUp(solvePlan(plan), light, options),
    settings: { size, samples, seed, dispersion, bounces, transparent },
  };
  const { rows, lost } = await renderPicture(job, progress());
  const share = lost / (size * size * samples);
  if (share > 0)
    process.stderr.write(`lost at the cap on bounces: ${(100 * share).toPrecision(2)} % of all paths\n`);
  await writePicture(options, rows);
}
