/** What pictures on the command line are made of: the light by its name, the scene, the camera, and the bytes of a PNG. */
import { encode } from "fast-png";
import { supportOf } from "../core/check/size.ts";
import { cutBall } from "../core/geometry/solid.ts";
import { dot, scale, type Vec3 } from "../core/geometry/vec.ts";
import { type Camera, cameraTowards, lensOf } from "../core/optics/camera.ts";
import { rastersOf } from "../core/optics/decode-picture.ts";
import { MOST_PIXELS, readHdr } from "../core/optics/hdr.ts";
import { HdrError } from "../core/optics/hdr-fault.ts";
import { LIGHT_SETTINGS, type LightName } from "../core/optics/light-settings.ts";
import type { Light } from "../core/optics/lights.ts";
import type { PictureSettings } from "../core/optics/picture.ts";
import { putOnTable, type Scene, sceneOfPlan } from "../core/optics/scene.ts";
import { toBytes, toBytesWithAlpha } from "../core/optics/tone-map.ts";
import type { SolvedPlan } from "../core/plan/solved.ts";
import { hdrFaultInWords } from "../words/hdr-faults.ts";
import { readNamed } from "./files.ts";
import type { RenderOptions } from "./render-options.ts";
import { UsageError } from "./usage-error.ts";

/** Cosines this near to 1 are a view along the normal. */
const ALONG_NORMAL = 1e-12;
/** The most pixels a light may have, uncompressed, and its head. */
const LIGHT_BYTES = 4 * MOST_PIXELS + 65_536;

async function readPictureLight(path: string): Promise<Light> {
  const bytes = await readNamed(path, LIGHT_BYTES, ({ files }) => files.cantReadLight(path));
  try {
    const { width, height, data } = readHdr(bytes);
    // Shared, so that threads need no copies of their own.
    const shared = new Float32Array(new SharedArrayBuffer(data.byteLength));
    shared.set(data);
    return { kind: "picture", picture: { width, height, data: shared }, turnRad: 0 };
  } catch (error) {
    throw error instanceof HdrError
      ? new UsageError((_, language) => `--light ${path}: ${hdrFaultInWords(error.fault, language)}`)
      : error;
  }
}

export function lightNamed(name: string): Light | Promise<Light> {
  if (name === "uniform") return { kind: "uniform" };
  if (Object.hasOwn(LIGHT_SETTINGS, name))
    return { kind: "setting", setting: LIGHT_SETTINGS[name as LightName], turnRad: 0 };
  return readPictureLight(name);
}

export function png({ size, transparent }: RenderOptions, rows: Float32Array): Uint8Array {
  const data = transparent ? toBytesWithAlpha(rows, 1) : toBytes(rows, 1);
  return encode({ width: size, height: size, data, channels: transparent ? 4 : 3, depth: 8 });
}

/** A camera that stands below the table, or sees it along its normal, sees no piece on a table. */
function mustSeeTable(
  { at, forward }: Camera,
  { up, height }: NonNullable<Scene["tabletop"]>,
  option: string,
): void {
  if (!(dot(at, up) > height)) throw new UsageError(({ refused }) => refused.belowTable(option));
  if (Math.abs(dot(forward, up)) > 1 - ALONG_NORMAL)
    throw new UsageError(({ refused }) => refused.alongNormal(option));
}

/**
 * The scene that a picture shows, on a table when there is one.
 * @throws BrokenPicture for a picture inside that can't be decoded
 */
export function sceneFor(solved: SolvedPlan, light: Light, { table }: RenderOptions): Scene {
  const bare = sceneOfPlan(solved, light, false, rastersOf(solved.plan));
  if (!table) return bare;
  const { down, onRing } = table.rest;
  const top = { material: table.material, radiusMm: solved.plan.piece.diameterMm / 2 };
  return putOnTable(bare, scale(down, -1), -supportOf(cutBall(solved.planes), down), top, onRing);
}

/**
 * The camera of a picture, looking from a unit direction; up is the table's normal when there is one.
 * @param option the one that says where from, for the words when nothing of the table would be seen
 */
export function cameraFor(
  scene: Scene,
  towards: Vec3,
  radiusMm: number,
  { distanceMm, fieldDeg, fNumber }: RenderOptions,
  option: string,
): Camera {
  const distance = distanceMm / radiusMm;
  const camera = cameraTowards(towards, distance, fieldDeg, scene.tabletop?.up);
  if (scene.tabletop) mustSeeTable(camera, scene.tabletop, option);
  return fNumber === null ? camera : { ...camera, lens: lensOf(fNumber, distance, fieldDeg, radiusMm) };
}

export const settingsOf = ({
  size,
  samples,
  seed,
  dispersion,
  bounces,
  transparent,
}: RenderOptions): PictureSettings => ({ size, samples, seed, dispersion, bounces, transparent });

/** Outward normals of a plan's facets by id, for a piece that is to rest on one. */
export const normalsOf = (solved: SolvedPlan) => new Map(solved.facets.map(({ id, frame }) => [id, frame.n]));
