/**
 * Dragging a tier in any picture, by mouse, touch, pen or keys: one way of taking hold, one undo step, Escape puts the
 * document back. A picture says what its movements mean; everything else is here.
 */
import {
  type KeyboardEvent as ReactKeyboardEvent,
  type PointerEvent as ReactPointerEvent,
  useCallback,
  useEffect,
  useRef,
  useState,
} from "react";
import type { Plan, Tier } from "../../../core/plan/document.ts";
import { stopsOf } from "../../../core/plan/place.ts";
import { depthOf } from "../../../state/derived.ts";
import type { Pick } from "../../../state/store.ts";
import { pageViewport } from "../../piece/viewport.ts";
import { settledPlan } from "../../settled.ts";
import { hasMany } from "../../settling.ts";
import { studio } from "../../studio.ts";
import { type DragValue, type Modifiers, type Resting, stepOf } from "./drag-maths.ts";
import { beginFreshDrag, beginTierDrag, type DragHost, type TierDrag } from "./tier-drag.ts";

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

/** A depth set by hand is in the plan; any other is that of the settled plan. */
function depthNow(plan: Plan, tierId: string): number {
  const depth = plan.tiers.find((tier) => tier.id === tierId)?.depth;
  return depth?.rule === "depth" ? depth.mm : depthOf(settledPlan(), tierId);
}

const host: DragHost = {
  plan: () => studio.getState().plan,
  depthOf: depthNow,
  // each try would take longer than a frame
  seeksMeets: () => !hasMany(studio.getState().plan),
  beginDrag: (label) => studio.getState().beginDrag(label),
  dragTo: (command) => studio.getState().dragTo(command),
  endDrag: () => studio.getState().endDrag(),
  cancelDrag: () => studio.getState().cancelDrag(),
};

/** Snapping is a preference; Alt turns it the other way round while held. */
const modifiersOf = (event: { altKey: boolean; shiftKey: boolean }): Modifiers => ({
  free: studio.getState().preferences.snapping === event.altKey,
  fine: event.shiftKey,
});

/** A tier that is new on the back is not to be seen from in front: the piece turns to it. */
const turnTo = ({ id, side }: Tier): void => {
  if (side === "back") pageViewport.eye.showFacet(`${id}/1`);
};

/** Adds a tier as it is proposed, as one step, takes it up and lets it be seen. */
export function addTier(tier: Tier): void {
  const { dispatch, select } = studio.getState();
  if (!dispatch({ type: "add-tier", tier }).ok) return;
  select({ tierId: tier.id });
  turnTo(tier);
}

