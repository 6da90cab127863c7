/** The light that Look's settings ask for. Apart from what is traced in it: the drawn piece stands in the same. */
import { LIGHT_SETTINGS } from "../../core/optics/light-settings.ts";
import type { Light } from "../../core/optics/lights.ts";
import type { LookSettings } from "./look-settings.ts";

export function lightOf({
  light,
  lightTurnDeg,
  picture,
}: Pick<LookSettings, "light" | "lightTurnDeg" | "picture">): Light {
  const turnRad = (lightTurnDeg * Math.PI) / 180;
  if (light === "picture" && picture) return { kind: "picture", picture: picture.pixels, turnRad };
  const name = light === "picture" ? "north-window" : light;
  return { kind: "setting", setting: LIGHT_SETTINGS[name], turnRad };
}
