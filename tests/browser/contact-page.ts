/** Traces pictures of the contact sheet as the app traces those that it saves. */
import { checkDevice } from "../../src/render/device-check.ts";
import { DEFAULT_OPTIONS, packScene, STILL_MEETINGS } from "../../src/render/pack-scene.ts";
import { traceStill } from "../../src/render/still.ts";
import { TraceEngine } from "../../src/render/trace-engine.ts";
import { CONTACT_PICTURES, sceneOfPicture, viewOfPicture } from "./contact-pictures.ts";

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
  const view = viewOfPicture(picture, scene);
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
