/**
 * The hold on a tier in one picture (a drag gesture with pointer capture, or a run of key presses): what is held, by which pointer, and which drag
 * comes of it. A press that never moves is no drag; whatever ends the hold ends it once.
 */
import type { KeyboardEvent, PointerEvent } from "react";
import type { Tier } from "../../../core/plan/document.ts";
import type { Pick } from "../../../state/store.ts";
import type { Viewport } from "../../piece/viewport.ts";
import { addTier, dragHostOf, turnTo } from "./drag-host.ts";
import type { DragValue, Modifiers, Resting } from "./drag-maths.ts";
import { nextSnap, stepped } from "./key-steps.ts";
import { beginFreshDrag, beginTierDrag, type TierDrag } from "./tier-drag.ts";

export type ScreenPoint = readonly [number, number];

/** What movements mean in one picture; places are in pixels of that picture. */
export interface DragPicture {
  /** Which value a first movement means, null before it is a drag. */
  readonly meant: (tierId: string, from: ScreenPoint, to: ScreenPoint) => DragValue | null;
  /** How far a movement takes a value, in degrees or mm. */
  readonly delta: (value: DragValue, tierId: string, from: ScreenPoint, to: ScreenPoint) => number;
  /** How near a snap catches, in degrees or mm. */
  readonly reach: (value: DragValue, tierId: string, at: ScreenPoint) => number;
}

/** A drag as it is seen beside the pointer. */
export interface LiveDrag {
  readonly tierId: string;
  readonly value: DragValue;
  readonly resting: Resting;
  /** The pointer in the picture's pixels, null for keys. */
  readonly at: ScreenPoint | null;
}

/** What the hand takes: a tier, a facet of one, or a tier that comes into being by the drag. */
interface Taken extends Partial<Pick> {
  readonly tierId: string;
  readonly fresh?: Tier;
}

interface Held {
  readonly pick: Taken;
  readonly pointer: number;
  last: ScreenPoint;
  drag: TierDrag | null;
}

export interface TierHold {
  /** Takes hold of a tier (or a facet of it) on pointerdown; the picture's root then holds the pointer. */
  readonly grab: (event: PointerEvent<Element>, picture: Element, pick: Taken) => void;
  /** For the picture's root element. */
  readonly surface: {
    readonly onPointerMove: (event: PointerEvent<Element>) => void;
    readonly onPointerUp: () => void;
    readonly onPointerCancel: () => void;
    readonly onLostPointerCapture: () => void;
  };
  /** One step of a value by key; further steps until the key is let go are the same undo step. */
  readonly step: (event: KeyboardEvent, tierId: string, value: DragValue, steps: number) => void;
  /** On to the next value at which something meets, up (1) or down (-1). */
  readonly toNextMeeting: (tierId: string, value: DragValue, direction: 1 | -1) => void;
  readonly onKeyUp: () => void;
  /** Whether something has been moved that is not yet at its end. */
  readonly isDragging: () => boolean;
  /** Ends whatever is held: as it is, or as it was before. */
  readonly finish: (how: "end" | "cancel") => void;
}

const placeIn = (event: PointerEvent<Element>, picture: Element): ScreenPoint => {
  const box = picture.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
};

/** Time between two frames that searching for snaps may take, ms. */
const THINKING_MS = 4;

/** Looks for snaps while the hand rests, until told to stop. */
function thinkBetweenFrames(drag: TierDrag): () => void {
  let request = 0;
  const work = () => {
    const until = performance.now() + THINKING_MS;
    while (performance.now() < until) if (!drag.think()) return;
    request = requestAnimationFrame(work);
  };
  request = requestAnimationFrame(work);
  return () => cancelAnimationFrame(request);
}

/**
 * @param meaning what movements mean now
 * @param show told how the drag stands, null once nothing is held
 */
export function createHold(
  viewport: Viewport,
  meaning: () => DragPicture,
  show: (live: LiveDrag | null) => void,
): TierHold {
  const { studio } = viewport;
  const host = dragHostOf(studio);
  let held: Held | null = null;
  let keyed: TierDrag | null = null;
  let stopThinking = () => {};

  /** Snapping is a preference; Alt turns it the other way round while held. */
  const modifiersOf = (event: PointerEvent): Modifiers => ({
    free: studio.getState().preferences.snapping === event.altKey,
    fine: event.shiftKey,
  });

  function begin({ tierId, fresh }: Taken, value: DragValue): TierDrag {
    const drag = fresh ? beginFreshDrag(host, fresh, value) : beginTierDrag(host, tierId, value);
    if (fresh) studio.getState().select({ tierId });
    stopThinking = thinkBetweenFrames(drag);
    return drag;
  }

  function finish(how: "end" | "cancel"): void {
    stopThinking();
    const drag = held?.drag ?? keyed;
    held = null;
    keyed = null;
    drag?.[how]();
    show(null);
  }

  function grab(event: PointerEvent<Element>, picture: Element, pick: Taken): void {
    if (event.button !== 0 || held) return;
    if (!pick.fresh) studio.getState().select(pick);
    picture.setPointerCapture(event.pointerId);
    held = { pick, pointer: event.pointerId, last: placeIn(event, picture), drag: null };
  }

  function onPointerMove(event: PointerEvent<Element>): void {
    if (!held || held.pointer !== event.pointerId) return;
    const { tierId } = held.pick;
    const { meant, delta, reach } = meaning();
    const at = placeIn(event, event.currentTarget);
    if (!held.drag) {
      const value = meant(tierId, held.last, at);
      if (value === null) return;
      held.drag = begin(held.pick, value);
    }
    const { drag, last } = held;
    const { value } = drag;
    held.last = at;
    const by = delta(value, tierId, last, at);
    show({ tierId, value, resting: drag.by(by, reach(value, tierId, at), modifiersOf(event)), at });
  }

  /** A hand that was taken away by Escape has nothing left to let go; one that never moved has pressed. */
  function release(how: "end" | "cancel"): void {
    if (!held) return;
    const { pick, drag } = held;
    finish(how);
    if (!pick.fresh || how === "cancel") return;
    if (drag) turnTo(viewport, pick.fresh);
    else addTier(viewport, pick.fresh);
  }

  function step(event: KeyboardEvent, tierId: string, value: DragValue, steps: number): void {
    if (keyed && (keyed.tierId !== tierId || keyed.value !== value)) finish("end");
    keyed ??= begin({ tierId }, value);
    const resting = keyed.to(stepped(host, keyed, steps, { free: true, fine: event.shiftKey }));
    show({ tierId, value, resting, at: null });
  }

  function toNextMeeting(tierId: string, value: DragValue, direction: 1 | -1): void {
    finish("end");
    const drag = beginTierDrag(host, tierId, value);
    const snap = nextSnap(host, drag, direction);
    if (!snap) {
      drag.cancel();
      return;
    }
    const resting = drag.to({ value: snap.value, snap });
    drag.end();
    show({ tierId, value, resting, at: null });
  }

  return {
    grab,
    surface: {
      onPointerMove,
      onPointerUp: () => release("end"),
      onPointerCancel: () => release("cancel"),
      onLostPointerCapture: () => release("end"),
    },
    step,
    toNextMeeting,
    onKeyUp: () => {
      if (keyed) finish("end");
    },
    isDragging: () => Boolean(held?.drag ?? keyed),
    finish,
  };
}
