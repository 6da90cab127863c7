/** The piece, large: the canvas, what one does with it, and its words. */
import { lazy, Suspense, useEffect, useId, useRef } from "react";
import { Button } from "../controls/Button.tsx";
import { planWords } from "../messages/plan.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { screenOf, useScreen } from "../shared/screen.ts";
import { useStudioStore } from "../studio.ts";
import { usePlan } from "../use-studio.ts";
import type { LookFrom } from "./camera.ts";
import { FacetLine } from "./FacetLine.tsx";
import { GapLabels } from "./GapLabels.tsx";
import { pieceKey } from "./keys.ts";
import { PieceDrawing } from "./PieceDrawing.tsx";
import { useCanvas } from "./use-canvas.ts";
import { type Grip, useHand } from "./use-hand.ts";
import { useViewport } from "./viewport.ts";
import "./piece.css";

const Spoken = lazy(() => import("./Spoken.tsx"));
const PieceDrag = lazy(() => import("./PieceDrag.tsx"));

function LookButtons() {
  const studio = useStudioStore();
  const { eye } = useViewport();
  const words = useWords(planWords);
  const piece = usePlan().piece;
  const showInside = useScreen((state) => state.showInside);
  const showDop = useScreen((state) => state.showDop);
  const looks: readonly LookFrom[] = ["front", "side", "back"];
  return (
    <div className="look-from">
      <fieldset aria-label={words.look.group}>
        {looks.map((look) => (
          <Button key={look} onPress={() => eye.lookFrom(look)}>
            {words.look[look]}
          </Button>
        ))}
      </fieldset>
      {piece.inside?.length ? (
        <Button
          aria-pressed={showInside}
          className="show"
          onPress={() => screenOf(studio).setState({ showInside: !showInside })}
        >
          {words.show.inside}
        </Button>
      ) : null}
      {piece.dop ? (
        <Button
          aria-pressed={showDop}
          className="show"
          onPress={() => screenOf(studio).setState({ showDop: !showDop })}
        >
          {words.show.dop}
        </Button>
      ) : null}
    </div>
  );
}

export function PiecePicture() {
  const viewport = useViewport();
  const { eye } = viewport;
  const shell = useWords(shellWords);
  const host = useRef<HTMLDivElement>(null);
  const state = useCanvas(host);
  const grip = useRef<Grip>(null);
  const hand = useHand(host, grip);
  const id = useId();
  const isReady = state.kind === "ready";
  useEffect(() => {
    if (isReady) eye.openingTurn();
  }, [isReady, eye]);
  return (
    <>
      <div
        ref={host}
        className="piece-canvas"
        role="application"
        aria-label={shell.piecePicture}
        aria-describedby={id}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys of its own
        tabIndex={0}
        data-state={state.kind}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          if (pieceKey(viewport, event.key, event.shiftKey)) event.preventDefault();
        }}
        onContextMenu={(event) => event.preventDefault()}
        {...hand}
      >
        {state.kind === "ready" ? null : <PieceDrawing />}
        <GapLabels />
        <Suspense fallback={null}>
          <PieceDrag host={host} grip={grip} />
        </Suspense>
      </div>
      <Suspense fallback={<p className="unseen" id={id} />}>
        <Spoken id={id} />
      </Suspense>
      {state.kind === "failed" ? (
        <div className="piece-failed" role="alert">
          <p>{shell.pictureFailed}</p>
          <p className="soft">{shell.pictureFailedWhat}</p>
          <Button look="outlined" onPress={state.again}>
            {shell.pictureAgain}
          </Button>
        </div>
      ) : null}
      <FacetLine />
      <LookButtons />
    </>
  );
}
