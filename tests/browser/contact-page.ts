/** Traces pictures of the contact sheet as the app traces those that it saves. */
import { addScaled, normalize, scale } from "../../src/core/geometry/vec.ts";
import { cameraTowards, lensOf } from "../../src/core/optics/camera.ts";
import { checkDevice } from "../../src/render/device-check.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../src/render/pack-scene.ts";
import { traceStill } from "../../src/render/still.ts";
import { TraceEngine } from "../../src/render/trace-engine.ts";
import type { View } from "../../src/render/view.ts";
import { CONTACT_PICTURES, sceneOfPicture, towardsOf } from "./contact-pictures.ts";

const [DISTANCE, F_NUMBER] = [10, 8];

let engine: Promise<TraceEngine> | null = null;

function openEngine(): Promise<TraceEngine> {
  const gl = document.createElement("canvas").getContext("webgl2");
  const check = checkDevice(gl);
  if (!gl || !check.pass) throw new Error(`${check.code}: ${check.detail}`);
  return TraceEngine.create(gl);
}

/** Picture `k` as a data address. */
async function contactPicture(k: number, size: number, samples: number): Promise<string> {
  engine ??= openEngine();
  const picture = CONTACT_PICTURES[k];
  const scene = sceneOfPicture(picture);
  const fieldDeg = (2 * Math.atan(picture.frame / DISTANCE) * 180) / Math.PI;
  const camera = cameraTowards(towardsOf(picture), DISTANCE, fieldDeg, scene.stage?.up);
  const [right, up] = [normalize(camera.right), normalize(camera.up)];
  const [x, y] = picture.aside;
  const view: View = {
    eye: addScaled(addScaled(camera.at, right, -x), up, -y),
    right,
    up,
    back: scale(camera.forward, -1),
    fieldDeg,
    lens: lensOf(F_NUMBER, DISTANCE, fieldDeg, picture.plan.piece.diameterMm / 2),
  };
  const packed = packScene(scene, { ...DEFAULT_OPTIONS, maxMeetings: STILL_MEETINGS, behind: "light" });
  const pixels = await traceStill(await engine, packed, view, {
    width: size,
    height: size,
    samples,
    exposure: picture.exposure,
    signal: new AbortController().signal,
  });
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [size, size];
  canvas.getContext("2d")?.putImageData(pixels, 0, 0);
  return canvas.toDataURL("image/png");
}

Object.assign(window, { contactPicture });
