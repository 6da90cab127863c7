/** A search that is asked for from another place: the wall begins it when it is shown. Apart from the wall, whose page is loaded then. */
import type { WayName } from "../../core/ideas/search.ts";
import type { Tier } from "../../core/plan/document.ts";
import { studio } from "../studio.ts";

/** What a search begins with. */
export interface Beginning {
  readonly like: readonly (readonly Tier[])[];
  readonly ways: WayName;
  readonly frontCounts?: readonly number[];
}

let asked: Beginning | null = null;

/** Goes to the wall and begins there. */
export function askIdeas(beginning: Beginning): void {
  asked = beginning;
  studio.getState().go("ideas");
}

/** What was asked for, once. */
export function takeAsked(): Beginning | null {
  const taken = asked;
  asked = null;
  return taken;
}
