/** What the bench shows beside the plan: which part, which way of working. Never saved in the plan. */
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Way } from "../../core/bench/diary.ts";

export type BenchPart = "set-up" | "work" | "tolerance" | "as-cut" | "paper";
export const BENCH_PARTS: readonly BenchPart[] = ["set-up", "work", "tolerance", "as-cut", "paper"];

export interface BenchView {
  readonly part: BenchPart;
  readonly way: Way;
  /** Whether strokes nobody has calibrated are shown as guesses. */
  readonly showGuesses: boolean;
}

export const benchView = createStore<BenchView>(() => ({
  part: "work",
  way: "finish-each",
  showGuesses: false,
}));
export const useBenchView = <T>(pick: (state: BenchView) => T): T => useStore(benchView, pick);
export const showPart = (part: BenchPart) => benchView.setState({ part });
