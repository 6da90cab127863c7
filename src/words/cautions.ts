/** Cautions in words: one table a language, and nothing about safety stands anywhere else. */
import type { Caution } from "../core/bench/order/cautions.ts";

export type CautionWords = Readonly<Record<Caution, string>>;
