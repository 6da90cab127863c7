/**
 * The one canvas of a viewport's life, with its own React root. Layouts take it up and lay it down; it is never made twice,
 * so that the picture, its context and its compiled shaders stay.
 */
import { createRoot, extend, type RootStore } from "@react-three/fiber";
import { createElement, useEffect } from "react";
import { Mesh, PerspectiveCamera, type WebGLRenderer } from "three";
import { StudioProvider } from "../studio-provider.tsx";
import { Scene } from "./Scene.tsx";
import type { Viewport } from "./viewport.ts";

extend({ Mesh });

export interface PieceCanvas {
  readonly canvas: HTMLCanvasElement;
  readonly renderer: WebGLRenderer;
  readonly camera: PerspectiveCamera;
  readonly resize: (width: number, height: number) => void;
}

const SHARPEST = 2;

/** Says when the scene is there with all its parts. */
function Mounted({ onceThere }: { onceThere: () => void }) {
  useEffect(onceThere, [onceThere]);
  return null;
}

/** Nothing is drawn before the shaders are compiled, which goes on beside the page where the device can do that. */
async function makeCanvas(viewport: Viewport): Promise<PieceCanvas> {
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
    createElement(
      StudioProvider,
      { studio: viewport.studio, viewport },
      createElement(Scene),
      createElement(Mounted, { onceThere }),
    ),
  );
  await isThere;
  const { invalidate, scene, setFrameloop, setSize } = store.getState();
  const renderer = store.getState().gl as WebGLRenderer;
  await renderer.compileAsync(scene, camera);
  setFrameloop("demand");
  viewport.frames.drawBy(() => invalidate());
  return { canvas, renderer, camera, resize: setSize };
}

const canvases = new WeakMap<Viewport, Promise<PieceCanvas>>();

/**
 * The canvas of a viewport, made on first asking.
 * @throws (rejects) when the device can't draw; asking again tries again
 */
export function canvasOf(viewport: Viewport): Promise<PieceCanvas> {
  const made =
    canvases.get(viewport) ??
    makeCanvas(viewport).catch((error: unknown) => {
      canvases.delete(viewport);
      throw error;
    });
  canvases.set(viewport, made);
  return made;
}
