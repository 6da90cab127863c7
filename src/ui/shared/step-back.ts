/** One step back in the browser's history that the app takes itself: for what was closed by hand and must not open again. */

/** How long the browser may take over it before it counts as not taken. */
const STEP_MS = 1000;
let isOn = false;

/** Whether such a step is on its way. */
export const isSteppingBack = (): boolean => isOn;

export const steppedBack = (): void => {
  isOn = false;
};

/** `history.back`: leaves the entry of what was just closed, so that Back does not open it again. */
export function stepBack(): void {
  isOn = true;
  setTimeout(steppedBack, STEP_MS);
  history.back();
}
