/**
 * The one canvas of the page's life, with its own React root. Layouts take it up and lay it down; it is never made twice,
 * so that the picture, its context and its compiled shaders stay.
 */
import { createRoot, extend, type RootStore } from "@react-three/fiber";
import { createElement, Fragment, useEffect } from "react";
import { Mesh, PerspectiveCamera, type WebGLRenderer } from "three";
import { bodyUniforms } from "./Body.tsx";
import { drawFramesBy } from "./frames.ts";
import { Scene } from "./Scene.tsx";

extend({ Mesh });

export interface PieceCanvas {
  readonly canvas: HTMLCanvasElement;
  readonly renderer: WebGLRenderer;
  readonly camera: PerspectiveCamera;
  readonly resize: (width: number, height: number) => void;
}

const SHARPEST = 2;

/** Whether pictures are computed on the processor, where a path followed further costs more than it shows. */
function isSoftware(renderer: WebGLRenderer): boolean {
  const gl = renderer.getContext();
  const info = gl.getExtension("WEBGL_debug_renderer_info");
  return (
    info !== null &&
    /swiftshader|llvmpipe|software/i.test(String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)))
  );
}

/** Says when the scene is there with all its parts. */
function Told({ onceThere }: { onceThere: () => void }) {
  useEffect(onceThere, [onceThere]);
  return null;
}

/** Nothing is drawn before the shaders are compiled, which goes on beside the page where the device can do that. */
async function makeCanvas(): Promise<PieceCanvas> {
  const canvas = document.createElement("canvas");
  const root = createRoot(canvas);
  const camera = new PerspectiveCamera();
  await root.configure({
    frameloop: "never",
    flat: true,
    dpr: [1, SHARPEST],
    gl: { antialias: true, alpha: true, powerPreference: "high-performance" },
    camera: Object.assign(camera, { manual: true }),
    size: { width: 0, height: 0, top: 0, left: 0 },
  });
  let onceThere = () => {};
  const isThere = new Promise<void>((resolve) => {
    onceThere = resolve;
  });
  const store: RootStore = root.render(
    createElement(Fragment, null, createElement(Scene), createElement(Told, { onceThere })),
  );
  await isThere;
  const { invalidate, scene, setFrameloop, setSize } = store.getState();
  const renderer = store.getState().gl as WebGLRenderer;
  if (isSoftware(renderer)) bodyUniforms.segments.value = 1;
  await renderer.compileAsync(scene, camera);
  setFrameloop("demand");
  drawFramesBy(() => invalidate());
  return { canvas, renderer, camera, resize: setSize };
}

let made: Promise<PieceCanvas> | null = null;

/**
 * The canvas, made on first asking.
 * @throws (rejects) when the device can't draw; asking again tries again
 */
export function theCanvas(): Promise<PieceCanvas> {
  made ??= makeCanvas().catch((error: unknown) => {
    made = null;
    throw error;
  });
  return made;
}
