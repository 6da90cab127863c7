/** What hangs on the wall and what is held; it outlives the page that shows it, so that leaving loses nothing. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { IdeasAnswer } from "../../core/ideas/answer.ts";
import { featuresOf } from "../../core/ideas/taste.ts";
import type { Plan } from "../../core/plan/document.ts";
import { measureIdea } from "./find-ideas.ts";
import { learn } from "./taste-store.ts";
import { pictureKey } from "./use-pictures.ts";

export interface Hung {
  readonly cell: readonly [number, number];
  readonly plan: Plan;
}
export interface Wall {
  readonly hung: readonly Hung[];
  readonly tried: number;
  readonly meeting: number;
  readonly answer: IdeasAnswer | null;
  readonly seed: number;
  readonly held: readonly Plan[];
  /** Keys of what was thrown away: it doesn't come up again on this wall. */
  readonly thrown: ReadonlySet<string>;
}

export const wall = createStore<Wall>(() => ({
  hung: [],
  tried: 0,
  meeting: 0,
  answer: null,
  seed: 0,
  held: [],
  thrown: new Set(),
}));
export const useWall = (): Wall => useStore(wall);

export const isHeld = ({ held }: Wall, plan: Plan): boolean =>
  held.some((one) => pictureKey(one) === pictureKey(plan));

/** What is learned takes rays; should they break off, nothing is learned, and nothing else depends on it. */
function learnFrom(plan: Plan, isLiked: boolean): void {
  measureIdea(plan, new AbortController().signal).then(
    (measures) => learn({ features: featuresOf(measures, plan.piece.diameterMm / 2), isLiked }),
    () => undefined,
  );
}

/** Pins an idea (a favourite). */
export function hold(plan: Plan): void {
  const { held } = wall.getState();
  wall.setState({ held: [...held, plan] });
  learnFrom(plan, true);
}

/** Unpins it. */
export function letGo(plan: Plan): void {
  const { held } = wall.getState();
  wall.setState({ held: held.filter((one) => pictureKey(one) !== pictureKey(plan)) });
}

export function throwAway(plan: Plan): void {
  const { thrown } = wall.getState();
  letGo(plan);
  wall.setState({ thrown: new Set([...thrown, pictureKey(plan)]) });
  learnFrom(plan, false);
}

export const bringBack = (): void => wall.setState({ thrown: new Set() });
