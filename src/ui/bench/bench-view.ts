/** What the bench shows beside the plan: which part, which way of working. Never saved in the plan. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Way } from "../../core/bench/diary.ts";

export type BenchPart = "set-up" | "work" | "tolerance" | "as-cut" | "paper" | "price";
export const BENCH_PARTS: readonly BenchPart[] = ["set-up", "work", "tolerance", "as-cut", "paper", "price"];

/** What was read off a trial facet and not yet applied: it stays when one looks at another part. */
export interface Trial {
  readonly tierId: string | null;
  readonly offsetMm: number | undefined;
  readonly toward: "clockwise" | "counter";
}

export interface BenchView {
  readonly trial: Trial;
  readonly part: BenchPart;
  readonly way: Way;
  /** Whether strokes nobody has calibrated are shown as guesses. */
  readonly showGuesses: boolean;
}

export const benchView = createStore<BenchView>(() => ({
  trial: { tierId: null, offsetMm: undefined, toward: "clockwise" },
  part: "work",
  way: "finish-each",
  showGuesses: false,
}));
export const useBenchView = <T>(pick: (state: BenchView) => T): T => useStore(benchView, pick);
export const showPart = (part: BenchPart) => benchView.setState({ part });
export const changeTrial = (change: Partial<Trial>) =>
  benchView.setState(({ trial }) => ({ trial: { ...trial, ...change } }));
