/**
 * What stands around the drawn piece: the light that Look traces it in, by the shader's own text (`light.glsl`) and packed as for the
 * tracer, so that the drawn and the traced piece stand in one room. Everywhere but on Look it is the workshop's own.
 */
import { useEffect, useMemo } from "react";
import { DataTexture, FloatType, type IUniform, NearestFilter, RGBAFormat } from "three";
import { LIGHT_SETTINGS, type Light } from "../../core/optics/lights.ts";
import { lightDefines, packEnvironment, packLight } from "../../render/pack-light.ts";
import { SHADER_LIMITS } from "../../render/shader-limits.ts";
import { lightOf } from "../look/light-of.ts";
import { useLook } from "../look/look-settings.ts";
import { useStudio } from "../use-studio.ts";
import type { Stand } from "./camera.ts";
import { useEye } from "./viewport.ts";

const MAX_PANELS = String(SHADER_LIMITS.MAX_PANELS);

/** A workbench by a north window: what is drawn to be read keeps its light whatever Look shows and however it is turned. */
const WORKSHOP: Light = { kind: "setting", setting: LIGHT_SETTINGS["north-window"], turnRad: 0 };

/** A stop below Look's: on light paper glass is told by what is darker in it. */
const WORKSHOP_EXPOSURE = -1;

export interface Room {
  /** Names to set in `light.glsl`. */
  readonly defines: Readonly<Record<string, string>>;
  /** Its uniforms, as three takes them. */
  readonly uniforms: Readonly<Record<string, IUniform>>;
  /** Whether the light stands with the eye, as it does where one turns a piece in the hand; else with the piece or its table. */
  readonly isWithEye: boolean;
  /** Whether the page is seen through the piece, as in a picture without a background. */
  readonly showsPage: boolean;
  /** Stops. */
  readonly exposure: number;
}

/** On a table a light's up is the table's. */
function standing(light: Light, stand: Stand | undefined): Light {
  if (light.kind !== "setting" || !stand) return light;
  return { ...light, axes: { right: stand.across, up: stand.up, front: stand.along } };
}

function environmentOf(light: Light): DataTexture | null {
  const texels = packEnvironment(light);
  if (!texels) return null;
  const texture = new DataTexture(texels.rgba, texels.width, texels.height, RGBAFormat, FloatType);
  texture.minFilter = NearestFilter;
  texture.magFilter = NearestFilter;
  texture.needsUpdate = true;
  return texture;
}

function useLight(): Light {
  const isLook = useStudio((state) => state.place === "look");
  const light = useLook((settings) => settings.light);
  const lightTurnDeg = useLook((settings) => settings.lightTurnDeg);
  const picture = useLook((settings) => settings.picture);
  const stand = useEye((view) => view.stand);
  return useMemo(
    () => (isLook ? standing(lightOf({ light, lightTurnDeg, picture }), stand) : WORKSHOP),
    [isLook, light, lightTurnDeg, picture, stand],
  );
}

export function useRoom(): Room {
  const light = useLight();
  const isLook = useStudio((state) => state.place === "look");
  const behind = useLook((settings) => settings.behind);
  const exposure = useLook((settings) => settings.exposure);
  const environment = useMemo(() => environmentOf(light), [light]);
  useEffect(() => () => environment?.dispose(), [environment]);
  return useMemo(
    () => ({
      defines: { ...lightDefines(light), MAX_PANELS },
      uniforms: Object.fromEntries([
        ...Object.entries(packLight(light)).map(([name, { value }]) => [name, { value }]),
        ["environment", { value: environment }],
      ]),
      isWithEye: !isLook,
      showsPage: !isLook || behind === "nothing",
      exposure: isLook ? exposure : WORKSHOP_EXPOSURE,
    }),
    [light, environment, isLook, behind, exposure],
  );
}
