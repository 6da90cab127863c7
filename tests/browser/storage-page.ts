/** A visit on the browser's real storage, without screens: what a test asks of it from outside. */
import { parsePlan } from "../../src/core/plan/file.ts";
import { browserSurroundings, type Session, startSession } from "../../src/state/session.ts";
import { createPlanStore } from "../../src/state/store.ts";

const EXAMPLE = JSON.stringify({
  format: "glintwright-plan",
  version: 1,
  name: "Example",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [],
});

let session: Session;
const bench = {
  start: async () => {
    const store = createPlanStore({ plan: parsePlan(EXAMPLE).plan, depthOf: () => 0 });
    session = await startSession(store, browserSurroundings());
    return session.health.getState().fault;
  },
  rename: async (name: string, notes?: string) => {
    const { dispatch } = session.store.getState();
    if (notes !== undefined) dispatch({ type: "set-notes", notes });
    dispatch({ type: "set-name", name });
    return session.autosave.flush();
  },
  undo: () => session.store.getState().undo(),
  name: () => session.store.getState().plan.name,
  planId: () => session.store.getState().planId ?? "",
  open: (id: string) => session.openPlan(id),
  names: async () => (await session.library.list()).map((plan) => plan.name).sort(),
  stop: () => session.stop(),
};
export type Bench = typeof bench;
declare global {
  interface Window {
    storageBench: Bench;
  }
}
window.storageBench = bench;
