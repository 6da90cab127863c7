/** How a viewport asks for a new picture of the piece. Asking twice before it is drawn draws once. */

export interface Frames {
  /** Asks for one frame. Before the canvas is ready nothing happens: its first frame draws everything. */
  readonly request: () => void;
  /** The canvas says how frames are drawn. */
  readonly drawBy: (invalidate: () => void) => void;
}

/** Rendering on demand: a scheduler of frames, as `invalidate` is. */
export function createFrames(): Frames {
  let draw = (): void => {};
  return {
    request: () => draw(),
    drawBy: (invalidate) => {
      draw = invalidate;
    },
  };
}

/** Fulfilled once what stands on the page now has been painted. */
export const afterPaint = (): Promise<void> =>
  new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
