/** A setting of the light as a picture all round, which in software is looked up in a fraction of the time that its panels take. */
import type { EquirectPicture } from "../../core/optics/equirect.ts";
import { type Light, type LightSetting, settingRadiance } from "../../core/optics/lights.ts";

/** Rows of the picture that stands for a setting in software: two thirds of a degree each, narrower than a window's bar. */
const ROWS = 256;
const drawn = new WeakMap<LightSetting, EquirectPicture>();

function pictureOf(setting: LightSetting): EquirectPicture {
  const known = drawn.get(setting);
  if (known) return known;
  const [width, height] = [2 * ROWS, ROWS];
  const data = new Float32Array(3 * width * height);
  for (let row = 0; row < height; row++) {
    const polar = (Math.PI * (row + 0.5)) / height;
    for (let column = 0; column < width; column++) {
      const around = 2 * Math.PI * ((column + 0.5) / width - 0.5);
      const [level, y] = [Math.sin(polar), Math.cos(polar)];
      data.set(
        settingRadiance(setting, [level * Math.cos(around), y, level * Math.sin(around)]),
        3 * (row * width + column),
      );
    }
  }
  const picture = { width, height, data };
  drawn.set(setting, picture);
  return picture;
}

/** A light as software takes it. */
export const asPicture = (light: Light): Light =>
  light.kind === "setting"
    ? { kind: "picture", picture: pictureOf(light.setting), turnRad: light.turnRad }
    : light;
