/** A search that is asked for from another place: the wall begins it when it is shown. Apart from the wall, whose page is loaded then. */
import type { WayName } from "../../core/ideas/search.ts";
import type { Tier } from "../../core/plan/document.ts";
import { perStudio, type Studio } from "../studio.ts";

/** What a search begins with. */
export interface Beginning {
  readonly like: readonly (readonly Tier[])[];
  readonly ways: WayName;
  readonly frontCounts?: readonly number[];
}

const askedOf = perStudio(() => ({ beginning: null as Beginning | null }));

/** Goes to the wall and begins there. */
export function askIdeas(studio: Studio, beginning: Beginning): void {
  askedOf(studio).beginning = beginning;
  studio.getState().go("ideas");
}

/** What was asked for, once. */
export function takeAsked(studio: Studio): Beginning | null {
  const asked = askedOf(studio);
  const taken = asked.beginning;
  asked.beginning = null;
  return taken;
}
