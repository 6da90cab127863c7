/**
 * What stands around the drawn piece: the light that Look traces it in, by the shader's own text (`light.glsl`) and packed as for the
 * tracer, so that the drawn and the traced piece stand in one room. Everywhere but on Look it is the workshop's own.
 */
import { useEffect, useMemo } from "react";
import { DataTexture, FloatType, type IUniform, NearestFilter, RGBAFormat } from "three";
import { LIGHT_SETTINGS } from "../../core/optics/light-settings.ts";
import { inUnits, type Light, type LightAxes } from "../../core/optics/lights.ts";
import { lightDefines, packEnvironment, packLight } from "../../render/pack-light.ts";
import { SHADER_LIMITS } from "../../render/shader-limits.ts";
import { lightOf } from "../look/light-of.ts";
import { useLook } from "../look/look-settings.ts";
import { useStudio } from "../use-studio.ts";
import type { Stand } from "./camera.ts";
import { asPicture } from "./light-picture.ts";
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
  /** Where its own axes point in the piece's, unless it stands with the eye. */
  readonly axes: LightAxes;
  /** Whether the page is seen through the piece, as in a picture without a background. */
  readonly showsPage: boolean;
  /** Stops. */
  readonly exposure: number;
}

const OWN_AXES: LightAxes = { right: [1, 0, 0], up: [0, 1, 0], front: [0, 0, 1] };

/** On a table a light's up is the table's; a picture's stays the piece's, as in the tracer. */
const axesOn = (stand: Stand | undefined, { kind }: Light): LightAxes =>
  kind === "setting" && stand ? { right: stand.across, up: stand.up, front: stand.along } : OWN_AXES;

export function environmentOf(light: Light): DataTexture | null {
  const texels = packEnvironment(light);
  if (!texels) return null;
  const texture = new DataTexture(texels.rgba, texels.width, texels.height, RGBAFormat, FloatType);
  texture.minFilter = NearestFilter;
  texture.magFilter = NearestFilter;
  texture.needsUpdate = true;
  return texture;
}

/** A light as it is drawn on a card, or on the processor. */
export const asDrawn = (light: Light, inSoftware: boolean): Light => (inSoftware ? asPicture(light) : light);

/** What a program is made for and told, to stand in a light. */
export const inLight = (
  light: Light,
  environment: DataTexture | null,
): Pick<Room, "defines" | "uniforms"> => ({
  defines: { ...lightDefines(light), MAX_PANELS },
  uniforms: Object.fromEntries([
    ...Object.entries(packLight(light)).map(([name, { value }]) => [name, { value }]),
    ["environment", { value: environment }],
  ]),
});

function useLight(inSoftware: boolean): { light: Light; axes: LightAxes } {
  const isLook = useStudio((state) => state.place === "look");
  const name = useLook((settings) => settings.light);
  const lightTurnDeg = useLook((settings) => settings.lightTurnDeg);
  const picture = useLook((settings) => settings.picture);
  const stand = useEye((view) => view.stand);
  const unitMm = useStudio((state) => state.plan.piece.diameterMm) / 2;
  return useMemo(() => {
    const light = isLook ? inUnits(lightOf({ light: name, lightTurnDeg, picture }), unitMm) : WORKSHOP;
    return { light: asDrawn(light, inSoftware), axes: axesOn(isLook ? stand : undefined, light) };
  }, [isLook, name, lightTurnDeg, picture, stand, inSoftware, unitMm]);
}

/** @param inSoftware whether pictures are computed on the processor */
export function useRoom(inSoftware: boolean): Room {
  const { light, axes } = useLight(inSoftware);
  const isLook = useStudio((state) => state.place === "look");
  const behind = useLook((settings) => settings.behind);
  const exposure = useLook((settings) => settings.exposure);
  const environment = useMemo(() => environmentOf(light), [light]);
  useEffect(() => () => environment?.dispose(), [environment]);
  return useMemo(
    () => ({
      ...inLight(light, environment),
      isWithEye: !isLook,
      axes,
      showsPage: !isLook || behind === "nothing",
      exposure: isLook ? exposure : WORKSHOP_EXPOSURE,
    }),
    [light, axes, environment, isLook, behind, exposure],
  );
}
