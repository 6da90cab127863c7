/** The one way to ask for a new picture of the piece. Asking twice before it is drawn draws once. */

let draw: () => void = () => {};

/** Asks for one frame. Before the canvas is ready nothing happens: its first frame draws everything. */
export const requestFrame = (): void => draw();

/** The canvas says how frames are drawn. */
export const drawFramesBy = (invalidate: () => void): void => {
  draw = invalidate;
};

/** Fulfilled once what stands on the page now has been painted. */
export const afterPaint = (): Promise<void> =>
  new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