const placeIn = (event: ReactPointerEvent<Element>, picture: Element): ScreenPoint => {
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

export interface TierDragHook {
  readonly live: LiveDrag | null;
  /** Takes hold of a tier (or a facet of it) on pointerdown; the picture's root then holds the pointer. */
  readonly grab: (event: ReactPointerEvent<Element>, picture: Element, pick: Taken) => void;
  /** For the picture's root element. */
  readonly surface: {
    readonly onPointerMove: (event: ReactPointerEvent<Element>) => void;
    readonly onPointerUp: () => void;
    readonly onPointerCancel: () => void;
    readonly onLostPointerCapture: () => void;
  };
  /** One step of a value by key; further steps until the key is let go are the same undo step. */
  readonly step: (event: ReactKeyboardEvent, tierId: string, value: DragValue, steps: number) => void;
  /** On to the next value at which something meets, up (1) or down (-1). */
  readonly toNextMeeting: (tierId: string, value: DragValue, direction: 1 | -1) => void;
  readonly onKeyUp: () => void;
}

export function useTierDrag(meaning: DragPicture): TierDragHook {
  const [live, setLive] = useState<LiveDrag | null>(null);
  const held = useRef<Held | null>(null);
  const keyed = useRef<TierDrag | null>(null);
  const stopThinking = useRef<() => void>(() => undefined);
  const latest = useRef(meaning);
  latest.current = meaning;

  const finish = useCallback((how: "end" | "cancel") => {
    stopThinking.current();
    const drag = held.current?.drag ?? keyed.current;
    held.current = null;
    keyed.current = null;
    drag?.[how]();
    setLive(null);
  }, []);

  // Escape is heard wherever the focus is, before anything else that listens for it; a picture that goes away lets go.
  useEffect(() => {
    const onEscape = (event: KeyboardEvent) => {
      if (event.key !== "Escape" || !(held.current?.drag || keyed.current)) return;
      event.preventDefault();
      event.stopPropagation();
      finish("cancel");
    };
    window.addEventListener("keydown", onEscape, true);
    return () => {
      window.removeEventListener("keydown", onEscape, true);
      finish("end");
    };
  }, [finish]);

  const begin = useCallback(({ tierId, fresh }: Taken, value: DragValue): TierDrag => {
    const drag = fresh ? beginFreshDrag(host, fresh, value) : beginTierDrag(host, tierId, value);
    if (fresh) studio.getState().select({ tierId });
    stopThinking.current = thinkBetweenFrames(drag);
    return drag;
  }, []);

  const grab = useCallback<TierDragHook["grab"]>((event, picture, pick) => {
    if (event.button !== 0 || held.current) return;
    if (!pick.fresh) studio.getState().select(pick);
    picture.setPointerCapture(event.pointerId);
    held.current = { pick, pointer: event.pointerId, last: placeIn(event, picture), drag: null };
  }, []);

  const onPointerMove = useCallback(
    (event: ReactPointerEvent<Element>) => {
      const hand = held.current;
      if (!hand || hand.pointer !== event.pointerId) return;
      const { tierId } = hand.pick;
      const at = placeIn(event, event.currentTarget);
      if (!hand.drag) {
        const value = latest.current.meant(tierId, hand.last, at);
        if (value === null) return;
        hand.drag = begin(hand.pick, value);
      }
      const { value } = hand.drag;
      const delta = latest.current.delta(value, tierId, hand.last, at);
      hand.last = at;
      const resting = hand.drag.by(delta, latest.current.reach(value, tierId, at), modifiersOf(event));
      setLive({ tierId, value, resting, at });
    },
    [begin],
  );

  const step = useCallback<TierDragHook["step"]>(
    (event, tierId, value, steps) => {
      if (keyed.current && (keyed.current.tierId !== tierId || keyed.current.value !== value)) finish("end");
      keyed.current ??= begin({ tierId }, value);
      const modifiers = { free: true, fine: event.shiftKey };
      const resting = keyed.current.to(stepped(keyed.current, steps, modifiers));
      setLive({ tierId, value, resting, at: null });
    },
    [begin, finish],
  );

  const toNextMeeting = useCallback<TierDragHook["toNextMeeting"]>(
    (tierId, value, direction) => {
      finish("end");
      const drag = beginTierDrag(host, tierId, value);
      const snap = nextSnap(drag, direction);
      if (!snap) {
        drag.cancel();
        return;
      }
      const resting = drag.to({ value: snap.value, snap });
      drag.end();
      setLive({ tierId, value, resting, at: null });
    },
    [finish],
  );

  /** A hand that was taken away by Escape has nothing left to let go; one that never moved has pressed. */
  const letGo = (how: "end" | "cancel") => {
    const hand = held.current;
    if (!hand) return;
    finish(how);
    const { fresh } = hand.pick;
    if (!fresh || how === "cancel") return;
    if (hand.drag) turnTo(fresh);
    else addTier(fresh);
  };
  return {
    live,
    grab,
    step,
    toNextMeeting,
    surface: {
      onPointerMove,
      onPointerUp: () => letGo("end"),
      onPointerCancel: () => letGo("cancel"),
      onLostPointerCapture: () => letGo("end"),
    },
    onKeyUp: () => {
      if (keyed.current) finish("end");
    },
  };
}

/** Present value of the tier that a drag moves, as the document has it now. */
function valueNow({ tierId, value }: TierDrag): number {
  const plan = host.plan();
  const tier = plan.tiers.find((t) => t.id === tierId);
  if (!tier) return 0;
  if (value === "angle") return tier.armAngleDeg;
  return value === "depth" ? depthNow(plan, tierId) : tier.startDeg;
}

/** One key step on: starts go stop by stop where there is a wheel. */
function stepped(drag: TierDrag, steps: number, modifiers: Modifiers): Resting {
  const plan = host.plan();
  const tier = plan.tiers.find((t) => t.id === drag.tierId);
  const now = valueNow(drag);
  const stops = drag.value === "start" && tier ? stopsOf(plan, tier.side) : null;
  if (stops !== null) return { value: now + (steps * 360) / stops, snap: null };
  const size = stepOf(drag.value, modifiers);
  const most =
    drag.value === "angle"
      ? 90
      : drag.value === "depth"
        ? plan.piece.diameterMm / 2
        : Number.POSITIVE_INFINITY;
  const least = drag.value === "start" ? Number.NEGATIVE_INFINITY : 0;
  const next = Math.min(most, Math.max(least, now + steps * size));
  return { value: Number(next.toFixed(6)), snap: null };
}

/** Values closer than this are the one where the tier stands already. */
const SAME_VALUE = 1e-6;
/** Steps of search for one press of a key: angles up to some 20 degrees away. */
const LOOKS = 300;

function nextSnap(drag: TierDrag, direction: 1 | -1) {
  const now = valueNow(drag);
  for (let i = 0; i < LOOKS && drag.think(); i++);
  const ahead = drag.snaps
    .filter((s) => (s.value - now) * direction > SAME_VALUE)
    .sort((a, b) => Math.abs(a.value - now) - Math.abs(b.value - now));
  return ahead[0] ?? null;
}
