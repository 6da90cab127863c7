/** What the bench shows beside the plan: which part, which way of working. Never saved in the plan. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Way } from "../../core/bench/order/diary.ts";
import { perStudio, type Studio, useStudioStore } from "../studio.ts";

export type BenchPart = "set-up" | "work" | "tolerance" | "as-cut" | "paper" | "price";
export const BENCH_PARTS: readonly BenchPart[] = ["set-up", "work", "tolerance", "as-cut", "paper", "price"];

/** What was read off a trial facet and not yet applied: it stays when one looks at another part. */
export interface Trial {
  readonly tierId: string | null;
  readonly offsetMm: number | undefined;
  readonly toward: "clockwise" | "counter";
}

export interface BenchScreen {
  readonly trial: Trial;
  readonly part: BenchPart;
  readonly way: Way;
  /** Whether strokes nobody has calibrated are shown as guesses. */
  readonly showGuesses: boolean;
}

export const benchScreenOf = perStudio(() =>
  createStore<BenchScreen>(() => ({
    trial: { tierId: null, offsetMm: undefined, toward: "clockwise" },
    part: "work",
    way: "finish-each",
    showGuesses: false,
  })),
);
export const useBenchScreen = <T>(pick: (state: BenchScreen) => T): T =>
  useStore(benchScreenOf(useStudioStore()), pick);
export const showPart = (studio: Studio, part: BenchPart) => benchScreenOf(studio).setState({ part });
export const changeTrial = (studio: Studio, change: Partial<Trial>) =>
  benchScreenOf(studio).setState(({ trial }) => ({ trial: { ...trial, ...change } }));
