/** The piece, large: the canvas, what one does with it, and its words. */
import { lazy, Suspense, useEffect, useId, useRef } from "react";
import { useView, view } from "../app/view.ts";
import { Button } from "../controls/Button.tsx";
import { planWords } from "../messages/plan.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { usePlan } from "../use-studio.ts";
import type { LookFrom } from "./camera.ts";
import { lookFrom, openingTurn } from "./eye.ts";
import { FacetLine } from "./FacetLine.tsx";
import { GapLabels } from "./GapLabels.tsx";
import { pieceKey } from "./keys.ts";
import { PieceDrawing } from "./PieceDrawing.tsx";
import { type Grip, useHand } from "./use-hand.ts";
import { useStage } from "./use-stage.ts";
import "./piece.css";

const Spoken = lazy(() => import("./Spoken.tsx"));
const PieceDrag = lazy(() => import("./PieceDrag.tsx"));

function LookButtons() {
  const words = useWords(planWords);
  const piece = usePlan().piece;
  const showInside = useView((state) => state.showInside);
  const showDop = useView((state) => state.showDop);
  const looks: readonly LookFrom[] = ["front", "side", "back"];
  return (
    <div className="look-from">
      <fieldset aria-label={words.look.group}>
        {looks.map((look) => (
          <Button key={look} onPress={() => lookFrom(look)}>
            {words.look[look]}
          </Button>
        ))}
      </fieldset>
      {piece.inside?.length ? (
        <Button
          aria-pressed={showInside}
          className="show"
          onPress={() => view.setState({ showInside: !showInside })}
        >
          {words.show.inside}
        </Button>
      ) : null}
      {piece.dop ? (
        <Button aria-pressed={showDop} className="show" onPress={() => view.setState({ showDop: !showDop })}>
          {words.show.dop}
        </Button>
      ) : null}
    </div>
  );
}

export function PieceStage() {
  const shell = useWords(shellWords);
  const host = useRef<HTMLDivElement>(null);
  const state = useStage(host);
  const grip = useRef<Grip>(null);
  const hand = useHand(host, grip);
  const id = useId();
  const isReady = state.kind === "ready";
  useEffect(() => {
    if (isReady) openingTurn();
  }, [isReady]);
  return (
    <>
      <div
        ref={host}
        className="stage"
        role="application"
        aria-label={shell.piecePicture}
        aria-describedby={id}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys of its own
        tabIndex={0}
        data-state={state.kind}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return;
          if (pieceKey(event.key, event.shiftKey)) event.preventDefault();
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
        <div className="stage-failed" role="alert">
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
