/** The piece by keyboard: turn, bring nearer, look from three sides, go from facet to facet. */
import { solid, solved } from "../../state/derived.ts";
import { settledPlan } from "../settled.ts";
import { HOME, nearer, type Orbit, turned } from "./camera.ts";
import type { Viewport } from "./viewport.ts";

const STEP_DEG = 10;
const FINE_DEG = 2;
const NEARER = 0.88;

/** Selects the facet `by` places on among those that are left, and turns the piece to it. */
export function stepFacet({ studio, eye }: Viewport, by: 1 | -1): void {
  const { selection, select } = studio.getState();
  const plan = settledPlan(studio);
  const { facets } = solved(plan);
  const left = solid(plan).facets.flatMap((facet, i) => (facet.swallowed ? [] : [i]));
  if (left.length === 0) return;
  const now = left.findIndex((i) => facets[i].id === selection.facetId);
  const next = now < 0 ? (by > 0 ? 0 : left.length - 1) : (now + by + left.length) % left.length;
  const facetId = facets[left[next]].id;
  select({ facetId });
  eye.showFacet(facetId);
}

type Act = (viewport: Viewport, view: Orbit, stepDeg: number) => void;

const ACTS: ReadonlyMap<string, Act> = new Map<string, Act>([
  ["ArrowLeft", ({ eye }, view, step) => eye.setView(turned(view, -step, 0))],
  ["ArrowRight", ({ eye }, view, step) => eye.setView(turned(view, step, 0))],
  ["ArrowUp", ({ eye }, view, step) => eye.setView(turned(view, 0, -step))],
  ["ArrowDown", ({ eye }, view, step) => eye.setView(turned(view, 0, step))],
  ["+", ({ eye }, view) => eye.setView(nearer(view, NEARER))],
  ["=", ({ eye }, view) => eye.setView(nearer(view, NEARER))],
  ["-", ({ eye }, view) => eye.setView(nearer(view, 1 / NEARER))],
  ["f", ({ eye }) => eye.lookFrom("front")],
  ["s", ({ eye }) => eye.lookFrom("side")],
  ["b", ({ eye }) => eye.lookFrom("back")],
  ["Home", ({ eye }) => eye.glideTo(HOME)],
  ["PageDown", (viewport) => stepFacet(viewport, 1)],
  ["PageUp", (viewport) => stepFacet(viewport, -1)],
  ["Escape", ({ studio }) => studio.getState().select({})],
]);

/** @returns whether the key meant something here */
export function pieceKey(viewport: Viewport, key: string, isFine: boolean): boolean {
  const act = ACTS.get(key.length === 1 ? key.toLowerCase() : key);
  act?.(viewport, viewport.eye.getState().view, isFine ? FINE_DEG : STEP_DEG);
  return act !== undefined;
}
