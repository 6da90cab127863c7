/**
 * A table that rises in a wide curve and becomes the wall behind: what its far end shines with. The curve is far away, as lights
 * are: it is part of the light, is seen through the glass and lights the table in turn.
 */
import { type LightSetting, settingRadiance } from "./lights.ts";
import type { Rgb } from "./spectrum.ts";

/** Directions over which a table's light is taken. */
const [RINGS, SPOKES] = [80, 160];

/** Mean radiance over the upper half, by the cosine: what a white table throws back. Cosine-even rings by N. Malley's method. */
function onTable({ panels, ...rest }: LightSetting): Rgb {
  // what stands near by does not light the far end
  const setting = { ...rest, panels: panels.filter(({ distanceMm }) => distanceMm === undefined) };
  const sum: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < RINGS * SPOKES; k++) {
    const x = (Math.floor(k / SPOKES) + 0.5) / RINGS;
    const turn = (2 * Math.PI * (k % SPOKES)) / SPOKES;
    const r = Math.sqrt(x);
    const seen = settingRadiance(setting, [r * Math.cos(turn), Math.sqrt(1 - x), r * Math.sin(turn)]);
    for (let c = 0; c < 3; c++) sum[c] += seen[c] / (RINGS * SPOKES);
  }
  return sum;
}

/** Light on the table while the horizon is dark, and what a horizon of radiance 1 adds. Turning the light changes neither. */
interface Shares {
  readonly without: Rgb;
  readonly each: Rgb;
}

function sharesOf(setting: LightSetting): Shares {
  const at = (v: number) => onTable({ ...setting, horizon: [v, v, v] });
  const [without, bright] = [at(0), at(1)];
  return { without, each: [bright[0] - without[0], bright[1] - without[1], bright[2] - without[2]] };
}

const shares = new WeakMap<LightSetting, Shares>();
/** The last one a setting became: the same table makes the same light again. */
const risen = new WeakMap<LightSetting, { readonly rgb: Rgb; readonly swept: LightSetting }>();

/**
 * The setting over a table of reflectance `rgb`, with its sweep if it has one: radiance at the horizon H = rgb (A + B H), the
 * table's own, where A + B H is the light on the table, part of which is the sweep's.
 */
export function withSweep(setting: LightSetting, rgb: Rgb): LightSetting {
  if (setting.sweep === undefined) return setting;
  const last = risen.get(setting);
  if (last?.rgb.every((v, c) => v === rgb[c])) return last.swept;
  const spread = setting.sweep;
  const { without, each } = shares.get(setting) ?? sharesOf({ ...setting, spread });
  shares.set(setting, { without, each });
  const far = (c: 0 | 1 | 2) => (rgb[c] * without[c]) / (1 - rgb[c] * each[c]);
  const horizon: Rgb = [far(0), far(1), far(2)];
  const swept: LightSetting = { ...setting, spread, horizon, floor: horizon };
  risen.set(setting, { rgb, swept });
  return swept;
}
