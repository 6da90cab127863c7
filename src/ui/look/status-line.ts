/** How far a traced picture is, in one line. */
import type { LookState } from "../../render/look-renderer.ts";
import type { lookWords } from "../messages/look.ts";

type StatusWords = (typeof lookWords)["en"]["status"];

export function statusLine(state: LookState, words: StatusWords): string {
  if (state.phase === "preparing") return words.preparing;
  if (state.phase === "lost") return words.lost;
  if (state.isBehind) return words.behind;
  if (state.phase === "clean") return words.clean(inDoublings(state.samples));
  if (state.samples === 0) return words.first;
  if (state.isCoarse) return words.coarse;
  const samples = state.isSlow && state.samples < STEP ? inDoublings(state.samples) : inSteps(state.samples);
  return state.gathersTable ? words.gathering(samples, state.target) : words.tracing(samples, state.target);
}

/** Said in steps, so that the words can be read, and are not read out, at every frame; where samples are slow the first are told too. */
const STEP = 16;
const inSteps = (samples: number): number => (samples < STEP ? 1 : STEP * Math.floor(samples / STEP));
/** What shows of a clean picture changes when its samples have doubled. */
const inDoublings = (samples: number): number => 2 ** Math.floor(Math.log2(samples));
