/**
 * The frame: a line at the top, the pictures of the piece, and beside or below them the place one is in.
 * The pictures and every place once entered stay mounted, so that selection, camera and scroll are as one left them.
 */
import { Activity, lazy, Suspense, useLayoutEffect, useRef, useState } from "react";
import type { Place } from "../../state/store.ts";
import { shellWords } from "../messages/shell.ts";
import { useWords } from "../messages/words.tsx";
import { pieceSettled } from "../piece/use-canvas.ts";
import { useScreen } from "../shared/screen.ts";
import { useStudio } from "../use-studio.ts";
import { Crashed } from "./Crashed.tsx";
import { CrashGuard } from "./CrashGuard.tsx";
import { FileDrop } from "./FileDrop.tsx";
import { Header } from "./Header.tsx";
import { NoticeLine } from "./NoticeLine.tsx";
import { Pictures } from "./Pictures.tsx";
import { Places } from "./Places.tsx";
import { PLACE_NAMES, PLACES } from "./place-pages.ts";
import "./frame.css";
import "./verdict.css";

const SheetHost = lazy(() => import("./SheetHost.tsx"));
/** Keeping the page for use without a network fetches all of it: that may wait until the piece stands. */
const UpdateLine = lazy(() => pieceSettled.then(() => import("./UpdateLine.tsx")));
// Lists come when the piece stands, before a hand wants one; where that fails they are asked for again at their button.
void pieceSettled
  .then(() =>
    Promise.all([
      import("../controls/ChoiceList.tsx"),
      import("../controls/ActionList.tsx"),
      import("../plan/drag/DragReadout.tsx"),
    ]),
  )
  .catch(() => {});
/** What takes the plan to be solved a second time is asked of a worker, once the piece stands. */
const LossesWatch = lazy(() => pieceSettled.then(() => import("./LossesWatch.tsx")));
const FieldHeld = lazy(() => pieceSettled.then(() => import("./FieldHeld.tsx")));
/** Its room is kept from the start; the words come right after what the page opens on. */
const VerdictLine = lazy(() => import("./VerdictLine.tsx"));
const Guide = lazy(() => import("../help/Guide.tsx"));

/** Sheets bring what they need when the first one is opened. */
function Sheets() {
  const isOpen = useScreen((state) => state.sheet !== null);
  return isOpen ? (
    <Suspense fallback={null}>
      <SheetHost />
    </Suspense>
  ) : null;
}

/** A place that is made when first entered and kept from then on. */
function Kept({ place }: { place: Place }) {
  const isHere = useStudio((state) => state.place === place);
  const [entered, setEntered] = useState(isHere);
  if (isHere && !entered) setEntered(true);
  const words = useWords(shellWords);
  if (!entered) return null;
  const Page = PLACES[place];
  return (
    <Activity mode={isHere ? "visible" : "hidden"}>
      <CrashGuard instead={(again) => <Crashed again={again} />}>
        <Suspense fallback={<p className="waiting">{words.loadingPlace}</p>}>
          <Page />
        </Suspense>
      </CrashGuard>
    </Activity>
  );
}

/** A plan that was opened begins at its beginning. */
function useFromTheTop() {
  const opened = useStudio((state) => state.laid);
  const side = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each plan that is opened
  useLayoutEffect(() => {
    side.current?.scrollTo(0, 0);
  }, [opened]);
  return side;
}

export function Frame() {
  const place = useStudio((state) => state.place);
  const words = useWords(shellWords);
  const side = useFromTheTop();
  return (
    <FileDrop>
      <div className="frame" data-place={place}>
        <a className="skip" href="#place">
          {words.skip}
        </a>
        <Header />
        <Pictures />
        <main ref={side} className="side" id="place" tabIndex={-1}>
          <Suspense fallback={<div className="verdict" />}>
            <VerdictLine />
          </Suspense>
          {PLACE_NAMES.map((name) => (
            <Kept key={name} place={name} />
          ))}
        </main>
        <Places />
        <Suspense fallback={null}>
          <Guide />
        </Suspense>
        <Suspense fallback={null}>
          <LossesWatch />
          <FieldHeld column={side} />
        </Suspense>
        <div className="notices">
          <Suspense fallback={null}>
            <UpdateLine />
          </Suspense>
          <NoticeLine />
        </div>
        <Sheets />
      </div>
    </FileDrop>
  );
}
