/** The piece, large: the canvas, what one does with it, and its words. */
import { lazy, Suspense, useEffect, useId, useMemo, useRef } from "react";
import { findingInWords } from "../../words/findings.ts";
import { useView, view } from "../app/view.ts";
import { Button } from "../controls/Button.tsx";
import { findingWords } from "../messages/findings.ts";
import { planWords } from "../messages/plan.ts";
import { shellWords } from "../messages/shell.ts";
import { useLanguage, useWords } from "../messages/words.tsx";
import { useSettledPlan } from "../settled.ts";
import { useFormat } from "../use-format.ts";
import { useGlassName } from "../use-glass-name.ts";
import { useSay } from "../use-say.ts";
import { usePlan, useReport } from "../use-studio.ts";
import type { LookFrom } from "./camera.ts";
import { lookFrom, openingTurn } from "./eye.ts";
import { FacetLine } from "./FacetLine.tsx";
import { GapLabels } from "./GapLabels.tsx";
import { pieceKey } from "./keys.ts";
import { PieceDrawing } from "./PieceDrawing.tsx";
import { spokenSummary } from "./spoken.ts";
import { type Grip, useHand } from "./use-hand.ts";
import { useStage } from "./use-stage.ts";
import "./piece.css";

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

function Spoken({ id }: { id: string }) {
  const words = useWords(planWords);
  const inWords = findingWords[useLanguage()];
  const say = useSay();
  const format = useFormat();
  const plan = useSettledPlan();
  const report = useReport();
  const glass = useGlassName();
  const summary = useMemo(
    () =>
      spokenSummary(plan, report, glass, words, format, (finding) => findingInWords(finding, inWords, say)),
    [plan, report, glass, words, format, inWords, say],
  );
  return (
    <p className="unseen" id={id}>
      {summary} {words.pictureKeys}
    </p>
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
      <Spoken id={id} />
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
