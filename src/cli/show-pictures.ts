/** Pictures of a piece all round, for a customer's page where light can't be traced, and the finer one that it opens with. */
import { encode } from "jpeg-js";
import type { Vec3 } from "../core/geometry/vec.ts";
import { cameraTowards, turnAbout } from "../core/optics/camera.ts";
import type { Scene } from "../core/optics/scene.ts";
import { onGround } from "../core/show/on-ground.ts";
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
interface Traced {
  readonly size: number;
  readonly rgba: Uint8Array;
}

async function traced(scene: Scene, towards: Vec3, size: number, samples: number): Promise<Traced> {
  const camera = cameraTowards(towards, DISTANCE, FIELD_DEG);
  const settings = { size, samples, seed: 1, dispersion: false, bounces: null };
  const { rows } = await renderPicture({ scene, camera, settings }, () => {});
  return { size, rgba: onGround(scene, camera, rows, GROUND) };
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
  const views = turnAbout(UP, FRONT, LEAN_DEG, count);
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
