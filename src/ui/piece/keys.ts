/** The piece by keyboard: turn, bring nearer, look from three sides, go from facet to facet. */
import { solid, solved } from "../../state/derived.ts";
import { settledPlan } from "../settled.ts";
import { studio } from "../studio.ts";
import { HOME, nearer, type Orbit, turned } from "./camera.ts";
import { eye, glideTo, lookFrom, setView, showFacet } from "./eye.ts";

const STEP_DEG = 10;
const FINE_DEG = 2;
const NEARER = 0.88;

/** Selects the facet `by` places on among those that are left, and turns the piece to it. */
export function stepFacet(by: 1 | -1): void {
  const { selection, select } = studio.getState();
  const plan = settledPlan();
  const { facets } = solved(plan);
  const left = solid(plan).facets.flatMap((facet, i) => (facet.swallowed ? [] : [i]));
  if (left.length === 0) return;
  const now = left.findIndex((i) => facets[i].id === selection.facetId);
  const next = now < 0 ? (by > 0 ? 0 : left.length - 1) : (now + by + left.length) % left.length;
  const facetId = facets[left[next]].id;
  select({ facetId });
  showFacet(facetId);
}

type Act = (view: Orbit, stepDeg: number) => void;

const ACTS: ReadonlyMap<string, Act> = new Map<string, Act>([
  ["ArrowLeft", (view, step) => setView(turned(view, -step, 0))],
  ["ArrowRight", (view, step) => setView(turned(view, step, 0))],
  ["ArrowUp", (view, step) => setView(turned(view, 0, -step))],
  ["ArrowDown", (view, step) => setView(turned(view, 0, step))],
  ["+", (view) => setView(nearer(view, NEARER))],
  ["=", (view) => setView(nearer(view, NEARER))],
  ["-", (view) => setView(nearer(view, 1 / NEARER))],
  ["f", () => lookFrom("front")],
  ["s", () => lookFrom("side")],
  ["b", () => lookFrom("back")],
  ["Home", () => glideTo(HOME)],
  ["PageDown", () => stepFacet(1)],
  ["PageUp", () => stepFacet(-1)],
  ["Escape", () => studio.getState().select({})],
]);

/** @returns whether the key meant something here */
export function pieceKey(key: string, isFine: boolean): boolean {
  const act = ACTS.get(key.length === 1 ? key.toLowerCase() : key);
  act?.(eye.getState().view, isFine ? FINE_DEG : STEP_DEG);
  return act !== undefined;
}
