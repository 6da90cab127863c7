/** Puts the canvas into a box and keeps it the box's size. */
import { type RefObject, useEffect, useState } from "react";
import type { PieceCanvas } from "./canvas.ts";
import { afterPaint } from "./frames.ts";
import { useViewport, type Viewport } from "./viewport.ts";

/** `waiting`: the piece is a drawing. `coming`: the canvas comes up over it. `ready`: the canvas alone. */
export type CanvasState =
  | { readonly kind: "waiting" }
  | { readonly kind: "coming" }
  | { readonly kind: "ready"; readonly pieceCanvas: PieceCanvas }
  | { readonly kind: "failed"; readonly again: () => void };

const APPEAR_MS = 140;

let settle = () => {};
/** Fulfilled once the piece stands as glass, or it is known that it can't: what is in no hurry waits for it. */
export const pieceSettled = new Promise<void>((resolve) => {
  settle = resolve;
});

function keepSize({ eye, frames }: Viewport, pieceCanvas: PieceCanvas, host: HTMLElement): () => void {
  const sizes = new ResizeObserver(([entry]) => {
    const { width, height } = entry.contentRect;
    // A hidden box has no size: the picture keeps the one that it had, and nothing turns unseen.
    if (width === 0 || height === 0) {
      eye.holdStill();
      return;
    }
    pieceCanvas.resize(width, height);
    frames.request();
  });
  sizes.observe(host);
  return () => sizes.disconnect();
}

/** Lets the first picture come up softly. */
const appear = (canvas: HTMLCanvasElement, isStill: boolean): Promise<unknown> =>
  canvas.animate([{ opacity: 0 }, { opacity: 1 }], isStill ? 0 : APPEAR_MS).finished;

/** Words first, then the small pictures, then the canvas. Its chunk is fetched beside the page's own. */
async function canvasAfterPaint(viewport: Viewport): Promise<PieceCanvas> {
  await afterPaint();
  await afterPaint();
  const { canvasOf } = await import("./canvas.ts");
  return canvasOf(viewport);
}

export function useCanvas(host: RefObject<HTMLElement | null>): CanvasState {
  const viewport = useViewport();
  const [attempt, setAttempt] = useState(0);
  const [state, setState] = useState<CanvasState>({ kind: "waiting" });

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new attempt is what this effect is for
  useEffect(() => {
    const box = host.current;
    if (!box) return;
    let isHere = true;
    let leave = () => {};
    const again = () => setAttempt((count) => count + 1);
    canvasAfterPaint(viewport).then(
      (pieceCanvas) => {
        if (!isHere) return;
        box.prepend(pieceCanvas.canvas);
        const stopFitting = keepSize(viewport, pieceCanvas, box);
        const lost = (): CanvasState => ({
          kind: "failed",
          again: () => pieceCanvas.renderer.forceContextRestore(),
        });
        const onLost = (event: Event) => {
          event.preventDefault();
          setState(lost());
        };
        const onBack = () => {
          setState({ kind: "ready", pieceCanvas });
          viewport.frames.request();
        };
        pieceCanvas.canvas.addEventListener("webglcontextlost", onLost);
        pieceCanvas.canvas.addEventListener("webglcontextrestored", onBack);
        leave = () => {
          stopFitting();
          pieceCanvas.canvas.removeEventListener("webglcontextlost", onLost);
          pieceCanvas.canvas.removeEventListener("webglcontextrestored", onBack);
          pieceCanvas.canvas.remove();
        };
        // Lost before anyone listened, as while another place was open.
        if (pieceCanvas.renderer.getContext().isContextLost()) {
          setState(lost());
          return;
        }
        setState({ kind: "coming" });
        const there = (now: CanvasState): CanvasState =>
          now.kind === "coming" ? { kind: "ready", pieceCanvas } : now;
        appear(pieceCanvas.canvas, viewport.eye.wantsStillness()).then(() => isHere && setState(there));
      },
      () => isHere && setState({ kind: "failed", again }),
    );
    return () => {
      isHere = false;
      leave();
    };
  }, [host, viewport, attempt]);
  const isSettled = state.kind === "ready" || state.kind === "failed";
  useEffect(() => {
    if (isSettled) settle();
  }, [isSettled]);
  return state;
}
