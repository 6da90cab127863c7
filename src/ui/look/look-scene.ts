/** From a plan and the look's settings to what is traced. */

import { supportOf } from "../../core/check/size.ts";
import { cutBall } from "../../core/geometry/solid.ts";
import { scale, type Vec3 } from "../../core/geometry/vec.ts";
import { type DecodedPictures, decodedPictures } from "../../core/optics/decode-picture.ts";
import { EDGE_MM } from "../../core/optics/edges.ts";
import { ROUGHNESS } from "../../core/optics/finish.ts";
import { opticalGlass } from "../../core/optics/glasses.ts";
import { MATERIALS } from "../../core/optics/materials.ts";
import type { Rasters } from "../../core/optics/raster.ts";
import { makeScene, putOnTable, type Scene } from "../../core/optics/scene.ts";
import type { Plan } from "../../core/plan/document.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { type Behind, DEFAULT_OPTIONS, packScene } from "../../render/pack-scene.ts";
import type { PackedScene } from "../../render/packed-scene.ts";
import { solid, solved } from "../../state/derived.ts";
import { lightOf } from "./light-of.ts";
import { type LookSettings, lookedAt } from "./look-settings.ts";
import { downOf } from "./lying.ts";

/** What of the settings changes the traced light; the rest (exposure, divider) only changes how it is shown. */
export type SceneSettings = Pick<
  LookSettings,
  | "light"
  | "lightTurnDeg"
  | "picture"
  | "finish"
  | "isWet"
  | "glass"
  | "showInside"
  | "hasDispersion"
  | "behind"
  | "table"
  | "rest"
>;

/**
 * The piece as it stands in the plan, with the finish, glass and inside that the settings ask for.
 * @param down which way that is on a table, for a plan that lies as the one beside it does
 */
export function sceneOf(plan: Plan, settings: SceneSettings, down = downOf(plan, settings.rest)): Scene {
  return onTable(sceneOfSolved(solved(plan), settings), plan, settings, down, supportOf(solid(plan), down));
}

/** The same ball before anything is ground. */
function uncutSceneOf(plan: Plan, settings: SceneSettings): Scene {
  const ball = sceneOfSolved({ ...solved(plan), facets: [], planes: [] }, settings);
  return onTable(ball, plan, settings, downOf(plan, settings.rest), 1);
}

/** @param reach how far the piece goes down, radii */
function onTable(
  scene: Scene,
  { piece }: Plan,
  { table, rest }: SceneSettings,
  down: Vec3,
  reach: number,
): Scene {
  if (table === "none") return scene;
  const made = { material: MATERIALS[table], radiusMm: piece.diameterMm / 2 };
  return putOnTable(scene, scale(down, -1), -reach, made, rest === "ring");
}

/** Held in the hand, whatever it lies on. */
export const withoutTable = (settings: LookSettings): LookSettings => ({ ...settings, table: "none" });

/** Past a table there is always something. */
export const behindOf = ({ table, behind }: Pick<LookSettings, "table" | "behind">): Behind =>
  table !== "none" && behind === "nothing" ? "light" : behind;

/** The piece while it is worked on: its first `cut` tiers, all as the coarse abrasive leaves them. */
export function partlyCutSceneOf(plan: Plan, settings: SceneSettings, cut: number): Scene {
  const { facets, planes, ...rest } = solved(plan);
  const isThere = facets.map(({ tierIndex }) => tierIndex < cut);
  const part = { facets: facets.filter((_, k) => isThere[k]), planes: planes.filter((_, k) => isThere[k]) };
  const down = downOf(plan, settings.rest);
  const scene = sceneOfSolved({ ...rest, ...part }, { ...settings, finish: "ground" });
  return onTable(scene, plan, settings, down, supportOf(cutBall(part.planes), down));
}

/** Decoded once: pictures never change, a plan gets others. */
const decoded = new WeakMap<object, DecodedPictures>();
const NO_PICTURES: DecodedPictures = { rasters: new Map(), damaged: [] };
function decodedOf(plan: Plan): DecodedPictures {
  const { pictures } = plan;
  if (!pictures) return NO_PICTURES;
  const known = decoded.get(pictures) ?? decodedPictures(plan);
  decoded.set(pictures, known);
  return known;
}

/** Pixels of the inside's pictures, but for those that are damaged. */
export const picturesOf = (plan: Plan): Rasters => decodedOf(plan).rasters;

/** Ids of pictures that can't be shown. */
export const damagedPictures = (plan: Plan): readonly string[] => decodedOf(plan).damaged.map(({ id }) => id);

function sceneOfSolved({ plan, facets, planes }: SolvedPlan, settings: SceneSettings): Scene {
  const { finish, glass, showInside, isWet } = settings;
  const { inside, ...outside } = plan.piece;
  const finishOf = (tierIndex: number) =>
    finish === "planned" ? (plan.tiers[tierIndex].finish ?? "polished") : finish;
  return makeScene({
    piece: showInside && inside ? { ...outside, inside } : outside,
    planes,
    roughness: facets.map((facet) => ROUGHNESS[finishOf(facet.tierIndex)]),
    glass: opticalGlass(glass === "planned" ? plan.piece.glass : glass),
    wet: isWet,
    edgeMm: EDGE_MM,
    light: lightOf(settings),
    rasters: showInside ? picturesOf(plan) : new Map(),
  });
}

/** The look of what stands on the right, where two are compared. */
export function besideLook<T extends SceneSettings>(settings: T, otherLook: LookSettings["otherLook"]): T {
  const { light = settings.light, finish = settings.finish, glass = settings.glass } = otherLook;
  return { ...settings, light, finish, glass };
}

/**
 * What is looked at, and beside it what it is compared with; ready for the graphics card. Both lie as the one on the left does.
 * @param plan the one on the bench
 */
export function packedScenes(
  plan: Plan,
  settings: SceneSettings,
  compared: Pick<LookSettings, "against" | "own" | "other" | "otherLook">,
): PackedScene[] {
  const own = lookedAt(plan, compared);
  const scenes = [sceneOf(own, settings)];
  if (compared.against === "uncut") scenes.push(uncutSceneOf(plan, settings));
  if (compared.against === "other") {
    const look = besideLook(settings, compared.otherLook);
    scenes.push(sceneOf(compared.other?.plan ?? plan, look, downOf(own, settings.rest)));
  }
  const options = {
    ...DEFAULT_OPTIONS,
    hasDispersion: settings.hasDispersion,
    behind: behindOf(settings),
  };
  return scenes.map((scene) => packScene(scene, options));
}
