/** Where the eye stands, kept for the life of the page: places and layouts come and go, the view stays. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { placeFacets } from "../../core/plan/place.ts";
import { studio } from "../studio.ts";
import { between, HOME, LOOKS, type LookFrom, type Orbit } from "./camera.ts";

export const eye = createStore<{ readonly view: Orbit }>(() => ({ view: HOME }));
export const useEye = <T>(pick: (view: Orbit) => T): T => useStore(eye, (state) => pick(state.view));

const GLIDE_MS = 180;
const OPENING_TURN_MS = 9000;

let running = 0;

export const wantsStillness = (): boolean =>
  studio.getState().preferences.motion === "reduced" ||
  window.matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Runs `show` from 0 to 1 over `ms`; a later motion or `holdStill` ends it where it is. */
function run(ms: number, show: (t: number) => void): void {
  const mine = ++running;
  let started: number | null = null;
  const frame = (now: number) => {
    if (mine !== running) return;
    started ??= now;
    const t = Math.min(1, (now - started) / ms);
    show(t);
    if (t < 1) requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

/** Ends any motion: the hand has taken hold. */
export const holdStill = (): void => {
  running++;
};

type Put = (view: Orbit) => Orbit;
const asItIs: Put = (view) => view;
let put = asItIs;

/** From now on every view is put so, as where the piece lies on something allows; without one, as it is. */
export function putViews(how: Put = asItIs): void {
  put = how;
}

export function setView(view: Orbit): void {
  holdStill();
  eye.setState({ view: put(view) });
}

const easeOut = (t: number): number => 1 - (1 - t) ** 3;
const easeInOut = (t: number): number => t * t * (3 - 2 * t);

export function glideTo(there: Orbit): void {
  const from = eye.getState().view;
  const to = put(there);
  if (wantsStillness()) setView(to);
  else run(GLIDE_MS, (t) => eye.setState({ view: between(from, to, easeOut(t)) }));
}

export const lookFrom = (look: LookFrom): void => glideTo(LOOKS[look]);

let hasTurned = false;

/** The piece shows itself once all round when the page opens, then stands still. */
export function openingTurn(): void {
  if (hasTurned || wantsStillness()) return;
  hasTurned = true;
  const home = eye.getState().view;
  run(OPENING_TURN_MS, (t) =>
    eye.setState({ view: { ...home, azimuthDeg: home.azimuthDeg - 360 * easeInOut(t) } }),
  );
}

/** Looking straight at a facet hides how it leans; this many degrees beside it shows it best. */
const BESIDE_DEG = 14;

/** Turns the piece until a facet is seen well. */
export function showFacet(facetId: string): void {
  const { plan } = studio.getState();
  const facet = placeFacets(plan).find((one) => one.id === facetId);
  if (!facet) return;
  const isBack = plan.tiers[facet.tierIndex].side === "back";
  const elevation = facet.armAngleDeg - (facet.armAngleDeg > 60 ? BESIDE_DEG : -BESIDE_DEG);
  // Facets stand in the piece's own axes, whatever it lies on.
  const { stand: _, ...view } = eye.getState().view;
  glideTo({
    ...view,
    azimuthDeg: facet.armAngleDeg === 90 ? -90 : facet.azimuthDeg - BESIDE_DEG,
    elevationDeg: isBack ? -elevation : elevation,
    panX: 0,
    panY: 0,
  });
}
