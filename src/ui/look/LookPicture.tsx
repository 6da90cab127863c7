/** The traced piece, laid over the drawn one: the hand that turns the piece is the drawn one's, this only shows. */
import { useEffect, useRef } from "react";
import type { Orbit } from "../piece/camera.ts";
import { usePalette } from "../piece/use-palette.ts";
import { useViewport } from "../piece/viewport.ts";
import { useSettledPlan } from "../settled.ts";
import { perStudio, useStudioStore } from "../studio.ts";
import { DividerLine } from "./DividerLine.tsx";
import { LookStatus } from "./LookStatus.tsx";
import { packedScenes } from "./look-scene.ts";
import { lookOf, useLook } from "./look-settings.ts";
import { ON_TABLE, restood, standOf } from "./lying.ts";
import { TierMarks } from "./TierMarks.tsx";
import { throughLens, tracedPicture, useTracing, viewOf } from "./traced.ts";
import { useLookedAt } from "./use-looked-at.ts";
import { useTurntable } from "./use-turntable.ts";
import "./look.css";

/** More device pixels than this a side cost time and show nothing. */
const MOST_PIXELS = 2048;

export default function LookPicture() {
  const host = useRef<HTMLDivElement>(null);
  const state = useTracing();
  useCanvasIn(host);
  useStand();
  useScenes();
  useDisplay();
  useTurntable();
  // another plan's picture has none of its tiers
  const isOfBench = useLookedAt() === useSettledPlan();
  const shows = state !== null && (state.phase === "clean" || state.phase === "tracing") && state.samples > 0;
  // Counts anew from the moment of a change, when the picture from before still shows.
  const isOfNow = state !== null && state.firstPictureMs !== null && !state.isCoarse && !state.isBehind;
  const samples = isOfNow ? state.samples : 0;
  return (
    <div className="traced" data-phase={state?.phase} data-shows={shows || undefined} data-samples={samples}>
      <div ref={host} className="traced-canvas" aria-hidden="true" />
      {shows && isOfBench ? <TierMarks /> : null}
      {shows ? <DividerLine /> : null}
      <LookStatus />
    </div>
  );
}

/** The ball's radius, mm, as it is at any time: a lens blurs small things more. */
function useRadius(): React.RefObject<number> {
  const { piece } = useLookedAt();
  const radius = useRef(piece.diameterMm / 2);
  useEffect(() => {
    radius.current = piece.diameterMm / 2;
  }, [piece]);
  return radius;
}

/** Puts the canvas into its place, sized as the place is, looking from where the eye stands. */
function useCanvasIn(host: React.RefObject<HTMLDivElement | null>) {
  const studio = useStudioStore();
  const { eye } = useViewport();
  const radius = useRadius();
  useEffect(() => {
    const place = host.current;
    if (!place) return;
    const { canvas, renderer } = tracedPicture(studio);
    place.append(canvas);
    renderer.setActive(true);

    const look = (isMoving: boolean) => {
      const { against, layout } = lookOf(studio).getState();
      const halves = against !== "nothing" && layout === "side" ? 2 : 1;
      const aspect = place.clientWidth / halves / Math.max(1, place.clientHeight);
      const { view } = eye.getState();
      const { fNumber } = lookOf(studio).getState();
      renderer.setView(
        throughLens(viewOf(view, aspect), view, { fNumber, radiusMm: radius.current }),
        isMoving,
      );
    };
    const measure = () => {
      const ratio = Math.min(
        window.devicePixelRatio,
        MOST_PIXELS / Math.max(1, place.clientWidth, place.clientHeight),
      );
      renderer.resize(place.clientWidth * ratio, place.clientHeight * ratio);
      look(false);
    };
    const sizes = new ResizeObserver(measure);
    sizes.observe(place);
    const stopEye = eye.subscribe(() => look(true));
    const stopLayout = lookOf(studio).subscribe((now, before) => {
      const reshapes = now.layout !== before.layout || now.against !== before.against;
      if (reshapes || now.fNumber !== before.fNumber) look(false);
    });
    return () => {
      sizes.disconnect();
      stopEye();
      stopLayout();
      renderer.setActive(false);
      canvas.remove();
    };
  }, [host, radius, eye, studio]);
}

/** Traces what plan and settings say, anew at every change of either. */
function useScenes() {
  const studio = useStudioStore();
  const plan = useSettledPlan();
  const light = useLook((settings) => settings.light);
  const lightTurnDeg = useLook((settings) => settings.lightTurnDeg);
  const picture = useLook((settings) => settings.picture);
  const finish = useLook((settings) => settings.finish);
  const isWet = useLook((settings) => settings.isWet);
  const glass = useLook((settings) => settings.glass);
  const showInside = useLook((settings) => settings.showInside);
  const hasDispersion = useLook((settings) => settings.hasDispersion);
  const behind = useLook((settings) => settings.behind);
  const table = useLook((settings) => settings.table);
  const rest = useLook((settings) => settings.rest);
  const against = useLook((settings) => settings.against);
  const own = useLook((settings) => settings.own);
  const other = useLook((settings) => settings.other);
  const otherLook = useLook((settings) => settings.otherLook);
  useEffect(() => {
    const settings = {
      light,
      lightTurnDeg,
      picture,
      finish,
      isWet,
      glass,
      showInside,
      hasDispersion,
      behind,
      table,
      rest,
    };
    tracedPicture(studio).renderer.setScenes(
      packedScenes(plan, settings, { against, own, other, otherLook }),
    );
  }, [
    plan,
    light,
    lightTurnDeg,
    picture,
    finish,
    isWet,
    glass,
    showInside,
    hasDispersion,
    behind,
    table,
    rest,
    against,
    own,
    other,
    otherLook,
    studio,
  ]);
}

/** How the piece was last seen on the table that it lies on. */
const lastOnTableOf = perStudio((): { view: Orbit } => ({ view: ON_TABLE }));

/** The eye goes round the table that the piece lies on; elsewhere the piece is in the hand again. */
function useStand() {
  const { eye } = useViewport();
  const last = lastOnTableOf(useStudioStore());
  const plan = useLookedAt();
  const table = useLook((settings) => settings.table);
  const rest = useLook((settings) => settings.rest);
  const stand = standOf(plan, { table, rest });
  useEffect(() => {
    if (!stand) return;
    eye.putViews((view) => restood(view, stand));
    eye.setView({ ...last.view, stand });
    return () => {
      last.view = eye.getState().view;
      eye.putViews();
      eye.setView(restood(last.view, undefined));
    };
  }, [stand, eye, last]);
}

function useDisplay() {
  const studio = useStudioStore();
  const { "ground-lit": ground } = usePalette();
  const exposure = useLook((settings) => settings.exposure);
  const divider = useLook((settings) => (settings.against === "nothing" ? 1 : settings.divider));
  const sideBySide = useLook((settings) => settings.against !== "nothing" && settings.layout === "side");
  useEffect(() => {
    const page = [ground.r, ground.g, ground.b] as const;
    tracedPicture(studio).renderer.setDisplay({ exposure, divider, sideBySide, page });
  }, [exposure, divider, sideBySide, ground, studio]);
}
