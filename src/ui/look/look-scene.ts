/** From a plan and the look's settings to what is traced. */

import { type DecodedPictures, decodedPictures } from "../../core/optics/decode-picture.ts";
import { ROUGHNESS } from "../../core/optics/finish.ts";
import { opticalGlass } from "../../core/optics/glasses.ts";
import { LIGHT_SETTINGS, type Light } from "../../core/optics/lights.ts";
import type { Rasters } from "../../core/optics/raster.ts";
import { makeScene, type Scene } from "../../core/optics/scene.ts";
import type { Plan } from "../../core/plan/document.ts";
import type { SolvedPlan } from "../../core/plan/solved.ts";
import { DEFAULT_OPTIONS, packScene } from "../../render/pack-scene.ts";
import type { PackedScene } from "../../render/packed-scene.ts";
import { solved } from "../../state/derived.ts";
import type { LookSettings } from "./look-settings.ts";

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
>;

export function lightOf({ light, lightTurnDeg, picture }: SceneSettings): Light {
  const turnRad = (lightTurnDeg * Math.PI) / 180;
  if (light === "picture" && picture) return { kind: "picture", picture: picture.pixels, turnRad };
  const name = light === "picture" ? "north-window" : light;
  return { kind: "setting", setting: LIGHT_SETTINGS[name], turnRad };
}

/** The piece as it stands in the plan, with the finish, glass and inside that the settings ask for. */
export function sceneOf(plan: Plan, settings: SceneSettings): Scene {
  return sceneOfSolved(solved(plan), settings);
}

/** The same ball before anything is ground. */
export function uncutSceneOf(plan: Plan, settings: SceneSettings): Scene {
  return sceneOfSolved({ ...solved(plan), facets: [], planes: [] }, settings);
}

/** The piece while it is worked on: its first `cut` tiers, all as the coarse abrasive leaves them. */
export function partlyCutSceneOf(plan: Plan, settings: SceneSettings, cut: number): Scene {
  const { facets, planes, ...rest } = solved(plan);
  const isThere = facets.map(({ tierIndex }) => tierIndex < cut);
  const part = { facets: facets.filter((_, k) => isThere[k]), planes: planes.filter((_, k) => isThere[k]) };
  return sceneOfSolved({ ...rest, ...part }, { ...settings, finish: "ground" });
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
    light: lightOf(settings),
    rasters: showInside ? picturesOf(plan) : new Map(),
  });
}

/** The plan, and beside it what it is compared with; ready for the graphics card. */
export function packedScenes(
  plan: Plan,
  settings: SceneSettings,
  against: Pick<LookSettings, "against" | "otherPlan" | "otherLook">,
): PackedScene[] {
  const scenes = [sceneOf(plan, settings)];
  if (against.against === "uncut") scenes.push(uncutSceneOf(plan, settings));
  if (against.against === "other") {
    const { light = settings.light, finish = settings.finish, glass = settings.glass } = against.otherLook;
    scenes.push(sceneOf(against.otherPlan ?? plan, { ...settings, light, finish, glass }));
  }
  const options = {
    ...DEFAULT_OPTIONS,
    hasDispersion: settings.hasDispersion,
    behind: settings.behind,
  };
  return scenes.map((scene) => packScene(scene, options));
}
