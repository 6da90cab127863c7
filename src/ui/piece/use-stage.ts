/** Puts the canvas into a box and keeps it the box's size. */
import { type RefObject, useEffect, useState } from "react";
import { holdStill, wantsStillness } from "./eye.ts";
import { afterPaint, requestFrame } from "./frames.ts";
import type { Stage } from "./stage.ts";

/** `waiting`: the piece is a drawing. `coming`: the canvas comes up over it. `ready`: the canvas alone. */
export type StageState =
  | { readonly kind: "waiting" }
  | { readonly kind: "coming" }
  | { readonly kind: "ready"; readonly stage: Stage }
  | { readonly kind: "failed"; readonly again: () => void };

const APPEAR_MS = 140;

let settle = () => {};
/** Fulfilled once the piece stands as glass, or it is known that it can't: what is in no hurry waits for it. */
export const stageSettled = new Promise<void>((resolve) => {
  settle = resolve;
});

function keepSize(stage: Stage, host: HTMLElement): () => void {
  const sizes = new ResizeObserver(([entry]) => {
    const { width, height } = entry.contentRect;
    // A hidden box has no size: the picture keeps the one that it had, and nothing turns unseen.
    if (width === 0 || height === 0) {
      holdStill();
      return;
    }
    stage.resize(width, height);
    requestFrame();
  });
  sizes.observe(host);
  return () => sizes.disconnect();
}

/** Lets the first picture come up softly. */
const appear = (canvas: HTMLCanvasElement): Promise<unknown> =>
  canvas.animate([{ opacity: 0 }, { opacity: 1 }], wantsStillness() ? 0 : APPEAR_MS).finished;

/** Words first, then the small pictures, then the stage. Its chunk is fetched beside the page's own. */
async function stageAfterPaint(): Promise<Stage> {
  await afterPaint();
  await afterPaint();
  const { theStage } = await import("./stage.ts");
  return theStage();
}

export function useStage(host: RefObject<HTMLElement | null>): StageState {
  const [attempt, setAttempt] = useState(0);
  const [state, setState] = useState<StageState>({ kind: "waiting" });

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new attempt is what this effect is for
  useEffect(() => {
    const box = host.current;
    if (!box) return;
    let isHere = true;
    let leave = () => {};
    const again = () => setAttempt((count) => count + 1);
    stageAfterPaint().then(
      (stage) => {
        if (!isHere) return;
        box.prepend(stage.canvas);
        const stopFitting = keepSize(stage, box);
        const lost = (): StageState => ({
          kind: "failed",
          again: () => stage.renderer.forceContextRestore(),
        });
        const onLost = (event: Event) => {
          event.preventDefault();
          setState(lost());
        };
        const onBack = () => {
          setState({ kind: "ready", stage });
          requestFrame();
        };
        stage.canvas.addEventListener("webglcontextlost", onLost);
        stage.canvas.addEventListener("webglcontextrestored", onBack);
        leave = () => {
          stopFitting();
          stage.canvas.removeEventListener("webglcontextlost", onLost);
          stage.canvas.removeEventListener("webglcontextrestored", onBack);
          stage.canvas.remove();
        };
        // Lost before anyone listened, as while another place was open.
        if (stage.renderer.getContext().isContextLost()) {
          setState(lost());
          return;
        }
        setState({ kind: "coming" });
        const there = (now: StageState): StageState =>
          now.kind === "coming" ? { kind: "ready", stage } : now;
        appear(stage.canvas).then(() => isHere && setState(there));
      },
      () => isHere && setState({ kind: "failed", again }),
    );
    return () => {
      isHere = false;
      leave();
    };
  }, [host, attempt]);
  const isSettled = state.kind === "ready" || state.kind === "failed";
  useEffect(() => {
    if (isSettled) settle();
  }, [isSettled]);
  return state;
}
