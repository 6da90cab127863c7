/** A visit on the browser's real storage, without screens: what a test asks of it from outside. */
import { parsePlan } from "../../src/core/plan/file.ts";
import { browserSurroundings, type Session, startSession } from "../../src/state/session.ts";
import { faultOf } from "../../src/state/storage/faults.ts";
import { createPlanStore } from "../../src/state/store.ts";
import { pngUrl, raster } from "../core/optics/pictures.ts";

const EXAMPLE = JSON.stringify({
  format: "glintwright-plan",
  version: 1,
  name: "Example",
  piece: { diameterMm: 30, glass: "borosilicate" },
  rig: { wheelStops: 96 },
  tiers: [],
});

/** A picture that no packing makes shorter, another one for each seed: some 1.3 million characters at 512 pixels. */
function noisePicture(seed: number, side: number): string {
  let state = seed;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 24;
  };
  return pngUrl(raster(side, side, () => [next(), next(), next(), 255]));
}

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
  /** @returns what kept it from being kept, or null */
  keepVersion: async (label: string) => {
    const { plan, planId } = session.store.getState();
    try {
      await session.library.addVersion(planId ?? "", label, plan);
      return null;
    } catch (error) {
      return faultOf(error).kind;
    }
  },
  /** Puts a picture of noise into the plan, as it is put inside on screen. */
  putPicture: async (seed: number, side: number) => {
    const pictures = { mine: noisePicture(seed, side) };
    await session.keepAhead(pictures);
    const item = { kind: "picture", shape: "disc", diameterMm: 8, atMm: [0, 0, 0], picture: "mine" } as const;
    const { dispatch } = session.store.getState();
    dispatch({ type: "set-field", path: ["pictures"], value: pictures });
    dispatch({ type: "set-piece", change: { inside: [item] } });
    return session.autosave.flush();
  },
  hasPicture: (seed: number, side: number) =>
    session.store.getState().plan.pictures?.mine === noisePicture(seed, side),
  /** Lays the example on the bench; what lay there is kept. */
  beginAnew: () => session.layPlan(parsePlan(EXAMPLE)),
  /** Erases all plans but the one on the bench, for good. */
  eraseOthers: async () => {
    for (const { id } of await session.library.list())
      if (id !== session.store.getState().planId) await session.library.erase(id);
  },
  versions: async () =>
    (await session.library.versions(session.store.getState().planId ?? "")).map(({ label }) => label),
  /** What the storage calls the pictures that it has. */
  pictures: () => session.library.port.ids("pictures"),
  status: () => session.autosave.status.getState().state,
  wouldLose: () => session.wouldLose(),
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
