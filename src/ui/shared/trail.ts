/**
 * Back and forward of the browser (routing by the History API): each place one goes to and each sheet that is opened is a step of its own, and a step back
 * closes what lies on top before it leaves a place. The address stays as it is; where one is stands in the state of each entry.
 */
import { useLayoutEffect } from "react";
import type { Place } from "../../state/store.ts";
import { addressOf, putAddress, watchAddress } from "../address.ts";
import type { Studio } from "../studio.ts";
import { openSheet, type SheetName, screenOf } from "./screen.ts";
import { isSteppingBack, stepBack, steppedBack } from "./step-back.ts";

interface Spot {
  readonly place: Place;
  /** Which sheet lies on top, where it is one that can be opened again. */
  readonly sheet: SheetName | null;
  /** How many sheets lie over each other. */
  readonly over: number;
}

/** How the sheets are closed that lie over the place, the topmost last. */
const covers: (() => void)[] = [];

const spotNow = (studio: Studio): Spot => {
  const { sheet } = screenOf(studio).getState();
  return { place: studio.getState().place, sheet, over: Math.max(covers.length, sheet === null ? 0 : 1) };
};

/** Where an entry says one was; null for one that says nothing: an address that was typed, a link that was pasted. */
const spotHere = (): Spot | null => (history.state as { spot?: Spot } | null)?.spot ?? null;

/** Whose places the entries follow: a page has one history. Sheets may be shown where no trail was begun: a step back would then leave the page. */
let followed: Studio | null = null;

/** Lets the entries follow what is on the screen. */
function follow(): void {
  if (!followed || isSteppingBack()) return;
  const [from, spot] = [spotHere(), spotNow(followed)];
  const isPlaceLeft = from !== null && from.place !== spot.place;
  if (from === null || (from.over >= spot.over && from.over > 0 && isPlaceLeft))
    history.replaceState({ ...history.state, spot }, "");
  else if (from.over > spot.over) stepBack();
  else if (isPlaceLeft || from.over < spot.over) history.pushState({ spot }, "");
  else if (from.sheet !== spot.sheet) history.replaceState({ ...history.state, spot }, "");
}

let asked = 0;
/** Once what was pressed has had all its effects: a plan opened from a sheet closes it and goes to its place. */
function followSoon(): void {
  clearTimeout(asked);
  asked = window.setTimeout(follow, 0);
}

/** The plan that the address carries where nothing else keeps it: an entry from before would bring back an older one. */
let carried: string | null = null;

/** Lets the screen follow the entry that the person went to. */
function onStep(studio: Studio): void {
  const spot = spotHere();
  const isOwn = isSteppingBack();
  steppedBack();
  const address = addressOf(location.hash);
  if (spot !== null && address.plan !== null) putAddress({ ...address, plan: carried });
  if (spot !== null && !isOwn) {
    // What is typed counts on leaving its field.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    while (covers.length > spot.over) covers.pop()?.();
    if (spot.sheet !== screenOf(studio).getState().sheet) openSheet(studio, spot.sheet);
    if (spot.place !== studio.getState().place) studio.getState().go(spot.place);
  }
  followSoon();
}

/** Starts the router. @returns how to stop (unsubscribe) */
export function beginTrail(studio: Studio): () => void {
  followed = studio;
  // A page loaded anew comes without the sheet that lay over it.
  if ((spotHere()?.over ?? 0) > 0) stepBack();
  else follow();
  const stops: (() => void)[] = [
    studio.subscribe((now, before) => now.place !== before.place && followSoon()),
    screenOf(studio).subscribe((now, before) => now.sheet !== before.sheet && followSoon()),
  ];
  const step = () => onStep(studio);
  window.addEventListener("popstate", step);
  const readCarried = () => {
    carried = addressOf(location.hash).plan;
  };
  readCarried();
  // after the step itself has put right what an old entry says
  stops.push(watchAddress(readCarried));
  return () => {
    followed = null;
    window.removeEventListener("popstate", step);
    for (const stop of stops) stop();
  };
}

/** For a sheet (a modal on a stack): a step back closes it. */
export function useCover(close: () => void): void {
  useLayoutEffect(() => {
    covers.push(close);
    follow();
    return () => {
      const at = covers.indexOf(close);
      if (at >= 0) covers.splice(at, 1);
      followSoon();
    };
  }, [close]);
}
