/** Puts the canvas into a box and keeps it the box's size. */
import { type RefObject, useEffect, useState } from "react";
import { requestFrame } from "./frames.ts";
import type { Stage } from "./stage.ts";

export type StageState =
  | { readonly kind: "waiting" }
  | { readonly kind: "ready"; readonly stage: Stage }
  | { readonly kind: "failed"; readonly again: () => void };

function keepSize(stage: Stage, host: HTMLElement): () => void {
  const sizes = new ResizeObserver(([entry]) => {
    const { width, height } = entry.contentRect;
    // A hidden box has no size: the picture keeps the one that it had.
    if (width === 0 || height === 0) return;
    stage.resize(width, height);
    requestFrame();
  });
  sizes.observe(host);
  return () => sizes.disconnect();
}

/** Words first: the stage is made once the page has been painted. Its chunk is fetched beside the page's own. */
async function stageAfterPaint(): Promise<Stage> {
  await new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
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
        const onLost = (event: Event) => {
          event.preventDefault();
          setState({ kind: "failed", again: () => stage.renderer.forceContextRestore() });
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
        setState({ kind: "ready", stage });
      },
      () => isHere && setState({ kind: "failed", again }),
    );
    return () => {
      isHere = false;
      leave();
    };
  }, [host, attempt]);
  return state;
}
