/** What the pictures show: the finished piece, or the piece at the moment of the diary that is open. */
import { useDeferredValue } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Plan } from "../../../core/plan/document.ts";
import { perPlan, report, solid, solved } from "../../../state/derived.ts";
import { settledPlan, useSettledPlan } from "../../settled.ts";
import { hasMany } from "../../settling.ts";
import { perStudio, type Studio, useStudioStore } from "../../studio.ts";
import { type Shown, shownAt } from "./shown.ts";

export interface DiaryState {
  readonly isOpen: boolean;
  /** Facets cut at the moment looked at. */
  readonly count: number;
}

const CLOSED: DiaryState = { isOpen: false, count: 0 };

/** A diary tells of one plan: a change to it closes the diary, since the work would be another. */
export const diaryOf = perStudio((studio) => {
  const diary = createStore<DiaryState>(() => CLOSED);
  studio.subscribe((now, before) => {
    if (now.plan !== before.plan && diary.getState().isOpen) diary.setState(CLOSED);
  });
  return diary;
});
export const useDiary = <T>(pick: (state: DiaryState) => T): T => useStore(diaryOf(useStudioStore()), pick);

export const closeDiary = (studio: Studio): void => diaryOf(studio).setState(CLOSED);
export const openDiary = (studio: Studio): void =>
  diaryOf(studio).setState({ isOpen: true, count: solved(settledPlan(studio)).facets.length });

const momentsShown = perPlan(() => new Map<number, Shown>());

function shownOf(plan: Plan, count: number): Shown {
  const known = momentsShown(plan);
  let shown = known.get(count);
  if (!shown) {
    shown = shownAt(solved(plan), count);
    known.set(count, shown);
  }
  return shown;
}

/** Pictures of many facets come a little after the words, in turns that leave the hand its frames. */
function usePicturedPlan(): Plan {
  const plan = useSettledPlan();
  const unhurried = useDeferredValue(plan);
  return hasMany(plan) ? unhurried : plan;
}

function usePart<K extends keyof Shown>(part: K, finished: (plan: Plan) => Shown[K]): Shown[K] {
  const plan = usePicturedPlan();
  const isOpen = useDiary((state) => state.isOpen);
  const count = useDiary((state) => state.count);
  return isOpen && count < solved(plan).facets.length ? shownOf(plan, count)[part] : finished(plan);
}

export const useShownSolved = () => usePart("solved", solved);
export const useShownSolid = () => usePart("solid", solid);
export const useShownReport = () => usePart("report", report);
