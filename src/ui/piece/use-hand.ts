/**
 * The hand on the piece (pointer gestures, orbit controls): one finger or the main button turns it, two fingers or the other button move it and bring it
 * nearer, a press picks a facet. Mouse hover points at facets.
 */
import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { SKIN } from "../../core/geometry/solid-types.ts";
import { solved } from "../../state/derived.ts";
import { settledPlan } from "../settled.ts";
import { nearer, type Orbit, panned, rayThrough, turned, verticalField } from "./camera.ts";
import { pickFace } from "./pick.ts";
import { useViewport, type Viewport } from "./viewport.ts";

/** A press that moves less than this picks; more is a drag. */
const PRESS_PX = 5;
/** A drag across the shorter side turns the piece this far. */
const TURN_DEG = 200;
const WHEEL_STEP = 0.0012;

interface Finger {
  readonly x: number;
  readonly y: number;
}

/** The facet under a point of the page: its id, "" for skin, null beside the piece. */
export function facetUnder({ studio, eye }: Viewport, box: HTMLElement, { x, y }: Finger): string | null {
  const area = box.getBoundingClientRect();
  const { from, along } = rayThrough(
    eye.getState().view,
    area.width / area.height,
    (2 * (x - area.left)) / area.width - 1,
    1 - (2 * (y - area.top)) / area.height,
  );
  const { planes, facets } = solved(settledPlan(studio));
  const hit = pickFace(planes, from, along);
  if (!hit) return null;
  return hit.face === SKIN ? "" : facets[hit.face].id;
}

/** Radii of the piece that one pixel spans at its centre. */
function radiiPerPixel({ distance }: Orbit, box: HTMLElement): number {
  const { clientWidth: width, clientHeight: height } = box;
  return (2 * distance * Math.tan((verticalField(width / height) * Math.PI) / 360)) / height;
}

const middle = (points: readonly Finger[]): Finger => ({
  x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
  y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
});
const spread = ([a, b]: readonly Finger[]): number => (b ? Math.hypot(a.x - b.x, a.y - b.y) : 0);

/** Something that may take hold of the piece before the hand turns it. Each answers whether it did. */
export interface Grip {
  readonly take: (event: PointerEvent) => boolean;
  readonly move: (event: PointerEvent) => boolean;
  readonly end: () => boolean;
  readonly cancel: () => boolean;
}

export function useHand(host: RefObject<HTMLElement | null>, grip: RefObject<Grip | null>) {
  const viewport = useViewport();
  const { studio, eye } = viewport;
  const fingers = useRef(new Map<number, Finger>());
  const travelled = useRef(0);
  const isMoving = useRef(false);

  // Wheel listeners of React can't keep the page from scrolling.
  useEffect(() => {
    const box = host.current;
    if (!box) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      eye.setView(nearer(eye.getState().view, Math.exp(event.deltaY * WHEEL_STEP)));
    };
    box.addEventListener("wheel", onWheel, { passive: false });
    return () => box.removeEventListener("wheel", onWheel);
  }, [host, eye]);

  const point = (event: PointerEvent): void => {
    if (event.pointerType !== "mouse" || !host.current) return;
    const facetId = facetUnder(viewport, host.current, { x: event.clientX, y: event.clientY });
    const { hover, setHover } = studio.getState();
    if ((facetId || null) !== hover.facetId) setHover(facetId ? { facetId } : {});
  };

  /** One finger turns; two, or the other button, move and bring nearer. */
  const follow = (box: HTMLElement, before: readonly Finger[], after: readonly Finger[]): void => {
    const [from, to] = [middle(before), middle(after)];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    travelled.current += Math.hypot(dx, dy);
    if (travelled.current < PRESS_PX && after.length === 1) return;
    const { view } = eye.getState();
    if (after.length === 1 && !isMoving.current) {
      const perPixel = TURN_DEG / Math.min(box.clientWidth, box.clientHeight);
      eye.setView(turned(view, dx * perPixel, dy * perPixel));
      return;
    }
    const size = radiiPerPixel(view, box);
    const closer = after.length > 1 ? spread(before) / Math.max(1, spread(after)) : 1;
    eye.setView(nearer(panned(view, dx * size, -dy * size), closer));
  };

  const move = (event: PointerEvent): void => {
    const box = host.current;
    if (grip.current?.move(event)) return;
    if (!box || !fingers.current.has(event.pointerId)) {
      point(event);
      return;
    }
    const before = [...fingers.current.values()];
    fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    follow(box, before, [...fingers.current.values()]);
  };

  const release = (event: PointerEvent): void => {
    if (event.type === "pointercancel" ? grip.current?.cancel() : grip.current?.end()) return;
    const wasAlone = fingers.current.size === 1;
    if (!fingers.current.delete(event.pointerId) || !host.current) return;
    if (!wasAlone || travelled.current >= PRESS_PX || event.type === "pointercancel") return;
    const facetId = facetUnder(viewport, host.current, { x: event.clientX, y: event.clientY });
    studio.getState().select(facetId ? { facetId } : {});
  };

  return {
    onPointerDown: (event: PointerEvent) => {
      if (fingers.current.size === 0 && !event.shiftKey && grip.current?.take(event)) return;
      if (fingers.current.size === 0) {
        travelled.current = 0;
        isMoving.current = event.button > 0 || event.shiftKey;
      }
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: move,
    onPointerUp: release,
    onPointerCancel: release,
    onPointerLeave: () => studio.getState().setHover({}),
  };
}
