/** Keeps three's camera, and everything that hangs on the view, where the eye stands. */
import { useFrame, useThree } from "@react-three/fiber";
import { useEffect, useLayoutEffect } from "react";
import type { PerspectiveCamera } from "three";
import { vec3 } from "../../core/geometry/vec.ts";
import { eyeFrame, type Orbit, verticalField } from "./camera.ts";
import { useViewport } from "./viewport.ts";

const NEAR = 0.1;
const FAR = 40;

function placeCamera(camera: PerspectiveCamera, view: Orbit, aspect: number): void {
  const { out, right, up } = eyeFrame(view);
  const shift = (k: 0 | 1 | 2) => -right[k] * view.panX - up[k] * view.panY;
  const at = vec3((k) => out[k] * view.distance + shift(k));
  camera.position.set(...at);
  camera.up.set(...up);
  camera.lookAt(shift(0), shift(1), shift(2));
  camera.fov = verticalField(aspect);
  camera.aspect = aspect;
  camera.near = NEAR;
  camera.far = FAR;
  camera.updateProjectionMatrix();
  camera.updateMatrixWorld();
}

export function CameraRig() {
  const { size, camera, invalidate } = useThree();
  const { eye, labels } = useViewport();
  useEffect(() => eye.subscribe(() => invalidate()), [eye, invalidate]);
  useLayoutEffect(() => {
    if (size.height > 0) invalidate();
  }, [size, invalidate]);
  // Before anything else of the frame, so that all of it sees the same view.
  useFrame(() => {
    if (size.height === 0) return;
    placeCamera(camera as PerspectiveCamera, eye.getState().view, size.width / size.height);
    labels.place(eye.getState().view, size.width, size.height);
  }, -1);
  return null;
}
