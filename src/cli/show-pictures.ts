/** Pictures of a piece all round, for a customer's page where light can't be traced, and the finer one that it opens with. */
import { encode } from "jpeg-js";
import { addScaled, normalize, type Vec3 } from "../core/geometry/vec.ts";
import { type Camera, cameraTowards, turnAbout } from "../core/optics/camera.ts";
import { meteredGain } from "../core/optics/metering.ts";
import type { Scene } from "../core/optics/scene.ts";
import { toBytes } from "../core/optics/tone-map.ts";
import { onGround } from "../core/show/on-ground.ts";
import { SEEN_ON_TABLE } from "../core/show/show-piece.ts";
import { renderPicture } from "./render-threads.ts";

/** The first one has this many times the pixels across, and the samples. */
const FINER = 2;
/** Paths a pixel. */
const SAMPLES = 6;
/** As in the page's style and script: its ground by day, the height of the eye, the field. */
const GROUND = [0xf2, 0xef, 0xe9] as const;
const LEAN_DEG = 15;
const [DISTANCE, FIELD_DEG] = [10, 13.8];
const UP: Vec3 = [0, 1, 0];
const FRONT: Vec3 = [0, 0, 1];
/** As the page's script looks: on a table with room for the shadow, and from so much higher that the piece lies below the middle. */
function cameraOf({ tabletop }: Scene, towards: Vec3): Camera {
  if (!tabletop) return cameraTowards(towards, DISTANCE, FIELD_DEG);
  const { room, belowMiddle } = SEEN_ON_TABLE;
  const field = (360 / Math.PI) * Math.atan(room * Math.tan((FIELD_DEG * Math.PI) / 360));
  const camera = cameraTowards(towards, DISTANCE, field, tabletop.up);
  return { ...camera, at: addScaled(camera.at, normalize(camera.up), belowMiddle) };
}

/** Red, green, blue to four bytes a pixel. */
const opaque = (bytes: Uint8Array): Uint8Array =>
  Uint8Array.from({ length: (4 * bytes.length) / 3 }, (_, i) =>
    i % 4 === 3 ? 255 : bytes[3 * (i >> 2) + (i % 4)],
  );

interface Traced {
  readonly size: number;
  readonly rgba: Uint8Array;
}

async function traced(scene: Scene, towards: Vec3, size: number, samples: number): Promise<Traced> {
  const camera = cameraOf(scene, towards);
  // past a table there is always something; in the hand glass shows the page through, as the traced piece does
  const transparent = scene.tabletop === null;
  const settings = { size, samples, seed: 1, dispersion: false, bounces: null, transparent };
  const { rows } = await renderPicture({ scene, camera, settings }, () => {});
  const gain = meteredGain(scene);
  return { size, rgba: transparent ? onGround(rows, gain, GROUND) : opaque(toBytes(rows, gain)) };
}

const addressOf = ({ size, rgba }: Traced, quality: number): string =>
  `data:image/jpeg;base64,${Buffer.from(encode({ width: size, height: size, data: rgba }, quality).data).toString("base64")}`;

export interface ShowPictures {
  readonly first: string;
  readonly allRound: readonly string[];
}

export interface AllRound {
  readonly count: number;
  /** Pixels across. */
  readonly size: number;
}

/**
 * @param onDone gets how many are traced, of how many
 * @returns their addresses at a quality of JPEG, per cent
 */
export async function showPictures(
  scene: Scene,
  { count, size }: AllRound,
  onDone: (done: number, of: number) => void,
): Promise<(quality: number) => ShowPictures> {
  const { tabletop } = scene;
  const views = turnAbout(tabletop?.up ?? UP, tabletop?.along ?? FRONT, LEAN_DEG, count);
  const pictures: Traced[] = [];
  const first = await traced(scene, views[0], FINER * size, FINER * SAMPLES);
  onDone(1, count + 1);
  for (const [k, view] of views.entries()) {
    pictures.push(await traced(scene, view, size, SAMPLES));
    onDone(k + 2, count + 1);
  }
  return (quality) => ({
    first: addressOf(first, quality),
    allRound: pictures.map((picture) => addressOf(picture, quality)),
  });
}
