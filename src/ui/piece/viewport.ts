/**
 * One picture of the piece: from where it is seen, how it asks for frames, and the words that it carries along. The page has
 * one; a component takes whichever stands around it, so that another picture, or a test, can have its own.
 */
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { Orbit } from "./camera.ts";
import { createEye, type Eye } from "./eye.ts";
import { createFrames, type Frames } from "./frames.ts";
import { createLabels, type Labels } from "./labels.ts";

export interface Viewport {
  readonly eye: Eye;
  readonly frames: Frames;
  readonly labels: Labels;
}

const createViewport = (): Viewport => ({
  eye: createEye(),
  frames: createFrames(),
  labels: createLabels(),
});

/** The page's own. For what happens outside of components. */
export const pageViewport = createViewport();

export const ViewportContext = createContext(pageViewport);
export const useViewport = (): Viewport => useContext(ViewportContext);

export function useEye<T>(pick: (view: Orbit) => T): T {
  return useStore(useViewport().eye, (state) => pick(state.view));
}
