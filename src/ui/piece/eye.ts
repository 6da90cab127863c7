/** Where the eye stands (an orbit camera's controller), kept for the life of its viewport: places and layouts come and go, the view stays. */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { Plan } from "../../core/plan/document.ts";
import { placeFacets } from "../../core/plan/place.ts";
import type { Studio } from "../studio.ts";
import { between, HOME, LOOKS, type LookFrom, type Orbit } from "./camera.ts";

const GLIDE_MS = 180;
const OPENING_TURN_MS = 9000;

type Put = (view: Orbit) => Orbit;
const asItIs: Put = (view) => view;

export interface Eye extends StoreApi<{ readonly view: Orbit }> {
  /** Whether the person wants no motion. */
  readonly wantsStillness: () => boolean;
  /** Ends any motion: the hand has taken hold. */
  readonly holdStill: () => void;
  /** From now on every view is put so, as where the piece lies on something allows; without one, as it is. */
  readonly putViews: (how?: Put) => void;
  readonly setView: (view: Orbit) => void;
  readonly glideTo: (view: Orbit) => void;
  readonly lookFrom: (look: LookFrom) => void;
  /** The piece shows itself once all round when the page opens, then stands still. */
  readonly openingTurn: () => void;
  /** Turns the piece until a facet is seen well. */
  readonly showFacet: (facetId: string) => void;
}

const easeOut = (t: number): number => 1 - (1 - t) ** 3;
const easeInOut = (t: number): number => t * t * (3 - 2 * t);

const isStill = (studio: Studio): boolean =>
  studio.getState().preferences.motion === "reduced" ||
  window.matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Looking straight at a facet hides how it leans; this many degrees beside it shows it best. */
const BESIDE_DEG = 14;

/** From where a facet of the plan on the bench is seen well; null where there is none of this id. */
function viewOfFacet(plan: Plan, facetId: string, { stand: _, ...view }: Orbit): Orbit | null {
  const facet = placeFacets(plan).find((one) => one.id === facetId);
  if (!facet) return null;
  const isBack = plan.tiers[facet.tierIndex].side === "back";
  const elevation = facet.armAngleDeg - (facet.armAngleDeg > 60 ? BESIDE_DEG : -BESIDE_DEG);
  // Facets stand in the piece's own axes, whatever it lies on.
  return {
    ...view,
    azimuthDeg: facet.armAngleDeg === 90 ? -90 : facet.azimuthDeg - BESIDE_DEG,
    elevationDeg: isBack ? -elevation : elevation,
    panX: 0,
    panY: 0,
  };
}

export function createEye(studio: Studio): Eye {
  const store = createStore<{ readonly view: Orbit }>(() => ({ view: HOME }));
  const viewNow = () => store.getState().view;
  const wantsStillness = () => isStill(studio);
  let running = 0;
  let put = asItIs;
  let hasTurned = false;

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

  const holdStill = (): void => {
    running++;
  };
  function setView(view: Orbit): void {
    holdStill();
    store.setState({ view: put(view) });
  }
  function glideTo(there: Orbit): void {
    const from = viewNow();
    const to = put(there);
    if (wantsStillness()) setView(to);
    else run(GLIDE_MS, (t) => store.setState({ view: between(from, to, easeOut(t)) }));
  }

  return {
    ...store,
    wantsStillness,
    holdStill,
    putViews: (how = asItIs) => {
      put = how;
    },
    setView,
    glideTo,
    lookFrom: (look) => glideTo(LOOKS[look]),
    openingTurn: () => {
      if (hasTurned || wantsStillness()) return;
      hasTurned = true;
      const home = viewNow();
      run(OPENING_TURN_MS, (t) =>
        store.setState({ view: { ...home, azimuthDeg: home.azimuthDeg - 360 * easeInOut(t) } }),
      );
    },
    showFacet: (facetId) => {
      const view = viewOfFacet(studio.getState().plan, facetId, viewNow());
      if (view) glideTo(view);
    },
  };
}
