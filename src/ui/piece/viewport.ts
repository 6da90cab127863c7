/**
 * One picture of a studio's piece: from where it is seen, how it asks for frames, and the words that it carries along. A component
 * takes whichever stands around it (`studio-provider.tsx`), so that another picture, or a test, can have its own.
 */
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { Studio } from "../studio.ts";
import type { Orbit } from "./camera.ts";
import { createEye, type Eye } from "./eye.ts";
import { createFrames, type Frames } from "./frames.ts";
import { createLabels, type Labels } from "./labels.ts";

export interface Viewport {
  readonly studio: Studio;
  readonly eye: Eye;
  readonly frames: Frames;
  readonly labels: Labels;
}

export const createViewport = (studio: Studio): Viewport => ({
  studio,
  eye: createEye(studio),
  frames: createFrames(),
  labels: createLabels(),
});

export const ViewportContext = createContext<Viewport | null>(null);

export function useViewport(): Viewport {
  const viewport = useContext(ViewportContext);
  if (!viewport) throw new Error("no StudioProvider stands around this component");
  return viewport;
}

export function useEye<T>(pick: (view: Orbit) => T): T {
  return useStore(useViewport().eye, (state) => pick(state.view));
}
